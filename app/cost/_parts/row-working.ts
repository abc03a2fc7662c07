import { formulaPaths } from "@/lib/domain/formula-paths";
import { compare, dividedBy, type Fraction, whole, ZERO } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import type { CostLine, CostUse } from "@/lib/domain/plan-figures";
import { decimalValue, UNITS } from "@/lib/domain/quantity";
import type { IngredientInUnit, Losses } from "@/lib/domain/unit-breakdown";
import type { PackagingItem, PerRunItem } from "@/lib/domain/workshop";
import {
  amountShown,
  countShown,
  densityShown,
  gramsShown,
  massInFull,
  minutesShown,
  moneyShown,
  percentShown,
  pricePerGramShown,
  priceShown,
  rateShown,
} from "@/lib/edge/figures";
import { fractionShown, pathsTold } from "@/lib/edge/path-words";
import type { WorkingLine } from "@/app/_ui/working";
import type { CostView } from "./cost-view";
import { type Opened, priceWorking } from "./price-working";

/** Money in a working: two decimals beyond the currency's; a cost that nothing prices is not known. */
export const inWorking = (cost: Fraction | null, { currency }: CostView): string =>
  cost === null ? "not known" : moneyShown(cost, currency, 2);

const result = (figure: string, reason: string): WorkingLine => ({ figure, reason, isResult: true });
const MOST_PATHS = 6;

/** An ingredient: the price of a gram, times its grams in one unit, with the ways in which it comes into the formula. */
export function ingredientWorking(ingredient: IngredientInUnit, view: CostView): Opened {
  const { line, fraction, quantity, cost } = ingredient;
  const { material, price } = line;
  const { product, formulas, compositionOf } = view;
  const priced = priceWorking(material, price, view);
  const ways = formulaPaths(formulas, product.formula, material.id, compositionOf, MOST_PATHS);
  const share = `${fractionShown(fraction)} of the ${massInFull(product.fill.quantity)}${filledAs(view)} that are filled`;
  return {
    lines: price
      ? [
          ...priced.lines,
          { operator: "×", figure: gramsShown(quantity), reason: share },
          result(inWorking(cost, view), "in one unit"),
        ]
      : [],
    notes: [...priced.notes, ...drawnAhead(ingredient, view), ...pathsTold(ways)],
  };
}

/** A fill by volume, with the density that makes it a mass. */
function filledAs({ product: { fill, formula: id }, formulas }: CostView): string {
  const { typed } = fill;
  if (UNITS[typed.unit].kind !== "volume") return "";
  const density = formulas.find((formula) => formula.id === id)?.density ?? null;
  return ` (${amountShown(typed)}${density === null ? "" : ` × ${densityShown(density)}`})`;
}

/** Why a usual run would draw more or less of it today than the formula holds. @rule AHEAD-6 */
function drawnAhead({ line: { material }, fraction }: IngredientInUnit, view: CostView): readonly string[] {
  const held = view.compositionOf(view.product.formula).get(material.id) ?? ZERO;
  const difference = compare(fraction, held);
  const premix = view.premixOf(material.id);
  if (difference === 0) return [];
  if (difference > 0 && premix)
    return [`The shelf has it made ahead: it is drawn instead of making ${premix.name} anew.`];
  return [`The formula holds ${fractionShown(held)}; the rest is in what the shelf has made ahead.`];
}

/** What is made beyond the fill: each part in grams, then at the price of a gram of the mixture. */
export function lossesWorking({ overfill, heel, process, quantity, cost }: Losses, view: CostView): Opened {
  const { product, cost: unit, breakdown, currency } = view;
  const parts: readonly { readonly amount: Fraction; readonly reason: string }[] = [
    { amount: overfill, reason: "overfilled, and given away" },
    {
      amount: heel,
      reason: `stays in the vessel: ${product.heel ? amountShown(product.heel.typed) : "nothing"} ÷ ${countShown(product.usualRun)} units`,
    },
    {
      amount: process,
      reason: `lost on the way: ${rateShown(product.processLoss)} of the ${gramsShown(breakdown.made)} made`,
    },
  ];
  const there = parts.filter(({ amount }) => amount.over !== 0n);
  const each = unit.ingredients && dividedBy(unit.ingredients, breakdown.made);
  return {
    lines: [
      ...there.map(({ amount, reason }, at): WorkingLine => ({
        ...(at > 0 && { operator: "+" as const }),
        figure: gramsShown(amount),
        reason,
      })),
      result(gramsShown(quantity), "made for one unit beyond what is filled"),
      ...(each
        ? [
            {
              operator: "×" as const,
              figure: pricePerGramShown(each, "mass", currency),
              reason: "for one gram of all ingredients together",
            },
            result(inWorking(cost, view), "for one unit"),
          ]
        : []),
    ],
    notes: each ? [] : ["What it costs is not known, because an ingredient has no price."],
  };
}

/** An item of the packaging: its price, its amount, and the share that is spoilt while it is handled. */
export function packagingWorking(item: PackagingItem, line: CostLine, use: CostUse, view: CostView): Opened {
  const amount: WorkingLine = { operator: "×", figure: amountShown(item.amount.typed), reason: "on each unit" };
  const good = whole(1_000_000n - item.spoilage);
  const handled: WorkingLine = {
    operator: "÷",
    figure: percentShown(good),
    reason: `of what is handled is good; ${rateShown(item.spoilage)} is spoilt`,
  };
  return itemWorking(item.spoilage > 0n ? [amount, handled] : [amount], line, use, view);
}

/** An item that a run uses whatever its size. */
export function perRunWorking(item: PerRunItem, line: CostLine, use: CostUse, view: CostView): Opened {
  const lines: readonly WorkingLine[] = [
    { operator: "×", figure: amountShown(item.amount.typed), reason: "for a run of any size" },
    { operator: "÷", figure: countShown(view.product.usualRun), reason: "units in a usual run" },
  ];
  return itemWorking(lines, line, use, view);
}

function itemWorking(
  lines: readonly WorkingLine[],
  { material, price }: CostLine,
  use: CostUse,
  view: CostView,
): Opened {
  const priced = priceWorking(material, price, view);
  if (price === null) return priced;
  return { lines: [...priced.lines, ...lines, result(inWorking(use.cost, view), "for one unit")], notes: priced.notes };
}

/** Bench time at an hourly rate. */
export function timeWorking(cost: Fraction, perHour: MicroUnits, view: CostView): Opened {
  const { product, cost: unit, currency } = view;
  const shareOfRun = dividedBy(decimalValue(product.labourMinutesPerRun), whole(product.usualRun));
  return {
    lines: [
      { figure: minutesShown(product.labourMinutesPerRun), reason: "for a run of any size" },
      { operator: "÷", figure: countShown(product.usualRun), reason: "units in a usual run" },
      result(minutesShown(shareOfRun), "of it for one unit"),
      { operator: "+", figure: minutesShown(product.labourMinutesPerUnit), reason: "for each unit" },
      result(minutesShown(unit.minutes), "at the bench for one unit"),
      { operator: "×", figure: priceShown(perHour, currency), reason: "for an hour of 60 min" },
      result(inWorking(cost, view), "for one unit"),
    ],
    notes: perHour === 0n ? ["No hourly rate is set. Set it in the Book, under Rates and calendar."] : [],
  };
}
