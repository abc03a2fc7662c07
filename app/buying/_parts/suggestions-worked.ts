/** What a textbook's order comes to for an offer. @rule BUY-14 */
import { economicOrder } from "@/lib/domain/buying/reorder-suggestions";
import { ratio, roundedHalfEven, times, whole } from "@/lib/domain/fraction";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Offer } from "@/lib/domain/workshop";
import type { SuggestionInputs } from "@/lib/edge/forms/suggestion-inputs";

const DAYS_OF_YEAR = 365n;

/** What is used in a year, at the use of a day. */
export const yearlyUseOf = ({ demand }: Pick<SuggestionInputs, "demand">): Stock =>
  quantity<Stock>(roundedHalfEven(times(demand.useOfDay, whole(DAYS_OF_YEAR))));

/** The order that costs least in a year with its keeping, at what an offer asks; null where there is none. @rule BUY-14 */
export function economicOf({ demand, orderCost, keeping }: SuggestionInputs, offer: Offer) {
  const each = (price: bigint) => ratio(price, offer.pack.quantity);
  const breaks = offer.breaks
    .map(({ packs, price }) => ({ from: quantity<Stock>(packs * offer.pack.quantity), each: each(price) }))
    .sort((a, b) => (a.from < b.from ? -1 : 1));
  return economicOrder({
    order: orderCost,
    yearlyUse: yearlyUseOf({ demand }),
    keeping,
    prices: [{ from: quantity<Stock>(0n), each: each(offer.price) }, ...breaks],
  });
}
