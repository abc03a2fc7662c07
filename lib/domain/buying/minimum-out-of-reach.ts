/** Which minimum orders keep a problem from having any basket. @rule BUY-11 */
import type { MicroUnits } from "../money";
import { quantity } from "../quantity";
import type { BasketProblem } from "./basket-problem";
import { leastBasket, withoutWorth } from "./least-basket";

export interface MinimumOutOfReach {
  readonly supplier: string;
  readonly by: MicroUnits;
}

/**
 * The orders of the least basket without minimums that stay below theirs, and by how much.
 * @param problem  one that nothing fulfils
 * @param effort   steps for the search, whose basket need not be proven: it is only told of
 */
export function minimumsOutOfReach(problem: BasketProblem, effort: number): readonly MinimumOutOfReach[] {
  const free = withoutWorth({
    ...problem,
    suppliers: problem.suppliers.map((supplier) => ({ ...supplier, minimumOrder: null })),
  });
  const answer = leastBasket(free, { effort });
  if (answer.kind === "no basket") return [];
  return answer.basket.orders.flatMap(({ supplier, goods }) => {
    const minimum = problem.suppliers.find(({ id }) => id === supplier)?.minimumOrder ?? 0n;
    return goods < minimum ? [{ supplier, by: quantity<MicroUnits>(minimum - goods) }] : [];
  });
}
