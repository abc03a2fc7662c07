/** Figures worked by hand from the rule; no published source. */
import { expect, test } from "vitest";
import { mostFromShelf } from "@/lib/domain/most-from-shelf";
import { preparedFor } from "@/lib/domain/plan";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import {
  day,
  formula,
  g,
  grams,
  inGrams,
  lot,
  material,
  money,
  order,
  percent,
  pieces,
  product,
  run,
  stock,
} from "@/tests/helpers/notation";

const today = day("2026-11-25");

const most = (parts: Parts): readonly string[] => {
  const workshop = workshopOf(parts);
  return mostFromShelf(workshop.products, preparedFor(workshop, today), today).map(
    ({ product: { id }, mostUnits, limiting, there }) =>
      `${id} ${mostUnits.toString()} by ${limiting.id}, ${limiting.measure === "count" ? there.toString() : inGrams(there)}`,
  );
};

const bench: Parts = {
  materials: [material("A"), material("B"), material("J", { measure: "count" })],
  formulas: [formula("f", { A: "80", B: "20" }), formula("a", { A: "100" })],
  products: [
    product("cream", "f", {
      fill: grams("50"),
      packaging: [{ material: "J", amount: pieces(1), spoilage: percent("0") }],
    }),
    product("oil", "a", { fill: grams("30") }),
  ],
};

test("[MAKE-3] each product on its own: they share the same shelf", () => {
  const lots = [
    lot("a", "A", "1000", "1"),
    lot("b", "B", "300", "1"),
    { ...lot("j", "J", "0", "1"), remaining: stock(40n) },
  ];
  // 1000/40 = 25, 300/10 = 30, 40 jars; 1000/30 = 33.3
  expect(most({ ...bench, lots })).toEqual(["cream 25 by A, 1000", "oil 33 by A, 1000"]);
});

test("[MAKE-3] it opens to what is there, to what it takes of each lot, and to what a unit takes of it at the least", () => {
  const lots = [
    lot("a1", "A", "600", "1"),
    lot("a2", "A", "390", "1"),
    lot("b", "B", "300", "1"),
    { ...lot("j", "J", "0", "1"), remaining: stock(40n) },
  ];
  const workshop = workshopOf({ ...bench, lots });
  const [cream] = mostFromShelf(workshop.products, preparedFor(workshop, today), today);
  if (cream === undefined) throw new Error("no product");
  const { least, takes, oneMoreTakes } = cream;
  expect(cream).toMatchObject({ mostUnits: 24n, there: 990_000_000n });
  // a1 and a2 have no best before and came in on one day: the lower id first. 24 × 40 g are 960 g.
  expect(cream.lots.map(({ lot: { id }, there, taken }) => [id, inGrams(there), inGrams(taken)])).toEqual([
    ["a1", "600", "600"],
    ["a2", "390", "360"],
  ]);
  expect([inGrams(takes), inGrams(oneMoreTakes)]).toEqual(["960", "1000"]);
  // 80 % of 50 g for each unit, and nothing once.
  expect(least && [least.perUnit / least.under, least.fixed]).toEqual([40_000_000n, 0n]);
});

test("[MAKE-3] what is out of date, on order, or planned for a run plays no part", () => {
  const lots = [
    lot("old", "A", "500", "1", { expires: day("2026-11-24") }),
    lot("last", "A", "90", "1", { expires: today }),
    lot("b", "B", "300", "1"),
    { ...lot("j", "J", "0", "1"), remaining: stock(1n) },
  ];
  const orders = [order("o", "2026-11-25", [{ material: "A", quantity: g("900"), cost: money("1"), expires: null }])];
  const runs = [run("r", "oil", "2026-11-25", 2)];
  expect(most({ ...bench, lots, orders, runs })).toEqual(["cream 1 by J, 1", "oil 3 by A, 90"]);
});

test("[MAKE-3] nothing on the shelf makes nothing, by the lower id", () => {
  expect(most(bench)).toEqual(["cream 0 by A, 0", "oil 0 by A, 0"]);
});
