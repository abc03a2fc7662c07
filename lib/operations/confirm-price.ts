import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { MicroUnits } from "@/lib/domain/money";
import { packPriceAt } from "@/lib/domain/orders";
import type { Packs } from "@/lib/domain/quantity";
import type { Offer } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";

export interface PriceConfirmed {
  readonly offer: string;
  /** How many packs were taken: it is the price at so many, a break's where one is reached. */
  readonly packs: Packs;
  /** What the offer asked for a pack as the page was drawn. */
  readonly from: MicroUnits;
  readonly to: MicroUnits;
  readonly on: Day;
}

export type ConfirmPriceResult =
  | { readonly kind: "changed"; readonly offer: Offer; readonly books: Books }
  | { readonly kind: "as asked" }
  | { readonly kind: "not there" }
  /** Another tab changed the price meanwhile. */
  | { readonly kind: "price changed"; readonly offer: Offer };

/** An offer asks from now on what was paid, confirmed on that day; pressed twice it is done once. @rule OFFER-3 */
export const confirmPrice = (asked: PriceConfirmed) => onTheBooks((books) => decideConfirmPrice(books, asked));

export function decideConfirmPrice(
  books: Books,
  { offer: id, packs, from, to, on }: PriceConfirmed,
): ConfirmPriceResult {
  const offer = books.workshop.offers.find((each) => each.id === id);
  if (offer === undefined) return { kind: "not there" };
  const now = packPriceAt(offer, packs);
  // A day that was confirmed later than this delivery stays.
  const confirmedOn = offer.confirmedOn !== null && offer.confirmedOn > on ? offer.confirmedOn : on;
  if (now === to && offer.confirmedOn === confirmedOn) return { kind: "as asked" };
  if (now !== from) return { kind: "price changed", offer };
  const changed = { ...withPriceAt(offer, packs, to), confirmedOn };
  const offers = books.workshop.offers.map((each) => (each === offer ? changed : each));
  return { kind: "changed", offer: changed, books: { ...books, workshop: { ...books.workshop, offers } } };
}

/** The offer with another price for so many packs: its own, or that of the break which they reach. */
function withPriceAt(offer: Offer, packs: Packs, price: MicroUnits): Offer {
  const reached = offer.breaks.filter((each) => each.packs <= packs);
  const best = reached.find((each) => reached.every((other) => other.packs <= each.packs));
  if (best === undefined) return { ...offer, price };
  return { ...offer, breaks: offer.breaks.map((each) => (each === best ? { ...each, price } : each)) };
}
