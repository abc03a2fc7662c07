import { type Fraction, minus, whole } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import type { Kept } from "@/lib/domain/pricing";
import { moneyShown, priceShown, rateShown, shareShown } from "@/lib/edge/figures";
import type { SlipLine } from "@/app/_ui/slip";
import { keptOf, type SaleSettings, type Sold } from "./sold";

const NOT_KNOWN = { figure: "not known", tone: "soft" } as const;

/** A price taken apart, line by line. It has the same lines whether the price, the cost, both or neither are known. */
export function priceLines(
  sold: Sold,
  price: MicroUnits | null,
  perUnit: Fraction | null,
  settings: SaleSettings,
): readonly SlipLine[] {
  const kept = keptOf(sold, price, perUnit, settings);
  // What is taken of a price does not depend on the cost.
  const taken = keptOf(sold, price, whole(0n), settings);
  return [
    price === null
      ? { name: "Price", figure: "none", tone: "soft" }
      : { name: "Price", figure: priceShown(price, settings.currency) },
    ...(sold === "shops" ? TO_SHOPS : toCustomers(taken, settings)),
    perUnit ? { name: "Cost", figure: lessShown(perUnit, settings) } : { name: "Cost", ...NOT_KNOWN },
    ...endLines(kept, settings),
  ];
}

const TO_SHOPS: readonly SlipLine[] = [
  { name: "Tax", figure: "on top", tone: "soft" },
  { name: "Payment fee", figure: "none", tone: "soft" },
];

const lessShown = (what: Fraction, { currency }: SaleSettings): string => moneyShown(minus(whole(0n), what), currency);

function toCustomers(taken: Kept | null, settings: SaleSettings): readonly SlipLine[] {
  const { currency, tax, paymentFee, paymentFeeFixed } = settings;
  const fixed = paymentFeeFixed > 0n ? ` + ${priceShown(paymentFeeFixed, currency)}` : "";
  const hasFee = paymentFee > 0n || paymentFeeFixed > 0n;
  return [
    takenLine(tax > 0n ? `Tax, ${rateShown(tax)}` : "Tax", tax > 0n, taken?.tax, settings),
    takenLine(hasFee ? `Fee, ${rateShown(paymentFee)}${fixed}` : "Payment fee", hasFee, taken?.fee, settings),
  ];
}

function takenLine(name: string, isTaken: boolean, what: Fraction | undefined, settings: SaleSettings): SlipLine {
  if (!isTaken) return { name, figure: "none", tone: "soft" };
  return what ? { name, figure: lessShown(what, settings) } : { name, ...NOT_KNOWN };
}

function endLines(kept: Kept | null, { currency }: SaleSettings): readonly SlipLine[] {
  if (kept === null)
    return [
      { name: "Kept", ...NOT_KNOWN, end: true },
      { name: "Margin", ...NOT_KNOWN },
      { name: "Markup", ...NOT_KNOWN },
    ];
  const loses = kept.kept.over < 0n;
  return [
    {
      name: loses ? "Lost" : "Kept",
      figure: moneyShown(kept.kept, currency),
      end: true,
      ...(loses && { tone: "warn" as const }),
    },
    { name: "Margin", figure: shareShown(kept.margin) },
    kept.markup
      ? { name: "Markup", figure: shareShown(kept.markup) }
      : { name: "Markup", figure: "no cost", tone: "soft" },
  ];
}

/** Lines that say of each figure what it was before, where it was another. */
export const withWas = (lines: readonly SlipLine[], before: readonly SlipLine[] | null): readonly SlipLine[] =>
  lines.map((line, at) => {
    const was = before?.[at]?.figure;
    return was === undefined || was === line.figure ? line : { ...line, was };
  });
