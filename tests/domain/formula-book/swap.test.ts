/** The two preservatives are common practice, without a source; prices are invented and costs worked by hand. */
import { describe, expect, test } from "vitest";
import { previewSwap, type SwapAsked, type SwapPreview } from "@/lib/domain/formula-book/swap";
import { severityOf } from "@/lib/domain/formula-book/findings";
import { moneyText } from "@/lib/domain/money";
import type { Formula, Material } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import {
  day,
  decimal,
  formula,
  grams,
  inGrams,
  lot,
  material,
  offer,
  percent,
  product,
} from "@/tests/helpers/notation";

const today = day("2026-11-25");

const FIRST: Partial<Material> = {
  role: "preservative",
  useMin: percent("0.75"),
  useMax: percent("1.5"),
  addBelow: decimal("80"),
  phTo: decimal("6"),
};
const SECOND: Partial<Material> = {
  role: "preservative",
  useMin: percent("0.5"),
  useMax: percent("1"),
  addBelow: decimal("40"),
};

const conditioner: Formula = {
  ...formula("f", {}),
  phFrom: decimal("4"),
  phTo: decimal("4.5"),
  phases: [
    { name: "A", temperature: decimal("75") },
    { name: "C", temperature: decimal("35") },
  ],
  lines: [
    { of: { kind: "material", id: "water" }, percent: "qs", phase: "A" },
    { of: { kind: "material", id: "first" }, percent: percent("1.25"), phase: "A" },
  ],
};

const preview = (asked: Partial<SwapAsked> = {}, second: Partial<Material> = {}, of = conditioner): SwapPreview =>
  previewSwap(
    workshopOf({
      materials: [
        material("first", FIRST),
        material("second", { ...SECOND, ...second }),
        material("water", { role: "water" }),
      ],
      offers: [offer("o1", "first", "100", "5"), offer("o2", "second", "100", "8"), offer("o3", "water", "1000", "1")],
      lots: [
        lot("L1", "first", "40", "2"),
        lot("L2", "first", "10", "0.5", { expires: day("2026-11-24") }),
        lot("L3", "first", "2.5", "0.125"),
      ],
      formulas: [of, formula("other", { first: "1", water: "qs" })],
      products: [product("p", "f", { fill: grams("100") })],
    }),
    today,
    "replacement",
    { formula: "f", from: "first", to: "second", percent: null, phase: null, ...asked },
    null,
  );

const found = ({ breaks }: SwapPreview) => breaks.map((finding) => `${severityOf(finding)} ${finding.code}`);

describe("a swap of preservatives", () => {
  test("[SWAP-1] brings the percent into the new one's use range and moves it to a phase that is cool enough", () => {
    const { formula, changes, breaks } = preview();
    expect(formula.lines[1]).toEqual({ of: { kind: "material", id: "second" }, percent: percent("1"), phase: "C" });
    expect(changes.map(({ kind }) => kind)).toEqual(["percent", "phase"]);
    expect(breaks).toEqual([]);
  });

  test("[SWAP-2] what the maker says stands, and what it breaks is found", () => {
    expect(found(preview({ percent: percent("1.25") }))).toEqual(["warning outside its use range"]);
    expect(found(preview({ phase: "A" }))).toEqual(["error too hot for it"]);
  });

  test("[SWAP-1] where no phase is cool enough it stays, and is found too hot", () => {
    const swap = preview({}, { addBelow: decimal("30") });
    expect(swap.changes.map(({ kind }) => kind)).toEqual(["percent", "needs a cooler phase"]);
    expect(found(swap)).toEqual(["error too hot for it"]);
  });

  test("[SWAP-1] a window that the target pH lies outside asks for another pH", () => {
    const swap = preview({}, { phFrom: decimal("5") });
    expect(swap.changes.map(({ kind }) => kind)).toContain("needs another pH");
    expect(found(swap)).toEqual(["warning pH outside its window"]);
  });

  test("[SWAP-2] what the old one broke is mended", () => {
    const warm = { ...conditioner, phTo: decimal("6.5") };
    expect(preview({}, {}, warm).mends.map(({ code }) => code)).toEqual([
      "pH outside its window",
      "lot is out of date",
    ]);
  });

  test("[SWAP-3] cost of one before and after: 100 g, 1.25 g at 0.05 against 1 g at 0.08, water the rest", () => {
    const [cost] = preview().costs;
    if (cost?.compared.kind !== "compared") throw new Error("not compared");
    const { first, second, dearerBy } = cost.compared;
    // 98.75 × 0.001 + 1.25 × 0.05 = 0.16125; 99 × 0.001 + 1 × 0.08 = 0.179
    expect([first, second].map(({ perUnit }) => perUnit && moneyText(perUnit, 5))).toEqual(["0.16125", "0.17900"]);
    expect(dearerBy && moneyText(dearerBy, 5)).toBe("0.01775");
  });

  test("[SWAP-3] a formula that no longer adds up has no cost", () => {
    const fixed: Formula = {
      ...conditioner,
      lines: conditioner.lines.map((line, at) => (at === 0 ? { ...line, percent: percent("98.75") } : line)),
    };
    const swap = preview({}, {}, fixed);
    expect(found(swap)).toEqual(["error does not add up"]);
    expect(swap.costs).toEqual([]);
  });

  test("[SWAP-4] what would be left over is what is usable, and where it is still used", () => {
    const { leftOver } = preview();
    expect(inGrams(leftOver.quantity)).toBe("42.5");
    expect(leftOver.lots.map(({ id }) => id)).toEqual(["L1", "L3"]);
    expect(leftOver.stillUsedIn.map(({ id }) => id)).toEqual(["other"]);
  });
});
