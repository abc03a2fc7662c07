/** What one µg or one piece of a material costs, on each basis. @rule COST-3, COST-4, COST-5 */
import type { Day } from "./calendar";
import { byCodePoint } from "./code-point-order";
import { compare, dividedBy, type Fraction, minus, plus, ratio, times, whole, ZERO } from "./fraction";
import { byDrawOrder, isUsable } from "./lots";
import type { MicroUnits } from "./money";
import { totalMoney } from "./money";
import type { Price, PriceSource } from "./plan-figures";
import { type Packs, quantity, type Stock } from "./quantity";
import type { Lot, Offer } from "./workshop";

/** The price of one pack when so many are bought together: that of the highest break reached. */
export function packPrice(offer: Offer, packs: Packs): MicroUnits {
  let best: { readonly packs: bigint; readonly price: MicroUnits } = { packs: 0n, price: offer.price };
  for (const each of offer.breaks) if (each.packs <= packs && each.packs > best.packs) best = each;
  return best.price;
}

/** The offer's price for one µg or piece at its smallest order. */
const priceAtSmallestOrder = (offer: Offer): Fraction => ratio(packPrice(offer, offer.minPacks), offer.pack.quantity);

/**
 * The offer that a material is priced by and ordered from: the preferred one, else the cheapest at its smallest order.
 * @param offers  of one material
 * @rule COST-3
 */
export function pricedOffer(offers: readonly Offer[]): Offer | null {
  const preferred = offers.find((offer) => offer.preferred);
  if (preferred) return preferred;
  return offers.reduce<Offer | null>((best, offer) => (best === null || isCheaper(offer, best) ? offer : best), null);
}

function isCheaper(a: Offer, b: Offer): boolean {
  const difference = compare(priceAtSmallestOrder(a), priceAtSmallestOrder(b));
  return difference < 0 || (difference === 0 && byCodePoint(a.id, b.id) < 0);
}

/** What a material can be priced from today. */
export interface PriceBook {
  /** Null where neither an offer nor a usable lot prices it. */
  readonly replacement: Price | null;
  readonly average: Price | null;
  /** Usable lots with something left, in draw order. */
  readonly usableLots: readonly Lot[];
}

/**
 * @param offers  of one material
 * @param lots    of the same material
 */
export function priceBook(offers: readonly Offer[], lots: readonly Lot[], today: Day): PriceBook {
  const usableLots = lots.filter((lot) => lot.remaining > 0n && isUsable(lot, today)).sort(byDrawOrder);
  const fromLots = averageOf(usableLots);
  const offer = pricedOffer(offers);
  const fromOffer = offer && priceFrom(offer);
  return { replacement: fromOffer ?? fromLots, average: fromLots ?? fromOffer, usableLots };
}

function priceFrom(offer: Offer): Price {
  const from: PriceSource = {
    kind: "offer",
    offer,
    packs: offer.minPacks,
    packPrice: packPrice(offer, offer.minPacks),
  };
  return { each: priceAtSmallestOrder(offer), from };
}

function averageOf(lots: readonly Lot[]): Price | null {
  if (lots.length === 0) return null;
  const value = totalMoney(lots.map((lot) => lot.value));
  const held = quantity<Stock>(lots.reduce((sum, lot) => sum + lot.remaining, 0n));
  return { each: ratio(value, held), from: { kind: "average", value, quantity: held } };
}

/**
 * The price of a quantity if it were drawn from the shelf today, what is lacking at replacement. Nothing is posted
 * and nothing is rounded.
 * @param wanted  exact µg or pieces, above zero
 * @rule COST-4
 */
export function shelfPrice(book: PriceBook, wanted: Fraction): Price | null {
  const draws: { lot: Lot; quantity: Fraction; value: Fraction }[] = [];
  let open = wanted;
  let value = ZERO;
  for (const lot of book.usableLots) {
    if (open.over === 0n) break;
    const takesAll = compare(open, whole(lot.remaining)) >= 0;
    const drawn = takesAll ? whole(lot.remaining) : open;
    const worth = takesAll ? whole(lot.value) : times(ratio(lot.value, lot.remaining), drawn);
    draws.push({ lot, quantity: drawn, value: worth });
    value = plus(value, worth);
    open = minus(open, drawn);
  }
  if (open.over > 0n) {
    if (book.replacement === null) return null;
    value = plus(value, times(open, book.replacement.each));
    if (draws.length === 0) return book.replacement;
  }
  const topUp = open.over > 0n && book.replacement ? { quantity: open, price: book.replacement } : null;
  return { each: dividedBy(value, wanted), from: { kind: "shelf", draws, topUp } };
}
