/** Why a line stands in a basket: what the next best choice would have cost, and which rules decided. @rule BUY-12 */
import type { MicroUnits } from "../money";
import { quantity } from "../quantity";
import type { BasketOffer, BasketProblem } from "./basket-problem";
import { type LeastBasket, leastBasket } from "./least-basket";

export interface LineReason {
  readonly offer: string;
  /** What the least basket without the offer costs more; null where no other offer fills its material. */
  readonly withoutIt: { readonly more: MicroUnits; readonly gap: MicroUnits | null } | null;
  /** Rules without which the line would be another: none where its price alone decides. */
  readonly decidedBy: readonly DecidingRule[];
}

/** Rules of the problem itself, and of the frame that it was made in. */
export type DecidingRule = "price break" | "shipping and minimum order" | "least packs" | FrameRule;
export type FrameRule = "goes out of date" | "leftovers count" | "arrival" | "who is left out or held to";

/** The same purchase without one rule of its frame. */
export interface WithoutRule {
  readonly rule: FrameRule;
  readonly problem: BasketProblem;
}

/**
 * Each line of a basket, in the problem's order of offers.
 * @param effort   steps for each question, of which there are up to four a line and one for each rule of the frame
 * @param without  the problem without each rule of the frame that may have decided
 */
export function lineReasons(
  problem: BasketProblem,
  { basket, packs }: LeastBasket,
  effort: number,
  without: readonly WithoutRule[] = [],
): readonly LineReason[] {
  const packsWithout = without.map((each) => ({ rule: each.rule, packs: packsIn(each.problem, effort) }));
  const withoutCharges = packsIn(
    {
      ...problem,
      suppliers: problem.suppliers.map(({ id }) => ({
        id,
        shipping: quantity<MicroUnits>(0n),
        shippingFreeFrom: null,
        minimumOrder: null,
      })),
    },
    effort,
  );
  return problem.offers.flatMap((offer): readonly LineReason[] => {
    const taken = packs.get(offer.id);
    if (taken === undefined) return [];
    const changed = (change: Partial<BasketOffer>) =>
      packsIn(
        { ...problem, offers: problem.offers.map((each) => (each === offer ? { ...each, ...change } : each)) },
        effort,
      ).get(offer.id) !== taken;
    const decidedBy: DecidingRule[] = [];
    if (offer.breaks.length > 0 && changed({ breaks: [] })) decidedBy.push("price break");
    if (withoutCharges.get(offer.id) !== taken) decidedBy.push("shipping and minimum order");
    if (offer.minPacks > 1n && changed({ minPacks: quantity(1n) })) decidedBy.push("least packs");
    for (const each of packsWithout) if (each.packs.get(offer.id) !== taken) decidedBy.push(each.rule);
    return [{ offer: offer.id, withoutIt: costWithout(problem, offer, basket.total, effort), decidedBy }];
  });
}

function costWithout(
  problem: BasketProblem,
  offer: BasketOffer,
  total: bigint,
  effort: number,
): LineReason["withoutIt"] {
  const offers = problem.offers.filter((each) => each !== offer);
  if (!offers.some(({ material }) => material === offer.material)) return null;
  const next = leastBasket({ ...problem, offers }, { effort });
  if (next.kind === "no basket") return null;
  return { more: quantity<MicroUnits>(next.basket.total - total), gap: next.gap };
}

function packsIn(problem: BasketProblem, effort: number): ReadonlyMap<string, bigint> {
  const answer = leastBasket(problem, { effort });
  return answer.kind === "basket" ? answer.packs : new Map();
}
