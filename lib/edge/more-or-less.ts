/** A difference of money with its sign: `+£0.04`, `−£0.04`, `none`. */
import type { Fraction } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { moneyShown } from "./figures";

/** @param extraDecimals  beyond the currency's own: 2 for the lines of a working */
export function moreOrLess(difference: Fraction, currency: CurrencyCode, extraDecimals = 0): string {
  if (difference.over === 0n) return "none";
  return `${difference.over > 0n ? "+" : ""}${moneyShown(difference, currency, extraDecimals)}`;
}
