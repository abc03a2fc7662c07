/** The least-cost basket of a problem whose leftovers are worth nothing, each part searched by itself. @rule BUY-5, BUY-8 */
import type { MicroUnits } from "../money";
import { quantity } from "../quantity";
import type { BasketProblem, PacksByOffer } from "./basket-problem";
import { boughtByHand } from "./by-hand";
import { checkedBasket } from "./checked-basket";
import { componentsOf } from "./components";
import { withoutDominated } from "./dominated-offers";
import { searched } from "./exact-search";
import { type ScaledProblem, scaled } from "./scaled-problem";
import type { Choice } from "./search-node";

export type LeastOfParts =
  | {
      readonly kind: "found";
      readonly packs: PacksByOffer;
      readonly total: bigint;
      readonly bound: bigint;
      readonly effortUsed: number;
    }
  | { readonly kind: "none"; readonly isProven: boolean };

/** How far the search has come: micro-units of the parts done and the part at hand. */
export interface Progress {
  readonly total: MicroUnits | null;
  readonly bound: MicroUnits;
  /** Suppliers of which the choice at hand has decided whether to order from them, and how many there are. */
  readonly suppliersDecided: number;
  readonly suppliers: number;
}

export interface PartsOrders {
  readonly effort: number;
  /** Baskets to beat. */
  readonly starts: readonly PacksByOffer[];
  readonly mayGoOn?: ((soFar: Progress) => boolean) | undefined;
}

/** Whether the figures of every part are small enough to be searched exactly; else its best known basket stands. */
export const canBeSearched = (problem: BasketProblem): boolean =>
  componentsOf(withoutDominated(problem)).every((part) => scaled(part) !== null);

export function leastOfParts(problem: BasketProblem, orders: PartsOrders): LeastOfParts {
  const packs = new Map<string, bigint>();
  let [total, bound, done, effortUsed] = [0n, 0n, 0, 0];
  for (const part of componentsOf(withoutDominated(problem))) {
    const [totalBefore, boundBefore, doneBefore] = [total, bound, done];
    const { mayGoOn } = orders;
    const tell =
      mayGoOn &&
      ((soFar: PartProgress) =>
        mayGoOn({
          total: soFar.total === null ? null : quantity<MicroUnits>(totalBefore + soFar.total),
          bound: quantity<MicroUnits>(boundBefore + soFar.bound),
          suppliersDecided: doneBefore + soFar.decided,
          suppliers: problem.suppliers.length,
        }));
    const answer = leastOfPart(part, orders, tell);
    if (answer.packs === null) return { kind: "none", isProven: answer.isProven };
    for (const [offer, count] of answer.packs) packs.set(offer, count);
    total += answer.total;
    bound += answer.bound;
    done += part.suppliers.length;
    effortUsed += answer.effortUsed;
  }
  return { kind: "found", packs, total, bound, effortUsed };
}

interface PartProgress {
  readonly total: bigint | null;
  readonly bound: bigint;
  readonly decided: number;
}

type PartAnswer =
  | { readonly packs: PacksByOffer; readonly total: bigint; readonly bound: bigint; readonly effortUsed: number }
  | { readonly packs: null; readonly isProven: boolean };

function leastOfPart(
  part: BasketProblem,
  { effort, starts }: PartsOrders,
  mayGoOn: ((soFar: PartProgress) => boolean) | undefined,
): PartAnswer {
  const small = scaled(part);
  const byHand = boughtByHand(part);
  const known = [...(byHand ? [byHand] : []), ...starts].flatMap((packs) => ownOf(part, packs) ?? []);
  const start = known.reduce<Known | null>((a, b) => (a === null || b.total < a.total ? b : a), null);
  if (small === null) {
    // Figures beyond what the search holds exactly: the best basket that is known stands, and nothing is proven of it.
    return start === null ? { packs: null, isProven: false } : { ...start, bound: 0n, effortUsed: 0 };
  }
  const inMoney = (units: number) => BigInt(units) * small.moneyUnit;
  const search = searched(small, {
    known: start && choiceOf(small, start),
    effort,
    ...(mayGoOn && {
      mayGoOn: ({ cost, bound, decided }) =>
        mayGoOn({ total: cost === null ? null : inMoney(cost), bound: inMoney(bound), decided }),
    }),
  });
  if (search.best === null) return { packs: null, isProven: search.isProven };
  return {
    packs: packsOfChoice(small, search.best),
    total: inMoney(search.best.cost),
    bound: inMoney(search.isProven ? search.best.cost : search.bound),
    effortUsed: search.effortUsed,
  };
}

interface Known {
  readonly packs: PacksByOffer;
  readonly total: bigint;
}

/** What of a basket belongs to a part of its problem, if that keeps the part's rules. */
function ownOf(part: BasketProblem, known: PacksByOffer): Known | null {
  const ids = new Set(part.offers.map(({ id }) => id));
  const packs = new Map([...known].filter(([offer]) => ids.has(offer)));
  const checked = checkedBasket(part, packs);
  return checked.kind === "broken" ? null : { packs, total: checked.basket.total };
}

const choiceOf = (small: ScaledProblem, { packs, total }: Known): Choice => ({
  packs: small.materials.map(({ offers }) => offers.map(({ id }) => Number(packs.get(id) ?? 0n))),
  cost: Number(total / small.moneyUnit),
});

function packsOfChoice(problem: ScaledProblem, { packs }: Choice): PacksByOffer {
  return new Map(
    problem.materials.flatMap(({ offers }, at) =>
      offers.flatMap(({ id }, place): readonly [string, bigint][] => {
        const taken = packs[at]?.[place] ?? 0;
        return taken > 0 ? [[id, BigInt(taken)]] : [];
      }),
    ),
  );
}
