/** What a frame makes of one purchase: how much of it keeps until it is used, and what its leftovers are worth. */
import { type Day, daysBetween } from "../calendar";
import type { MicroUnits } from "../money";
import type { MaterialOutlook } from "../plan-figures";
import { type PartsPerMillion, quantity, type Stock, WHOLE } from "../quantity";
import type { Material, Offer } from "../workshop";
import type { LeftOverWorth } from "./basket-problem";
import { lostOf, shelfToCome } from "./keeping";
import type { Candidate, Purchase } from "./shopping-list";

export interface Ahead {
  readonly today: Day;
  readonly lastDay: Day;
}

/** So much of what is wanted would be out of date before a run takes it, whoever it is bought from. */
export interface OutOfDateBeforeUse {
  readonly kind: "out of date before use";
  readonly material: Material;
  readonly wanted: Stock;
  readonly used: Stock;
  /** The last day of use of what would come. */
  readonly lastUse: Day;
}

/**
 * The purchase without what every candidate would let go out of date before it is used, and what must keep of it.
 * What whole packs force may be lost: the least that one candidate leaves which alone covers the purchase.
 * @param outlook  of the material, whose shelf and runs are projected again with the purchase
 * @returns the purchase, or null where nothing of it would be used in time; and the fault where it is not bought whole
 * @rule BUY-16
 */
export function keptPurchase(
  purchase: Purchase,
  outlook: MaterialOutlook,
  { today, lastDay }: Ahead,
): { readonly purchase: Purchase | null; readonly fault: OutOfDateBeforeUse | null } {
  const { material, candidates } = purchase;
  if (candidates.every(({ expires }) => expires === null || expires >= lastDay)) return { purchase, fault: null };
  const shelf = shelfToCome(outlook, today, lastDay);
  const lostAlone = ({ arrives, expires }: Candidate, bought: bigint) =>
    lostOf(shelf, [{ arrives, expires, quantity: quantity<Stock>(bought) }]);
  const wanted = candidates.reduce(
    (most, each) => larger(most, purchase.wanted - lostAlone(each, purchase.wanted)),
    0n,
  );
  const lastUse = Math.max(...candidates.map(({ expires }) => expires ?? lastDay)) as Day;
  const fault: OutOfDateBeforeUse | null =
    wanted === purchase.wanted
      ? null
      : { kind: "out of date before use", material, wanted: purchase.wanted, used: quantity<Stock>(wanted), lastUse };
  if (wanted === 0n) return { purchase: null, fault };
  const forced = candidates.map((each) => {
    const packs = larger(dividedUp(wanted, each.offer.pack.quantity), each.offer.minPacks);
    return lostAlone(each, packs * each.offer.pack.quantity);
  });
  const mostLost = quantity<Stock>(forced.reduce((a, b) => (a < b ? a : b)));
  return { purchase: { ...purchase, wanted: quantity<Stock>(wanted), keeping: { ...shelf, mostLost } }, fault };
}

/** What is of use is counted in so many steps at the most. */
const MOST_STEPS = 40n;

/**
 * What leftovers count for: a share of the lowest price that a candidate can be had at, for as much as the runs up to
 * the plan's last day take once more, and no longer than the candidate that keeps shortest.
 * @rule BUY-17
 */
export function leftOverWorthOf(
  { candidates }: Pick<Purchase, "candidates">,
  { events }: Pick<MaterialOutlook, "events">,
  share: PartsPerMillion,
  { today, lastDay }: Ahead,
): LeftOverWorth | null {
  const taken = events.reduce((sum, event) => (event.kind === "drawn" ? sum + event.need : sum), 0n);
  const days = BigInt(daysBetween(today, lastDay));
  if (share === 0n || taken === 0n || days === 0n) return null;
  const useful = candidates.reduce((least, { expires }) => {
    if (expires === null) return least;
    const beyond = BigInt(Math.max(0, daysBetween(lastDay, expires)));
    const used = beyond < days ? (taken * beyond) / days : taken;
    return used < least ? used : least;
  }, taken);
  const step = dividedUp(useful, MOST_STEPS);
  if (step === 0n) return null;
  const worth = candidates
    .flatMap(({ offer }) => pricesOf(offer).map((price) => (share * price * step) / (WHOLE * offer.pack.quantity)))
    .reduce((a, b) => (a < b ? a : b));
  if (worth === 0n) return null;
  return { step: quantity<Stock>(step), worth: quantity<MicroUnits>(worth), most: useful / step };
}

const pricesOf = ({ price, breaks }: Offer): readonly bigint[] => [price, ...breaks.map((each) => each.price)];

const larger = (a: bigint, b: bigint): bigint => (a > b ? a : b);
const dividedUp = (over: bigint, under: bigint): bigint => (over + under - 1n) / under;
