/** The least-cost basket of a problem, with the proof of it or what is left open. @rule BUY-4, BUY-5, BUY-6 */
import type { MicroUnits } from "../money";
import { quantity } from "../quantity";
import type { BasketProblem, PacksByOffer } from "./basket-problem";
import { boughtByHand } from "./by-hand";
import { type Basket, checkedBasket } from "./checked-basket";
import { componentsOf } from "./components";
import { withoutDominated } from "./dominated-offers";
import { searched } from "./exact-search";
import { type ScaledProblem, scaled } from "./scaled-problem";
import type { Choice } from "./search-node";

export interface LeastBasket {
  readonly kind: "basket";
  readonly basket: Basket;
  readonly packs: PacksByOffer;
  /** Total less the least that any basket costs, as far as that is proven; null where the basket is the least. */
  readonly gap: MicroUnits | null;
}

export type BasketAnswer =
  | LeastBasket
  /** Nothing keeps every rule; or, not proven, nothing was found that does. Only a limit on packs brings this about. */
  | { readonly kind: "no basket"; readonly isProven: boolean };

export interface BasketOrders {
  /** Steps that the search may take for each part of the problem. */
  readonly effort: number;
  /** A basket to beat, beside the one by hand. */
  readonly known?: PacksByOffer | undefined;
  /** Asked now and then; false ends the search with what it has. */
  readonly mayGoOn?: ((soFar: Progress) => boolean) | undefined;
}

/** How far the search has come: micro-units of the parts done and the part at hand. */
export interface Progress {
  readonly total: MicroUnits | null;
  readonly bound: MicroUnits;
}

/** The basket of the least cost, each part of the problem searched by itself. */
export function leastBasket(problem: BasketProblem, orders: BasketOrders): BasketAnswer {
  const packs = new Map<string, bigint>();
  let [total, bound] = [0n, 0n];
  for (const part of componentsOf(withoutDominated(problem))) {
    const [totalBefore, boundBefore] = [total, bound];
    const mayGoOn = ({ total: cost, bound: least }: Progress) =>
      orders.mayGoOn?.({
        total: cost === null ? null : quantity<MicroUnits>(totalBefore + cost),
        bound: quantity<MicroUnits>(boundBefore + least),
      }) ?? true;
    const answer = leastOfPart(part, { ...orders, mayGoOn: orders.mayGoOn && mayGoOn });
    if (answer.packs === null) return { kind: "no basket", isProven: answer.isProven };
    for (const [offer, count] of answer.packs) packs.set(offer, count);
    total += answer.total;
    bound += answer.bound;
  }
  const basket = mustHold(problem, packs);
  const gap = quantity<MicroUnits>(basket.total - bound);
  return { kind: "basket", basket, packs, gap: gap === 0n ? null : gap };
}

/** What the search chose is held to the rules by code that it does not share; what fails is a defect of the search. */
export function mustHold(problem: BasketProblem, packs: PacksByOffer): Basket {
  const checked = checkedBasket(problem, packs);
  if (checked.kind === "holds") return checked.basket;
  throw new Error(`the search chose a basket that breaks a rule: ${checked.faults.map(({ kind }) => kind).join(", ")}`);
}

type PartAnswer =
  | { readonly packs: PacksByOffer; readonly total: bigint; readonly bound: bigint }
  | { readonly packs: null; readonly isProven: boolean };

function leastOfPart(part: BasketProblem, { effort, known, mayGoOn }: BasketOrders): PartAnswer {
  const small = scaled(part);
  const byHand = boughtByHand(part);
  if (small === null) {
    // Figures beyond what the search holds exactly: the basket by hand stands, and nothing is proven of it.
    if (byHand === null) return { packs: null, isProven: false };
    return { packs: byHand, total: mustHold(part, byHand).total, bound: 0n };
  }
  const starts = [byHand, known].flatMap((packs) => (packs ? (startOf(part, small, packs) ?? []) : []));
  const start = starts.reduce<Choice | null>((a, b) => (a === null || b.cost < a.cost ? b : a), null);
  const inMoney = (units: number) => quantity<MicroUnits>(BigInt(units) * small.moneyUnit);
  const search = searched(small, {
    known: start,
    effort,
    ...(mayGoOn && {
      mayGoOn: ({ cost, bound }) => mayGoOn({ total: cost === null ? null : inMoney(cost), bound: inMoney(bound) }),
    }),
  });
  if (search.best === null) return { packs: null, isProven: search.isProven };
  return {
    packs: packsOfChoice(small, search.best),
    total: inMoney(search.best.cost),
    bound: inMoney(search.isProven ? search.best.cost : search.bound),
  };
}

/** What of a basket belongs to a part of its problem, if that keeps the part's rules. */
function startOf(part: BasketProblem, small: ScaledProblem, known: PacksByOffer): Choice | null {
  const ids = new Set(part.offers.map(({ id }) => id));
  const ofPart = new Map([...known].filter(([offer]) => ids.has(offer)));
  const checked = checkedBasket(part, ofPart);
  if (checked.kind === "broken") return null;
  const packs = small.materials.map(({ offers }) => offers.map(({ id }) => Number(ofPart.get(id) ?? 0n)));
  return { packs, cost: Number(checked.basket.total / small.moneyUnit) };
}

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
