/** Which runs use which lot, worked by hand. */
import { expect, test } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import { usedLots } from "@/lib/domain/lot-uses";
import { plan } from "@/lib/domain/plan";
import { workshopOf } from "../helpers/bench";
import { day, formula, g, inGrams, lot, material, money, order, product, run, supplier } from "../helpers/notation";

/** Every run needs 100 g. 10 g are out of date before the first of them; 100 g come on the 4th. */
const workshop = workshopOf({
  suppliers: [supplier("s")],
  materials: [material("A")],
  lots: [
    lot("L1", "A", "60", "1.00", { expires: day("2026-11-30") }),
    lot("L2", "A", "70", "1.00"),
    lot("L0", "A", "10", "1.00", { expires: day("2026-11-25") }),
  ],
  orders: [order("po", "2026-12-04", [{ material: "A", quantity: g("100"), cost: money("1.00"), expires: null }])],
  formulas: [formula("a", { A: "100" })],
  products: [product("pa", "a")],
  runs: [run("r1", "pa", "2026-11-26", 1), run("r2", "pa", "2026-12-01", 1), run("r3", "pa", "2026-12-02", 1)],
});

test("[PLAN-10, LOT-1] each lot says which run takes how much, what is owed from what comes in, and what is lost", () => {
  const [outlook] = plan(workshop, day("2026-11-25")).materials;
  if (!outlook) throw new Error("no material");
  const inShort = usedLots(outlook).map(({ lot: { lot: id, lost }, uses, left }) => [
    id,
    uses
      .map(({ run: { id: by }, day: on, taken, owedSince }) =>
        [
          by,
          inGrams(taken),
          isoDate(on).slice(5),
          ...(owedSince === null ? [] : [`owed ${isoDate(owedSince).slice(5)}`]),
        ].join(" "),
      )
      .join(", "),
    `lost ${inGrams(lost)}, left ${inGrams(left)}`,
  ]);
  expect(inShort).toEqual([
    ["L0", "", "lost 10, left 0"],
    ["L1", "r1 60 11-26", "lost 0, left 0"],
    ["L2", "r1 40 11-26, r2 30 12-01", "lost 0, left 0"],
    // 70 g to the second run, who was owed first; 30 g of the 100 g owed to the third.
    ["po/1", "r2 70 12-04 owed 12-01, r3 30 12-04 owed 12-02", "lost 0, left 0"],
  ]);
});
