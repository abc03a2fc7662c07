/** A price taken apart down to what is kept of it, and what follows from that. */
import { dividedBy, type Fraction, minus, whole } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import type { Kept } from "@/lib/domain/pricing";
import type { Units } from "@/lib/domain/quantity";
import { countShown, moneyShown, priceShown, quotientShown, rateShown, shareShown } from "@/lib/edge/figures";
import type { WorkingLine } from "@/app/_ui/working";
import type { SaleSettings, Sold } from "./sold";

const DECIMALS_BEYOND = 2;

/** From the price to what is kept of it. */
export function keptWorking(sold: Sold, kept: Kept, settings: SaleSettings): readonly WorkingLine[] {
  const { currency, tax, paymentFee, paymentFeeFixed } = settings;
  const money = (amount: Fraction): string => moneyShown(amount, currency, DECIMALS_BEYOND);
  const fixed = paymentFeeFixed > 0n ? ` and ${priceShown(paymentFeeFixed, currency)}` : "";
  return [
    { figure: priceShown(kept.price, currency), reason: `the price to ${sold}` },
    ...(kept.tax.over > 0n
      ? [{ operator: "−" as const, figure: money(kept.tax), reason: `tax inside it, at ${rateShown(tax)}` }]
      : []),
    ...(kept.fee.over > 0n
      ? [{ operator: "−" as const, figure: money(kept.fee), reason: `payment fee, ${rateShown(paymentFee)}${fixed}` }]
      : []),
    { operator: "−", figure: money(kept.cost), reason: "what one costs" },
    { figure: money(kept.kept), reason: "kept of one", isResult: true },
  ];
}

/** From the price to its margin. */
export function marginWorking(sold: Sold, kept: Kept, settings: SaleSettings): readonly WorkingLine[] {
  const withoutTax = minus(whole(kept.price), kept.tax);
  return [
    ...keptWorking(sold, kept, settings),
    {
      operator: "÷",
      figure: moneyShown(withoutTax, settings.currency, DECIMALS_BEYOND),
      reason: kept.tax.over > 0n ? "the price without tax" : "the price",
    },
    { figure: shareShown(kept.margin), reason: "margin", isResult: true },
  ];
}

/** From the price to its margin, and to what is kept as a share of the cost. */
export function marginAndMarkup(sold: Sold, kept: Kept, settings: SaleSettings): readonly WorkingLine[] {
  const money = (amount: Fraction): string => moneyShown(amount, settings.currency, DECIMALS_BEYOND);
  if (kept.markup === null) return marginWorking(sold, kept, settings);
  return [
    ...marginWorking(sold, kept, settings),
    { figure: money(kept.kept), reason: "kept of one" },
    { operator: "÷", figure: money(kept.cost), reason: "what one costs" },
    { figure: shareShown(kept.markup), reason: "markup", isResult: true },
  ];
}

/** From what is kept of one to how many pay a month. @rule PRICE-5 */
export function monthWorking(
  sold: Sold,
  month: MicroUnits,
  kept: Kept,
  units: Units,
  settings: SaleSettings,
): readonly WorkingLine[] {
  const exact = dividedBy(whole(month), kept.kept);
  return [
    ...keptWorking(sold, kept, settings),
    { figure: priceShown(month, settings.currency), reason: "costs of the month" },
    {
      operator: "÷",
      figure: moneyShown(kept.kept, settings.currency, DECIMALS_BEYOND),
      reason: "kept of one, exactly as above before it is shown",
    },
    { figure: quotientShown(exact), reason: "units", isResult: true },
    { figure: countShown(units), reason: "rounded up, since only whole units are sold", isResult: true },
  ];
}
