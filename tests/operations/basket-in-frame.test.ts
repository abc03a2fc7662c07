/** The basket in a frame, and each rule that the frame makes impossible, told with by how much. */
import { describe, expect, test } from "vitest";
import { type BuyingFrame, OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { plan } from "@/lib/domain/plan";
import { LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import { basketInFrame } from "@/lib/operations/basket-in-frame";
import { type Parts, workshopOf } from "../helpers/bench";
import { largeShop } from "../helpers/large-shop";
import { day, formula, grams, material, money, offer, product, run, supplier } from "../helpers/notation";

const today = day("2026-11-25");
const TO_THE_END = { seconds: 20, waitMilliseconds: Infinity };

/** Soon: 100 g of A for 27 November. Later: 100 g of B for 14 December. Near sells both, far only B, cheaper. */
const BENCH: Parts = {
  settings: { horizonDays: 30 },
  suppliers: [
    supplier("near", { leadCounts: "calendar", shipping: money("4.00"), shippingFreeFrom: money("20") }),
    supplier("far", { leadCounts: "calendar", minimumOrder: money("8.00") }),
  ],
  materials: [material("A"), material("B")],
  offers: [
    offer("nA", "A", "100", "12.00", { supplier: "near" }),
    offer("nB", "B", "100", "9.00", { supplier: "near" }),
    offer("fB", "B", "50", "2.00", { supplier: "far" }),
  ],
  formulas: [formula("f", { A: "100" }), formula("g", { B: "100" })],
  products: [product("p", "f"), product("q", "g")],
  runs: [run("r1", "p", "2026-11-27", 1), run("r2", "q", "2026-12-14", 1)],
};

async function found(frame: Partial<BuyingFrame>, parts: Parts = BENCH, patience = TO_THE_END) {
  const workshop = workshopOf(parts);
  return basketInFrame(workshop, plan(workshop, today), { ...OPEN_FRAME, ...frame }, patience);
}

async function inShort(frame: Partial<BuyingFrame>, parts?: Parts) {
  const { chosen, waiting, faults } = await found(frame, parts);
  const lines = chosen?.planned.orders.flatMap((order) => order.lines) ?? [];
  return {
    packs: lines.map(({ packs, offer: { id } }) => `${String(packs)} ${id}`).join(", "),
    total: chosen?.planned.total ?? null,
    waiting: waiting.map((purchase) => purchase.material.id).join(", "),
    faults: faults.map(({ kind }) => kind).join(", "),
  };
}

describe("[BUY-11] what cannot hold is told with by how much, and the basket stands", () => {
  test("a cap below the least cost", async () => {
    // A at near 12.00 and B with it 9.00, delivery free from 20.00: 21.00. B at far: four packs for its minimum, 24.00.
    expect(await inShort({})).toEqual({ packs: "1 nA, 1 nB", total: money("21.00"), waiting: "", faults: "" });
    expect((await found({ cap: money("20.99") })).faults).toEqual([
      { kind: "over the cap", cap: money("20.99"), least: money("21.00"), by: money("0.01") },
    ]);
    expect((await found({ cap: money("21.00") })).faults).toEqual([]);
    expect((await found({ cap: money("0") })).faults).toMatchObject([{ kind: "over the cap", by: money("21.00") }]);
  });

  test("a minimum order that only packs which go out of date would reach", async () => {
    // What keeps three days is used by one run of 100 g; the minimum of 8.00 would take four packs of 50 g.
    const short = offer("fA", "A", "50", "2.00", { supplier: "far", shelfLifeDays: 3 });
    const { chosen, faults } = await found(
      { mustKeep: true },
      { ...BENCH, offers: [short], runs: [run("r1", "p", "2026-11-27", 1)] },
    );
    expect(chosen).toBeNull();
    expect(faults).toMatchObject([{ kind: "minimum out of reach", supplier: { id: "far" }, by: money("4.00") }]);
  });

  test("everyone left out, a supplier that nothing is wanted from, and nobody at all", async () => {
    expect(await inShort({ leftOut: new Set(["near", "far"]) })).toEqual({
      packs: "",
      total: 0n,
      waiting: "",
      faults: "everyone left out, everyone left out",
    });
    const runs = [run("r1", "p", "2026-11-27", 1)];
    expect((await found({ heldTo: new Set(["far"]) }, { ...BENCH, runs })).faults).toMatchObject([
      { kind: "nothing wanted", supplier: { id: "far" }, minimumOrder: money("8.00") },
    ]);
    expect((await found({}, { ...BENCH, offers: [] })).list.unsourced.map(({ id }) => id)).toEqual(["A", "B"]);
  });

  test.each([
    { says: "its quantity", pack: "5000000000", price: "2.00", of: "quantity", by: 10n ** 16n - LARGEST_FIGURE },
    { says: "its cost", pack: "1", price: "5000000000", of: "cost", by: 10n ** 16n - LARGEST_FIGURE },
  ])("[QTY-6] a line that is larger than the books can hold, by $says", async ({ pack, price, of, by }) => {
    const large = offer("a", "A", pack, price, { minPacks: quantity(2n) });
    const parts = { materials: [material("A", { safetyStock: grams("1.5") })], offers: [large] };
    const { faults, chosen } = await found({}, parts);
    expect(faults).toEqual([{ kind: "line too large", offer: large, of, by }]);
    expect([chosen?.planned.orders.length, chosen?.planned.gap]).toEqual([1, null]);
  });

  test("[BUY-5] figures too large to be searched: the basket by hand stands, with nothing proven and the reason", async () => {
    const vast = [supplier("s", { minimumOrder: money("9007199254.740991") })];
    const parts = { suppliers: vast, materials: [material("A", { safetyStock: grams("1") })] };
    const { chosen } = await found({}, { ...parts, offers: [offer("a", "A", "1", "0.000003")] });
    expect([chosen?.cutShort, chosen?.planned.gap]).toEqual(["too large", chosen?.planned.total]);
    expect(chosen?.planned.total).toBe(chosen?.byHand?.planned.total);
  });
});

describe("[BUY-18] where a day is named", () => {
  test("what may wait waits, and rides along where its delivery is free of charge with what must be bought", async () => {
    expect(await inShort({ orderBy: today })).toEqual({ packs: "", total: 0n, waiting: "A, B", faults: "" });
    // A must be ordered by the 26th. B rides along: 21.00 in all, where A alone would be 16.00 with its delivery.
    expect(await inShort({ orderBy: day("2026-11-26") })).toMatchObject({ packs: "1 nA, 1 nB", waiting: "" });
  });

  test("what rides along does not go over the cap", async () => {
    expect(await inShort({ orderBy: day("2026-11-26"), cap: money("20.99") })).toEqual({
      packs: "1 nA",
      total: money("16.00"),
      waiting: "B",
      faults: "",
    });
  });
});

test("[BUY-9] [BUY-11] while a search goes on, the best so far is shown, and no cap is called too low", async () => {
  const { chosen, faults } = await found({ cap: money("1") }, largeShop(), { seconds: 1, waitMilliseconds: 0 });
  expect([chosen?.chosen, chosen?.cutShort]).toEqual(["so far", null]);
  expect(faults).toEqual([]);
  expect((chosen?.planned.total ?? 0n) <= (chosen?.byHand?.planned.total ?? 0n)).toBe(true);
});
