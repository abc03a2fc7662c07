/** What delivery adds to goods, what a kilo or a piece costs in the house, and whether an offer has drifted from that. */
import { type Day, daysBetween } from "./calendar";
import { type Fraction, ratio } from "./fraction";
import type { LotReceived } from "./ledger/receipt";
import type { MicroUnits } from "./money";
import { packPriceAt } from "./orders";
import { quantity } from "./quantity";
import type { Offer } from "./workshop";

/** Exact micro-units for one µg or piece, with its shares of delivery and duty. @rule ORDER-6 */
export const landedEach = ({ landed, quantity: came }: Pick<LotReceived, "landed" | "quantity">): Fraction =>
  ratio(landed, came);

/** The same before delivery and duty. */
export const paidEach = ({ paid, quantity: came }: Pick<LotReceived, "paid" | "quantity">): Fraction =>
  ratio(paid, came);

/** What each pack cost, or null where that is no whole number of micro-units. */
export const packPaid = ({ paid, packs }: Pick<LotReceived, "paid" | "packs">): MicroUnits | null =>
  paid % packs === 0n ? quantity<MicroUnits>(paid / packs) : null;

/** After so many days a confirmed price is worth asking for again. (Common practice, no source.) @rule OFFER-3 */
export const PRICE_KEEPS_DAYS = 180;

export type Drift =
  /** The last price paid for it is not what it asks for so many packs. */
  | { readonly kind: "paid otherwise"; readonly paid: MicroUnits; readonly says: MicroUnits; readonly on: Day }
  | { readonly kind: "confirmed long ago"; readonly on: Day; readonly days: number }
  | { readonly kind: "never confirmed" };

/**
 * What speaks against an offer's price. What was paid before it was last confirmed counts no more.
 * @param received  what came of its material, by the day
 * @rule OFFER-3
 */
export function driftOf(offer: Offer, received: readonly LotReceived[], today: Day): Drift | null {
  const last = received.findLast((each) => each.offer === offer.id);
  const paid = last === undefined ? null : packPaid(last);
  if (last !== undefined && paid !== null && (offer.confirmedOn === null || last.day >= offer.confirmedOn)) {
    const says = packPriceAt(offer, last.packs);
    if (paid !== says) return { kind: "paid otherwise", paid, says, on: last.day };
  }
  if (offer.confirmedOn === null) return { kind: "never confirmed" };
  const days = daysBetween(offer.confirmedOn, today);
  return days > PRICE_KEEPS_DAYS ? { kind: "confirmed long ago", on: offer.confirmedOn, days } : null;
}
