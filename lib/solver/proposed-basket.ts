/** A basket as HiGHS proposes it. Blocks the thread that it runs in: only the basket thread calls it. @rule BUY-4, BUY-5 */
import load from "highs";
import { basketModel, packsOfModel } from "@/lib/domain/buying/basket-model";
import type { BasketProblem, PacksByOffer } from "@/lib/domain/buying/basket-problem";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { reckoned, withoutReckoned } from "@/lib/domain/buying/left-over-offers";
import { modelText } from "./model-text";

/**
 * @param usual    what a basket of the problem costs, in micro-units, as far as known
 * @param seconds  time for the solver; it may take a little longer
 * @returns packs that keep every rule, or null where the solver has none in time. Whether they cost the least is not
 *          for the solver to say: it reckons with tolerances
 */
export async function proposedBasket(
  problem: BasketProblem,
  usual: bigint,
  seconds: number,
): Promise<PacksByOffer | null> {
  const model = basketModel(reckoned(problem, 0n).problem, usual);
  if (model === null) return null;
  const highs = await load();
  const { Columns } = highs.solve(modelText(model), { time_limit: seconds, mip_rel_gap: 0, mip_abs_gap: 0 });
  const chosen = packsOfModel(model, (name) => {
    const column = Columns[name];
    return column && "Primal" in column && Number.isFinite(column.Primal) ? column.Primal : 0;
  });
  const packs = withoutReckoned(chosen);
  return checkedBasket(problem, packs).kind === "holds" ? packs : null;
}
