import path from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { progressOf } from "@/lib/domain/orders";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { changePacks, dropDraft, giveUpRest, orderDraft } from "@/lib/operations/change-order";
import { type OrderToPlace, placeOrder } from "@/lib/operations/place-order";
import { receive } from "@/lib/operations/receive-delivery";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { readBooksWithPast, readBooksWithPastFrom } from "@/lib/store/ledger/past";
import { closeStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { books, delivery, TODAY } from "../helpers/ledger-shop";
import { day, formula, g, lot, material, money, offer, product, run, supplier } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, keepBooks, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bareWorkshop } from "../helpers/store-workshop";

const { file, folder } = storeForEachTest();
auditAfterEachTest(file);

/** A run of 3 × 100 g, and 100 g here. A pack of 100 g costs 5, and 4 each from two on; of the other two are the fewest. */
const shop = () =>
  booksOf(
    bareWorkshop("Orders", {
      suppliers: [supplier("s")],
      materials: [material("A"), material("B")],
      offers: [
        offer("a", "A", "100", "5", { breaks: [{ packs: quantity(2n), price: money("4") }] }),
        offer("b", "B", "50", "3", { minPacks: quantity(2n) }),
      ],
      lots: [lot("L", "A", "100", "1")],
      formulas: [formula("f", { A: "100" })],
      products: [product("p", "f")],
      runs: [run("r", "p", "2026-12-10", 3)],
    }),
  );

const draft: OrderToPlace = {
  id: "po",
  supplier: "s",
  placed: TODAY,
  due: day("2026-11-27"),
  state: "drafted",
  lines: [
    { offer: "a", packs: quantity(2n), packPrice: money("4") },
    { offer: "b", packs: quantity(2n), packPrice: money("3") },
  ],
  known: [],
};
const ordering = { id: "po", placed: TODAY, due: day("2026-11-30") };

beforeEach(() => openBooks(shop()));

const order = async () => {
  const [only] = (await books()).workshop.orders;
  if (only === undefined) throw new Error("there is no order");
  return only;
};
const progress = async () => progressOf(await order());
const toBuy = async () => plan((await books()).workshop, TODAY).materials.map((outlook) => outlook.toBuy);
const packs = async () =>
  (await order()).lines.map((line) => `${line.offer ?? "-"} ${String(line.packs)} ${String(line.cost)}`);
const some = (amount: string, given: object = {}) =>
  delivery([{ material: "A", quantity: g(amount), paid: money("4.5"), offer: "a", order: { id: "po", line: 0 } }], {
    supplier: "s",
    ...given,
  });

describe("a draft", () => {
  test("[ORDER-1] [ORDER-2] is kept once and not expected before it is ordered, for the day that is said then", async () => {
    expect((await placeOrder(draft)).kind).toBe("ordered");
    expect((await placeOrder(draft)).kind).toBe("already ordered");
    expect([await progress(), await toBuy()]).toEqual(["drafted", [g("200"), 0n]]);
    expect((await orderDraft(ordering)).kind).toBe("changed");
    expect((await orderDraft(ordering)).kind).toBe("as asked");
    expect([await progress(), (await order()).due, await toBuy()]).toEqual(["ordered", day("2026-11-30"), [0n, 0n]]);
    expect((await placeOrder({ ...draft, state: "ordered" })).kind).toBe("ordered otherwise");
  });

  test("[ORDER-3] takes other packs at what its offers ask for so many, and none takes a line out", async () => {
    await placeOrder(draft);
    expect((await changePacks({ id: "po", packs: [1n, 0n], from: [2n, 2n] })).kind).toBe("changed");
    expect(await packs()).toEqual(["a 1 5000000"]);
    expect((await changePacks({ id: "po", packs: [3n], from: [1n] })).kind).toBe("changed");
    expect(await packs()).toEqual(["a 3 12000000"]);
  });

  test.each([
    { says: "fewer than the fewest", packs: [2n, 1n], kind: "too few packs" },
    { says: "none of anything", packs: [0n, 0n], kind: "nothing left" },
    { says: "more than can be reckoned with", packs: [2n ** 53n - 1n, 2n], kind: "too many packs" },
    { says: "packs of a draft that another tab changed", packs: [3n, 2n], from: [1n, 2n], kind: "state changed" },
    { says: "the same again, after another tab", packs: [2n, 2n], from: [1n, 2n], kind: "as asked" },
  ])("[ORDER-3] $says changes nothing", async ({ packs: asked, from, kind }) => {
    await placeOrder(draft);
    expect(await changePacks({ id: "po", packs: asked, from: from ?? [2n, 2n] })).toMatchObject({ kind });
    expect(await packs()).toEqual(["a 2 8000000", "b 2 6000000"]);
  });

  test("[ORDER-3] [BUY-15] is not ordered where an offer asks something else since, and takes its price with new packs", async () => {
    await placeOrder(draft);
    const { workshop, desk } = await books();
    const [first, ...others] = workshop.offers;
    if (first === undefined) throw new Error("there is no offer");
    await keepBooks({ desk, workshop: { ...workshop, offers: [{ ...first, breaks: [] }, ...others] } });
    expect(await orderDraft(ordering)).toEqual({ kind: "offer changed", line: 0 });
    expect((await changePacks({ id: "po", packs: [2n, 2n], from: [2n, 2n] })).kind).toBe("changed");
    expect(await packs()).toEqual(["a 2 10000000", "b 2 6000000"]);
    expect((await orderDraft(ordering)).kind).toBe("changed");
    await keepBooks({ desk, workshop: { ...(await books()).workshop, offers: others } });
    expect((await changePacks({ id: "po", packs: [2n, 2n], from: [2n, 2n] })).kind).toBe("state changed");
  });

  test("[ORDER-3] is thrown away, and an order is not", async () => {
    await placeOrder(draft);
    expect((await dropDraft("po")).kind).toBe("dropped");
    expect((await dropDraft("po")).kind).toBe("not there");
    await placeOrder({ ...draft, state: "ordered" });
    expect((await dropDraft("po")).kind).toBe("state changed");
    expect((await changePacks({ id: "po", packs: [3n, 2n], from: [2n, 2n] })).kind).toBe("state changed");
  });
});

describe("an order", () => {
  beforeEach(() => placeOrder({ ...draft, state: "ordered" }));

  test("[ORDER-2] of which a part has come awaits the rest, and is received with it", async () => {
    await receive(some("100"));
    expect([await progress(), await toBuy()]).toEqual(["partly received", [0n, 0n]]);
    const lines = (await order()).lines.map(({ received }) => received);
    expect(lines).toEqual([g("100"), 0n]);
    await receive(some("150", { key: "rest", lines: some("150").lines.map((line) => ({ ...line, lot: "D2" })) }));
    expect(await progress()).toBe("partly received");
    const other = { ...some("100").lines[0], lot: "D3", material: "B", offer: "b", order: { id: "po", line: 1 } };
    await receive(delivery([other], { key: "other" }));
    expect(await progress()).toBe("received");
    expect(await receive(some("100", { key: "too much" }))).toMatchObject({ kind: "no such line on order" });
  });

  test("[ORDER-2] [LEDGER-16] is to come again where its delivery is taken back", async () => {
    await receive(some("200"));
    expect((await order()).lines.map(({ received }) => received)).toEqual([g("200"), 0n]);
    await reversePosting({ key: "back", day: TODAY, realToday: TODAY, reverses: "delivery", reason: "not ours" });
    expect([await progress(), (await order()).lines[0]?.received, await toBuy()]).toEqual(["ordered", 0n, [0n, 0n]]);
  });

  test("[ORDER-4] whose rest is given up keeps what has come, expects nothing, and is expected again if asked", async () => {
    await receive(some("100"));
    expect((await giveUpRest({ id: "po", to: "given up" })).kind).toBe("changed");
    expect((await giveUpRest({ id: "po", to: "given up" })).kind).toBe("as asked");
    expect([await progress(), await toBuy()]).toEqual(["given up", [g("100"), 0n]]);
    expect((await order()).lines[0]?.received).toBe(g("100"));
    expect(await receive(some("100", { key: "late" }))).toMatchObject({ kind: "no such line on order" });
    expect((await giveUpRest({ id: "po", to: "ordered" })).kind).toBe("changed");
    expect([await progress(), await toBuy()]).toEqual(["partly received", [0n, 0n]]);
  });

  test("[ORDER-4] that is a draft or has all come cannot be given up", async () => {
    await placeOrder({ ...draft, id: "other", known: ["po"] });
    expect((await giveUpRest({ id: "other", to: "given up" })).kind).toBe("state changed");
    expect((await giveUpRest({ id: "none", to: "given up" })).kind).toBe("not there");
  });
});

describe("the file", () => {
  async function saved(): Promise<string> {
    const stored = await readBooksWithPast();
    if (!stored) throw new Error("the store holds no workshop");
    return writeWorkshopFile(stored.workshop, stored.past);
  }
  async function again(text: string): Promise<string> {
    const reading = readWorkshopFile(new TextEncoder().encode(text), TODAY);
    if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
    const other = path.join(folder(), "other.db");
    await replaceWorkshop(other, reading.workshop, "anything", reading.past);
    const stored = await readBooksWithPastFrom(other);
    await closeStore(other);
    if (!stored) throw new Error("the other store holds no workshop");
    return writeWorkshopFile(stored.workshop, stored.past);
  }

  test("[FILE-4] [FILE-5] [ORDER-1] [ORDER-5] carries drafts, what has come, and what was paid to whom", async () => {
    await placeOrder(draft);
    const drafted = await saved();
    expect(JSON.parse(drafted)).toMatchObject({
      version: 3,
      orders: [
        {
          state: "drafted",
          lines: [
            { offer: "a", packs: 2 },
            { offer: "b", packs: 2 },
          ],
        },
      ],
    });
    expect(await again(drafted)).toBe(drafted);
    await orderDraft(ordering);
    await receive(some("100"));
    await giveUpRest({ id: "po", to: "given up" });
    const text = await saved();
    expect(JSON.parse(text)).toMatchObject({
      version: 3,
      orders: [{ state: "given up", lines: [{ received: "100 g" }, {}] }],
      receipts: [
        { lot: "D1", posting: "delivery", supplier: "s", offer: "a", order: "po", line: 1, packs: 1, paid: 4_500_000 },
      ],
    });
    expect(await again(text)).toBe(text);
  });

  type Row = Record<string, unknown>;
  test.each<{ says: string; change: (receipt: Row, all: Row[]) => unknown; fault: string }>([
    {
      says: "of a lot that no delivery brought",
      change: (receipt) => Object.assign(receipt, { lot: "L" }),
      fault: 'receipts[0].posting: no delivery "delivery" brought lot "L"',
    },
    {
      says: "twice of one lot",
      change: (receipt, all) => all.push({ ...receipt }),
      fault: 'receipts[1].lot: repeated lot "D1"; a lot is received once',
    },
    {
      says: "of an order without its line",
      change: (receipt) => delete receipt.line,
      fault: "receipts[0].line: an order and the number of its line go together",
    },
    {
      says: "of no packs",
      change: (receipt) => Object.assign(receipt, { packs: 0 }),
      fault: "receipts[0].packs: 0 is out of range 1 to 2^53-1",
    },
  ])("[ORDER-5] with a receipt $says is refused", async ({ change, fault }) => {
    await placeOrder({ ...draft, state: "ordered" });
    await receive(some("100"));
    const document = JSON.parse(await saved()) as { receipts: Row[] };
    change(document.receipts[0] ?? {}, document.receipts);
    const reading = readWorkshopFile(new TextEncoder().encode(JSON.stringify(document)), TODAY);
    expect(reading.kind === "refused" ? reading.faults : []).toContain(fault);
  });
});
