/** One material of a formula put in the place of another: what breaks, what must change, what it costs. @rule SWAP-1 to SWAP-4 */
import type { Day } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import { type FormulaComparison, compareBesides } from "@/lib/domain/formula-comparison";
import { isUsable } from "@/lib/domain/lots";
import type { Basis } from "@/lib/domain/plan-figures";
import { larger, type Micrograms, type PartsPerMillion, quantity, smaller, type Stock } from "@/lib/domain/quantity";
import type { Formula, FormulaLine, Lot, Material, Product, Workshop } from "@/lib/domain/workshop";
import { checksOf, isOutsideWindow, targetPh } from "./checks";
import { type Finding, findingKey } from "./findings";
import { isAtOrAbove } from "./heat-checks";

export interface SwapAsked {
  readonly formula: string;
  readonly from: string;
  readonly to: string;
  /** Null for what the swap proposes. */
  readonly percent: PartsPerMillion | "qs" | null;
  readonly phase: string | null;
}

export interface SwapPreview {
  /** The formula as it would be: a draft until somebody keeps it. */
  readonly formula: Formula;
  readonly changes: readonly SwapChange[];
  /** Found after the swap and not before it. */
  readonly breaks: readonly Finding[];
  /** Found before the swap and not after it. */
  readonly mends: readonly Finding[];
  /** In each product of the formula; empty where the new one does not add up. */
  readonly costs: readonly { readonly product: Product; readonly compared: FormulaComparison }[];
  readonly leftOver: LeftOver;
}

/** What is changed with the material, or must be by the maker. */
export type SwapChange =
  | {
      readonly kind: "percent";
      readonly line: number;
      readonly before: PartsPerMillion;
      readonly after: PartsPerMillion;
    }
  | { readonly kind: "phase"; readonly line: number; readonly before: string | null; readonly after: string }
  /** No phase is cool enough. */
  | { readonly kind: "needs a cooler phase"; readonly addBelow: NonNullable<Material["addBelow"]> }
  /** The pH that is aimed at lies outside the new one's window. */
  | { readonly kind: "needs another pH"; readonly material: Material };

export interface LeftOver {
  /** Usable on the day. */
  readonly quantity: Stock;
  readonly lots: readonly Lot[];
  /** Other formulas that hold the old one themselves. */
  readonly stillUsedIn: readonly Formula[];
}

/**
 * @param asked  `from` stands in the formula itself, not in a premix of it; `to` is a material measured by mass
 * @rule SWAP-1 to SWAP-4
 */
export function previewSwap(
  workshop: Workshop,
  today: Day,
  basis: Basis,
  asked: SwapAsked,
  batch: Micrograms | null,
): SwapPreview {
  const before = byId("formula", workshop.formulas)(asked.formula);
  const to = byId("material", workshop.materials)(asked.to);
  const { formula, changes } = swapped(before, to, asked);
  const checked = { ...workshop, today, step: workshop.settings.balanceStep.quantity, batch };
  const [was, is] = [checksOf(before, checked), checksOf(formula, checked)];
  return {
    formula,
    changes,
    breaks: notAmong(is, was),
    mends: notAmong(was, is),
    costs: costsOf(workshop, today, basis, before, formula, is),
    leftOver: leftOverOf(workshop, today, asked),
  };
}

/** The formula with the new material in every line of the old one. @rule SWAP-1, SWAP-2 */
export function swapped(
  before: Formula,
  to: Material,
  asked: SwapAsked,
): { readonly formula: Formula; readonly changes: readonly SwapChange[] } {
  const changes: SwapChange[] = [];
  const lines = before.lines.map((line, at): FormulaLine => {
    if (line.of.kind !== "material" || line.of.id !== asked.from) return line;
    const percent = asked.percent ?? withinUse(line.percent, to);
    if (percent !== "qs" && line.percent !== "qs" && percent !== line.percent) {
      changes.push({ kind: "percent", line: at, before: line.percent, after: percent });
    }
    const phase = asked.phase ?? coolEnough(before, line.phase, to);
    if (phase === undefined) {
      if (to.addBelow !== null) changes.push({ kind: "needs a cooler phase", addBelow: to.addBelow });
      return { of: { kind: "material", id: to.id }, percent, phase: line.phase };
    }
    if (phase !== line.phase && phase !== null)
      changes.push({ kind: "phase", line: at, before: line.phase, after: phase });
    return { of: { kind: "material", id: to.id }, percent, phase };
  });
  const formula = { ...before, lines };
  const target = targetPh(formula);
  if (target !== null && isOutsideWindow(target, to)) changes.push({ kind: "needs another pH", material: to });
  return { formula, changes };
}

/** The percent that was, brought into the new one's use range. */
function withinUse(percent: PartsPerMillion | "qs", { useMin, useMax }: Material): PartsPerMillion | "qs" {
  if (percent === "qs") return percent;
  const notBelow = useMin === null ? percent : larger(percent, useMin);
  return useMax === null ? notBelow : smaller(notBelow, useMax);
}

/** The phase that was, where it is cool enough or not known, else the first that is; undefined for none. */
function coolEnough({ phases }: Formula, was: string | null, { addBelow }: Material): string | null | undefined {
  const own = phases.find(({ name }) => name === was);
  const bears = (phase: (typeof phases)[number]): boolean =>
    addBelow !== null && phase.temperature !== null && !isAtOrAbove(phase.temperature, addBelow);
  if (addBelow === null || !own || own.temperature === null || bears(own)) return was;
  return phases.find(bears)?.name;
}

/** Findings that are not among others, their figures looked at as well. @rule CHECK-8 */
export function notAmong(findings: readonly Finding[], others: readonly Finding[]): readonly Finding[] {
  const keys = new Set(others.map(findingKey));
  return findings.filter((finding) => !keys.has(findingKey(finding)));
}

/** @rule SWAP-3 */
function costsOf(
  workshop: Workshop,
  today: Day,
  basis: Basis,
  before: Formula,
  after: Formula,
  found: readonly Finding[],
): SwapPreview["costs"] {
  if (found.some(({ code }) => code === "does not add up")) return [];
  return workshop.products
    .filter(({ formula }) => formula === before.id)
    .map((product) => ({
      product,
      compared: compareBesides(workshop, today, [before, after], { product, basis }),
    }));
}

/** @rule SWAP-4 */
function leftOverOf({ lots, formulas }: Workshop, today: Day, { from, formula }: SwapAsked): LeftOver {
  const usable = lots.filter((lot) => lot.material === from && lot.remaining > 0n && isUsable(lot, today));
  return {
    quantity: quantity<Stock>(usable.reduce((sum, { remaining }) => sum + remaining, 0n)),
    lots: usable,
    stillUsedIn: formulas.filter(
      ({ id, lines }) => id !== formula && lines.some(({ of }) => of.kind === "material" && of.id === from),
    ),
  };
}
