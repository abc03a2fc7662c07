import { expect, test } from "vitest";
import { plan } from "@/lib/domain/plan";
import type { RunOutlook } from "@/lib/domain/plan-figures";
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
} from "@/tests/helpers/notation";

const judged = (parts: Parts): readonly string[] => plan(workshopOf(parts), day("2026-11-25")).runs.map(told);

const told = ({ run: { id }, makeable, mostUnits, limiting, short, draws }: RunOutlook): string =>
  [
    id,
    makeable ? "makeable" : `short ${short.map(({ material: of, by }) => `${of.id} ${inGrams(by)}`).join(" ")}`,
    `most ${mostUnits.toString()} by ${limiting.id}`,
    `draws ${draws.map(({ material: of, drawn }) => `${of.id} ${inGrams(drawn)}`).join(" ")}`,
  ].join("; ");

const simple: Parts = {
  materials: [material("A"), material("B")],
  formulas: [formula("f", { A: "90", B: "10" }), formula("a", { A: "100" })],
  products: [product("p", "f", { fill: grams("10") }), product("q", "a", { fill: grams("50") })],
};

test("[MAKE-1] a run that lacks anything draws nothing, so that a later one may still be made", () => {
  expect(
    judged({
      ...simple,
      lots: [lot("a", "A", "100", "1"), lot("b", "B", "4", "1")],
      runs: [
        run("r3", "q", "2026-11-27", 1),
        run("r2", "q", "2026-11-26", 2, { sequence: 1 }),
        run("r1", "p", "2026-11-26", 10),
      ],
    }),
  ).toEqual([
    "r3; short A 50; most 0 by A; draws A 0",
    "r2; makeable; most 2 by A; draws A 100",
    "r1; short B 6; most 4 by B; draws A 0 B 0",
  ]);
});

test("[MAKE-1] beyond the horizon too; arrivals come before the day's runs, and lots are used on their last day", () => {
  expect(
    judged({
      ...simple,
      settings: { horizonDays: 2 },
      lots: [lot("a", "A", "100", "1", { expires: day("2026-12-10") })],
      orders: [
        order("po", "2026-12-11", [{ material: "A", quantity: g("70"), cost: money("1"), expires: day("2026-12-11") }]),
      ],
      runs: [run("r1", "q", "2026-12-10", 1), run("r2", "q", "2026-12-11", 1), run("r3", "q", "2026-12-12", 1)],
    }),
  ).toEqual([
    "r1; makeable; most 2 by A; draws A 50",
    "r2; makeable; most 1 by A; draws A 50",
    "r3; short A 50; most 0 by A; draws A 0",
  ]);
});

const packed: Parts = {
  materials: [material("G", { measure: "count" }), material("J", { measure: "count" }), material("W")],
  formulas: [formula("f", { W: "100" })],
  products: [
    product("p", "f", {
      fill: grams("10"),
      heel: grams("5"),
      packaging: [{ material: "J", amount: pieces(1), spoilage: percent("20") }],
      perRun: [{ material: "G", amount: pieces(4) }],
    }),
  ],
};
const counted = (count: number) => String(count / 1_000_000);

test.each([
  {
    rule: "NEED-4",
    says: "a run is not refused for a jar that may not break",
    jars: 10,
    gloves: 9,
    wax: "200",
    units: 10,
    told: "makeable; most 10 by J",
  },
  {
    rule: "MAKE-3",
    says: "a per-run item that is there sets no limit",
    jars: 99,
    gloves: 4,
    wax: "200",
    units: 10,
    told: "makeable; most 19 by W",
  },
  {
    rule: "MAKE-3",
    says: "where a per-run item is lacking the most is 0",
    jars: 99,
    gloves: 3,
    wax: "200",
    units: 10,
    told: "short G 0.000001; most 0 by G",
  },
  {
    rule: "MAKE-3",
    says: "where the heel is lacking the most is 0",
    jars: 99,
    gloves: 4,
    wax: "4",
    units: 1,
    told: "short W 11; most 0 by W",
  },
  {
    rule: "MAKE-3",
    says: "ties go to the lower id",
    jars: 3,
    gloves: 4,
    wax: "35",
    units: 4,
    told: "short J 0.000001 W 10; most 3 by J",
  },
])("[$rule] $says", ({ jars, gloves, wax, units, told: expected }) => {
  const [seen] = judged({
    ...packed,
    lots: [lot("j", "J", counted(jars), "1"), lot("g", "G", counted(gloves), "1"), lot("w", "W", wax, "1")],
    runs: [run("r", "p", "2026-11-26", units)],
  });
  expect(seen).toContain(expected);
});

test("[NEED-3] the uses of one material are added up, then rounded up once", () => {
  const parts: Parts = {
    materials: [material("A"), material("W")],
    formulas: [formula("f", { A: "75", W: "25" })],
    products: [
      product("p", "f", {
        fill: grams("0.00001"),
        packaging: [{ material: "W", amount: grams("0.000001"), spoilage: percent("60") }],
      }),
    ],
    lots: [lot("a", "A", "1", "1"), lot("w", "W", "0.000004", "1")],
    runs: [run("r", "p", "2026-11-26", 1)],
  };
  const [outlook] = plan(workshopOf(parts), day("2026-11-25")).runs;
  expect(outlook?.draws.map(({ need, least, drawn }) => [need, least, drawn])).toEqual([
    [8n, 8n, 8n],
    [5n, 4n, 4n],
  ]);
});
