/** The textbook's figures, with what was written put into their formulas. @rule BUY-13, BUY-14 */
import type { WorkingLine } from "@/app/_ui/working";
import {
  type DemandAndLead,
  deviationsFor,
  type EconomicOrder,
  reorderPoint,
  safetyStockFor,
  varianceOverLead,
} from "@/lib/domain/buying/reorder-suggestions";
import { type Fraction, roundedDown, times, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Measure, Stock } from "@/lib/domain/quantity";
import { rootDown } from "@/lib/domain/whole-root";
import { gramsShown, moneyShown, pricePerGramShown, quotientShown, rateShown, stockInFull } from "@/lib/edge/figures";
import type { SuggestionInputs } from "@/lib/edge/forms/suggestion-inputs";

/** A use of a day has parts of a microgram, and of a piece. */
export const shareOf = (held: Fraction, measure: Measure): string =>
  measure === "mass" ? gramsShown(held) : `${quotientShown(held)} pieces`;

/** `√(7 × 12.50 g² + …)`, times z. */
export function safetyLines(demand: DemandAndLead, measure: Measure): readonly WorkingLine[] {
  const { useOfDay, useDeviation, lead, leadDeviation, service } = demand;
  const [use, deviation] = [shareOf(useOfDay, measure), shareOf(useDeviation, measure)];
  const overLead = rootDown(roundedDown(varianceOverLead(demand)));
  return [
    {
      figure: shareOf(whole(overLead), measure),
      reason: `√(${quotientShown(lead)} × (${deviation})² + (${use})² × ${quotientShown(leadDeviation)}²), the deviation of what a lead time uses`,
    },
    {
      operator: "×",
      figure: quotientShown(deviationsFor(service)),
      reason: `z: ${rateShown(service)} of the normal distribution lies below the mean and so many standard deviations`,
    },
    { figure: stockInFull(safetyStockFor(demand), measure), reason: "safety stock, rounded up", isResult: true },
  ];
}

export const pointLines = (demand: DemandAndLead, measure: Measure): readonly WorkingLine[] => [
  { figure: shareOf(demand.useOfDay, measure), reason: "used in a day" },
  { operator: "×", figure: quotientShown(demand.lead), reason: "days of lead time, and rounded up" },
  { operator: "+", figure: stockInFull(safetyStockFor(demand), measure), reason: "safety stock, as above" },
  { figure: stockInFull(reorderPoint(demand), measure), reason: "left when the next order goes out", isResult: true },
];

interface Economic {
  readonly order: EconomicOrder;
  readonly inputs: SuggestionInputs;
  readonly yearlyUse: Stock;
  readonly measure: Measure;
  readonly currency: CurrencyCode;
}

export function economicLines({ order, inputs, yearlyUse, measure, currency }: Economic): readonly WorkingLine[] {
  const { quantity, root, each, keepingEach, goods, ordering, kept, yearlyCost } = order;
  const money = (micros: bigint | Fraction): string => moneyShown(micros, currency, 2);
  const one = measure === "mass" ? "one gram" : "one piece";
  const used = stockInFull(yearlyUse, measure);
  return [
    { figure: pricePerGramShown(each, measure, currency), reason: `what ${one} costs, for so many` },
    { operator: "×", figure: rateShown(inputs.keeping), reason: "of it is what keeping costs in a year" },
    { figure: pricePerGramShown(keepingEach, measure, currency), reason: `keeping ${one} for a year`, isResult: true },
    {
      figure: stockInFull(root, measure),
      reason: `√(2 × ${money(inputs.orderCost)} × ${used} ÷ that): ${used} is the use of 365 days`,
    },
    ...(root === quantity
      ? []
      : [{ figure: stockInFull(quantity, measure), reason: "the least for which that price holds", isResult: true }]),
    { figure: money(goods), reason: `goods of a year, ${used}` },
    {
      operator: "+",
      figure: money(ordering),
      reason: `${quotientShown(times(whole(yearlyUse), { over: 1n, under: quantity }))} orders at ${money(inputs.orderCost)}`,
    },
    { operator: "+", figure: money(kept), reason: "keeping half an order at all times" },
    { figure: money(yearlyCost), reason: "in a year", isResult: true },
  ];
}
