import type { ReactNode } from "react";
import type { PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { Day } from "@/lib/domain/calendar";
import { inWordsFirst } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { type BuyingView, moneyIn } from "./buying-view";

interface Finding {
  readonly view: BuyingView;
  readonly basket: PlannedBasket;
  readonly byHand: PlannedBasket;
  readonly chosen: "least" | "by hand";
  readonly cutShort: "stopped" | "out of time" | "failed" | null;
  /** Materials that the frame or the lack of an offer keeps from the basket. */
  readonly notBought: number;
  readonly lastDay: Day;
}

/** What the basket costs, against the one by hand, and how sure that is. */
export function BuyingFinding({ view, basket, byHand, chosen, cutShort, notBought, lastDay }: Finding): ReactNode {
  const missing = notBought > 0 && (
    <span className="warn">
      {" "}
      {inWordsFirst(notBought)} {notBought === 1 ? "material" : "materials"} cannot be bought.
    </span>
  );
  if (basket.orders.length === 0)
    return (
      <>
        {notBought === 0
          ? `Nothing needs to be bought: the shelf and what is on its way are enough to ${dayShown(lastDay, view.today)}.`
          : "Nothing can be bought in this frame."}
        {missing}
      </>
    );
  const orders = `${inWordsFirst(basket.orders.length)} ${basket.orders.length === 1 ? "order" : "orders"}`;
  const late = basket.orders.flatMap(({ lines }) => lines).filter((line) => line.late).length;
  const saved = byHand.total - basket.total;
  return (
    <>
      {orders}, <b>{moneyIn(view, basket.total)}</b> with delivery.{" "}
      {chosen === "by hand" ? (
        <span className="warn">
          The search failed, so this is the basket by hand: the lowest unit price, one at a time.
        </span>
      ) : saved > 0n ? (
        <>
          That is <b>{moneyIn(view, saved)} less</b> than by hand, and {sureness(basket, view, cutShort)}
        </>
      ) : (
        <>By hand it would be the same, and {sureness(basket, view, cutShort)}</>
      )}
      {late > 0 && (
        <span className="warn">
          {" "}
          {inWordsFirst(late)} {late === 1 ? "line comes" : "lines come"} late.
        </span>
      )}
      {missing}
    </>
  );
}

/** @rule BUY-5 */
function sureness({ gap }: PlannedBasket, view: BuyingView, cutShort: Finding["cutShort"]): string {
  if (gap === null) return "proven: no basket costs less.";
  const why = cutShort === "failed" ? "the search failed before it could tell" : "the search ran out of time";
  return `at most ${moneyIn(view, gap)} more could be saved: ${why}.`;
}
