/** Whether an offer's price still holds, in a sentence. @rule OFFER-3 */
import type { Day } from "@/lib/domain/calendar";
import { type Drift, PRICE_KEEPS_DAYS } from "@/lib/domain/landed";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Offer } from "@/lib/domain/workshop";
import { dayShown, daysShown, priceShown } from "@/lib/edge/figures";

export function driftSays(drift: Drift | null, offer: Offer, today: Day, currency: CurrencyCode): string {
  if (drift === null) return offer.confirmedOn === null ? "" : `Confirmed ${dayShown(offer.confirmedOn, today)}.`;
  switch (drift.kind) {
    case "paid otherwise":
      return `${dayShown(drift.on, today)} a pack was paid ${priceShown(drift.paid, currency)}, and the offer says ${priceShown(drift.says, currency)}.`;
    case "confirmed long ago":
      return `Confirmed ${dayShown(drift.on, today)}, ${daysShown(drift.days)} ago: more than ${daysShown(PRICE_KEEPS_DAYS)}, so ask again.`;
    case "never confirmed":
      return "Nobody has written down when it was last confirmed.";
  }
}
