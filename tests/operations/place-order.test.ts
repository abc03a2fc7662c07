import { beforeEach, expect, test } from "vitest";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { valuesOfOrder } from "@/lib/edge/forms/delivery-form";
import { changePacks, orderDraft } from "@/lib/operations/change-order";
import { basketOfList } from "@/lib/operations/choose-basket";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { type OrderToPlace, placeOrder, takeOrderBack } from "@/lib/operations/place-order";
import { readBooks } from "@/lib/store/books";
import { day, formula, g, lot, material, money, offer, product, run, supplier } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, keepBooks, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bareWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();
auditAfterEachTest(file);

const today = day("2026-11-25");

/** A run of 3 × 100 g on 10 December, and 100 g here: 200 g are to be bought. From two packs on a pack costs 4. */
const books = () =>
  booksOf(
    bareWorkshop("Orders", {
      suppliers: [supplier("s")],
      materials: [material("A")],
      offers: [
        offer("a", "A", "100", "5", { supplier: "s", breaks: [{ packs: quantity(2n), price: money("4") }] }),
        offer("b", "A", "100", "6", { supplier: "s" }),
      ],
      lots: [lot("L", "A", "100", "1")],
      formulas: [formula("f", { A: "100" })],
      products: [product("p", "f")],
      runs: [run("r", "p", "2026-12-10", 3)],
    }),
  );

const asked: OrderToPlace = {
  id: "drawn-with-the-form",
  supplier: "s",
  placed: today,
  due: day("2026-11-26"),
  state: "ordered",
  lines: [{ offer: "a", packs: quantity(2n), packPrice: money("4") }],
  known: [],
};

beforeEach(() => openBooks(books()));

const workshop = async () => ((await readBooks()) ?? books()).workshop;
const toBuy = async () => plan(await workshop(), today).materials.map((outlook) => outlook.toBuy);

test("[BUY-15] an order that was placed is kept once, and the plan counts it as on the way", async () => {
  expect(await toBuy()).toEqual([g("200")]);
  expect((await placeOrder(asked)).kind).toBe("ordered");
  expect((await placeOrder(asked)).kind).toBe("already ordered");
  const { orders } = await workshop();
  expect(orders).toEqual([
    {
      id: asked.id,
      supplier: "s",
      placed: today,
      due: asked.due,
      state: "ordered",
      lines: [
        { material: "A", quantity: g("200"), cost: money("8"), expires: null, offer: "a", packs: 2n, received: 0n },
      ],
    },
  ]);
  expect(await toBuy()).toEqual([0n]);
});

test("[BUY-15] the same form with something else in it changes nothing", async () => {
  await placeOrder(asked);
  const other = { ...asked, lines: [{ offer: "a", packs: quantity<never>(3n), packPrice: money("4") }] };
  expect((await placeOrder(other)).kind).toBe("ordered otherwise");
  expect((await workshop()).orders).toHaveLength(1);
});

test.each([
  { says: "is gone", line: { offer: "none", packs: 2n, packPrice: "4" } },
  { says: "costs something else at so many packs", line: { offer: "a", packs: 1n, packPrice: "4" } },
  { says: "costs something else now", line: { offer: "a", packs: 2n, packPrice: "3" } },
])("[BUY-15] nothing is kept where an offer $says", async ({ line }) => {
  const lines = [{ offer: line.offer, packs: quantity<never>(line.packs), packPrice: money(line.packPrice) }];
  expect(await placeOrder({ ...asked, lines })).toEqual({ kind: "offer changed", offer: line.offer });
  expect((await workshop()).orders).toEqual([]);
});

test.each([
  { says: "quantity", offers: [offer("a", "A", "5000000000", "4")] },
  { says: "cost", offers: [offer("a", "A", "1", "9000000000")] },
])("[BUY-15] [QTY-6] nothing is kept whose $says is above every figure of the books", async ({ offers }) => {
  const { workshop: before, desk } = books();
  await keepBooks({ desk, workshop: { ...before, offers } });
  const [price] = offers.map((each) => each.price);
  const lines = [{ offer: "a", packs: quantity<never>(2n), packPrice: price ?? money("4") }];
  expect(await placeOrder({ ...asked, lines })).toEqual({ kind: "too large" });
  expect(await placeOrder({ ...asked, lines, state: "drafted" })).toEqual({ kind: "too large" });
  expect((await workshop()).orders).toEqual([]);
});

test("[ORDER-7] what an offer says that it keeps is expected of an order, from the day on which it is due", async () => {
  const { workshop: before, desk } = books();
  const offers = before.offers.map((each) => ({ ...each, shelfLifeDays: 14 }));
  await keepBooks({ desk, workshop: { ...before, offers } });
  await placeOrder(asked);
  const due = async () => (await workshop()).orders.map(({ lines }) => lines.map(({ expires }) => expires));
  expect(await due()).toEqual([[day("2026-12-10")]]);
  // The run on its last day of use still has it; a day later it would lack it.
  expect(await toBuy()).toEqual([0n]);
  const moved = (await workshop()).runs.map((each) => ({ ...each, date: day("2026-12-11") }));
  await keepBooks({ desk, workshop: { ...(await workshop()), runs: moved } });
  expect(await toBuy()).toEqual([g("200")]);
});

test("[ORDER-7] a draft is expected anew from the day that it is ordered for", async () => {
  const { workshop: before, desk } = books();
  const offers = before.offers.map((each) => ({ ...each, shelfLifeDays: 14 }));
  await keepBooks({ desk, workshop: { ...before, offers } });
  await placeOrder({ ...asked, state: "drafted" });
  await changePacks({ id: asked.id, packs: [3n], from: [2n] });
  await orderDraft({ id: asked.id, placed: today, due: day("2026-12-01") });
  const [kept] = (await workshop()).orders;
  expect(kept?.lines).toMatchObject([{ packs: 3n, expires: day("2026-12-15") }]);
  // What comes is written down from its pack: the form does not fill in what was only expected.
  if (kept === undefined) throw new Error("there is no order");
  expect(valuesOfOrder(await workshop(), kept)).toMatchObject({ "lines.0.offer": "a", "lines.0.expires": "" });
});

test("[BUY-15] an order is taken back once, and counts no more", async () => {
  await placeOrder(asked);
  expect((await takeOrderBack(asked.id)).kind).toBe("taken back");
  expect((await takeOrderBack(asked.id)).kind).toBe("not there");
  expect([(await workshop()).orders, await toBuy()]).toEqual([[], [g("200")]]);
});

test("[BUY-15] what has come in is neither ordered again by its form nor taken back", async () => {
  const { workshop: before, desk } = books();
  const arrived = lot(`${asked.id}/1`, "A", "200", "8");
  await keepBooks({ desk, workshop: { ...before, lots: [...before.lots, arrived] } });
  expect((await placeOrder(asked)).kind).toBe("already received");
  expect((await takeOrderBack(asked.id)).kind).toBe("not there");
});

test("[BUY-7] [BUY-9] the least basket stands beside the one by hand, with what is left over", async () => {
  const { workshop: open } = books();
  const list = shoppingListOf(open, plan(open, today));
  const chosen = await basketOfList(open, list);
  if (!chosen?.byHand) throw new Error("no basket");
  // 2 × 4 by either way: the lowest unit price at two packs is 4 for 100 g
  expect([chosen.chosen, chosen.cutShort, chosen.planned.gap]).toEqual(["least", null, null]);
  expect([chosen.planned.total, chosen.byHand.planned.total]).toEqual([money("8"), money("8")]);
  expect([...chosen.basket.leftOver]).toEqual([["A", 0n]]);
});

test("[BUY-15] from two tabs that show the same slip it is one order, and one draft", async () => {
  const drafted = { ...asked, state: "drafted" as const };
  expect((await placeOrder(drafted)).kind).toBe("ordered");
  const second = await placeOrder({ ...drafted, id: "drawn-in-another-tab" });
  expect(second.kind === "already ordered" && second.order.id).toBe(asked.id);
  // The other tab does not know of the draft; a page that was drawn since does, and may order more.
  const ordered = { ...asked, id: "ordered-in-another-tab" };
  expect((await placeOrder(ordered)).kind).toBe("ordered meanwhile");
  expect((await workshop()).orders).toHaveLength(1);
  expect((await placeOrder({ ...ordered, known: [asked.id] })).kind).toBe("ordered");
  expect((await placeOrder({ ...ordered, id: "a-third", known: [asked.id] })).kind).toBe("ordered meanwhile");
  expect((await workshop()).orders).toHaveLength(2);
});
