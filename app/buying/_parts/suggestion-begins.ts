/** With what a suggestion begins before the maker has written anything. */
import type { PlannedUse } from "@/lib/domain/buying/planned-use";
import { type Fraction, ratio, roundedHalfAway, times, whole } from "@/lib/domain/fraction";
import { type CurrencyCode, moneyTextInFull } from "@/lib/domain/money";
import type { Measure } from "@/lib/domain/quantity";
import type { Supplier } from "@/lib/domain/workshop";
import type { SuggestionField, SuggestionTyped } from "@/lib/edge/forms/suggestion-inputs";
import { currencySign } from "@/lib/edge/figures";
import { decimalTyped } from "@/lib/edge/notation";
import { decimalText } from "@/lib/edge/written-figures";

export function beginsWith(
  use: PlannedUse | null,
  supplier: Supplier | null,
  measure: Measure,
  currency: CurrencyCode,
): SuggestionTyped {
  return {
    use: use === null ? "" : numberOf(use.mean, measure),
    spread: use === null ? "0" : numberOf(whole(use.deviation), measure),
    lead: supplier === null ? "0" : calendarDaysOf(supplier),
    leadspread: "0",
    service: "95",
    order: supplier === null ? "" : decimalTyped(moneyTextInFull(supplier.shipping, currency)),
    keeping: "20",
  };
}

const MICROGRAMS_A_GRAM = 1_000_000n;

/** Lead in calendar days: five working days are a week. (Common practice.) */
const calendarDaysOf = ({ leadCounts, leadDays }: Supplier): string =>
  decimalTyped(decimalText(BigInt(leadDays) * (leadCounts === "working" ? 14n : 10n), 1));

/** Grams or pieces with two decimals: where a suggestion begins needs no more. */
function numberOf(amount: Fraction, measure: Measure): string {
  const size = measure === "mass" ? MICROGRAMS_A_GRAM : 1n;
  return decimalTyped(decimalText(roundedHalfAway(times(amount, ratio(100n, size))), 2));
}

export const LABELS = (
  measure: Measure,
  currency: CurrencyCode,
): readonly { readonly field: SuggestionField; readonly label: string }[] => {
  const unit = measure === "mass" ? "g" : "pieces";
  return [
    { field: "use", label: `Use of a day, ${unit}` },
    { field: "spread", label: `Its standard deviation, ${unit}` },
    { field: "lead", label: "Lead time, days" },
    { field: "leadspread", label: "Its standard deviation, days" },
    { field: "service", label: "Orders that should not run short, %" },
    { field: "order", label: `Cost of one order, ${currencySign(currency)}` },
    { field: "keeping", label: "Keeping it for a year, % of its price" },
  ];
};

export const HINTS: Readonly<Record<SuggestionField, string>> = {
  use: "What the planned runs use, over the horizon.",
  spread: "From the weeks of the plan, as if days varied independently.",
  lead: "Of the offer that it is priced by, in calendar days.",
  leadspread: "How much deliveries are early or late. 0 where they never are.",
  service: "95 % is common practice, no source.",
  order: "Delivery, and your time. Without the tax that you reclaim.",
  keeping: "Money tied up, space, what goes off. 20 % is common practice, no source.",
};
