/** What a maker would order who takes the lowest unit price, one material at a time. @rule BUY-7 */
import { byCodePoint } from "../code-point-order";
import { compare, type Fraction, ratio } from "../fraction";
import type { BasketOffer, BasketProblem, PacksByOffer, WantedMaterial } from "./basket-problem";
import { lostOf } from "./keeping";
import { quantity, type Stock } from "../quantity";

/**
 * For each material the offer with the lowest price per µg or piece at the packs that cover what is wanted; ties to
 * the lower offer id. An order that is then below its supplier's minimum gets more packs of the line where that costs
 * least.
 * @returns packs that keep every rule, or null where a limit on packs keeps this way of choosing from it
 */
export function boughtByHand(problem: BasketProblem): PacksByOffer | null {
  const packs = new Map<string, bigint>();
  for (const material of problem.materials) {
    const { id, wanted } = material;
    const lines = problem.offers.flatMap((offer): readonly Line[] => {
      const least = larger(dividedUp(wanted, offer.pack), offer.minPacks);
      return offer.material !== id || isAbove(offer, least) || !isKept(material, offer, least)
        ? []
        : [{ offer, packs: least }];
    });
    const [first, ...others] = lines;
    if (first === undefined) return null;
    const chosen = others.reduce((best, line) => (isLower(line, best) ? line : best), first);
    packs.set(chosen.offer.id, chosen.packs);
  }
  for (const { id, minimumOrder } of problem.suppliers) {
    const lines = problem.offers.filter((offer) => offer.supplier === id && packs.has(offer.id));
    const mayTake = (offer: BasketOffer, count: bigint) =>
      problem.materials.every((each) => each.id !== offer.material || isKept(each, offer, count));
    if (lines.length > 0 && minimumOrder !== null && !raise(lines, minimumOrder, packs, mayTake)) return null;
  }
  return packs;
}

interface Line {
  readonly offer: BasketOffer;
  readonly packs: bigint;
}

function isLower(a: Line, b: Line): boolean {
  const difference = compare(unitPrice(a), unitPrice(b));
  return difference < 0 || (difference === 0 && byCodePoint(a.offer.id, b.offer.id) < 0);
}

const unitPrice = ({ offer, packs }: Line): Fraction => ratio(priceOf(offer, packs), offer.pack);

function priceOf(offer: BasketOffer, packs: bigint): bigint {
  let [from, price]: [bigint, bigint] = [0n, offer.price];
  for (const each of offer.breaks)
    if (each.packs <= packs && each.packs > from) [from, price] = [each.packs, each.price];
  return price;
}

/** Brings an order up to its minimum with more packs of one line. */
function raise(
  lines: readonly BasketOffer[],
  minimum: bigint,
  packs: Map<string, bigint>,
  mayTake: (offer: BasketOffer, count: bigint) => boolean,
): boolean {
  const costOf = (offer: BasketOffer, count: bigint) => count * priceOf(offer, count);
  const goods = lines.reduce((sum, offer) => sum + costOf(offer, packs.get(offer.id) ?? 0n), 0n);
  if (goods >= minimum) return true;
  let best: { readonly id: string; readonly count: bigint; readonly cost: bigint } | null = null;
  for (const offer of lines) {
    const had = packs.get(offer.id) ?? 0n;
    const others = goods - costOf(offer, had);
    const starts = [had + 1n, ...offer.breaks.map((each) => each.packs).filter((from) => from > had)];
    for (const from of starts) {
      const count = larger(from, dividedUp(minimum - others, priceOf(offer, from)));
      const cost = others + costOf(offer, count);
      if (isAbove(offer, count) || cost < minimum || (best !== null && cost >= best.cost)) continue;
      if (!mayTake(offer, count)) continue;
      best = { id: offer.id, count, cost };
    }
  }
  if (best === null) return false;
  packs.set(best.id, best.count);
  return true;
}

/** Whether so many packs of the offer, alone, keep until they are used. @rule BUY-16 */
const isKept = ({ keeping }: WantedMaterial, { keeps, pack }: BasketOffer, packs: bigint): boolean =>
  !keeping || !keeps || lostOf(keeping, [{ ...keeps, quantity: quantity<Stock>(packs * pack) }]) <= keeping.mostLost;

const isAbove = ({ maxPacks }: BasketOffer, packs: bigint): boolean => maxPacks !== null && packs > maxPacks;
const larger = (a: bigint, b: bigint): bigint => (a > b ? a : b);
const dividedUp = (over: bigint, under: bigint): bigint => (over + under - 1n) / under;
