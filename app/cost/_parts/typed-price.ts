import { times, whole } from "@/lib/domain/fraction";
import { type CurrencyCode, type MicroUnits, moneyTextInFull } from "@/lib/domain/money";
import { type DecimalText, decimalValue, LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import { readTypedMoney } from "@/lib/edge/forms/typed-amount";
import { decimalTyped } from "@/lib/edge/notation";
import type { TypedPrices } from "./price-answer";
import type { Prices } from "./sold";

/** A price as it stands in its field. */
export const priceText = (price: MicroUnits | null, currency: CurrencyCode): string =>
  price === null ? "" : decimalTyped(moneyTextInFull(price, currency));

export const pricesText = ({ priceToShops, priceToCustomers }: Prices, currency: CurrencyCode): TypedPrices => ({
  priceToShops: priceText(priceToShops, currency),
  priceToCustomers: priceText(priceToCustomers, currency),
});

/**
 * The price that somebody is typing, while it is typed: null where there is none yet. What is wrong with it is told
 * when the form is sent, by the reader of the workshop file.
 */
export function priceBeingTyped(typed: string, currency: CurrencyCode): MicroUnits | null {
  const decimal = readTypedMoney(typed, currency);
  if ("fault" in decimal) return null;
  const { over, under } = times(decimalValue(decimal.value as DecimalText), whole(1_000_000n));
  const isPrice = over % under === 0n && over > 0n && over / under <= LARGEST_FIGURE;
  return isPrice ? quantity<MicroUnits>(over / under) : null;
}
