import type { ReactNode } from "react";
import type { PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { Day } from "@/lib/domain/calendar";
import { asSentence } from "@/app/_ui/sentence";
import { inWords, inWordsFirst } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { type BuyingView, moneyIn } from "./buying-view";

const WHY_OPEN = {
  failed: "the search failed before it could tell",
  "out of time": "the search ran out of time",
  stopped: "you stopped the search",
  "too large": "its figures are too large to be searched exactly",
} as const;

interface Finding {
  readonly view: BuyingView;
  /** Null where nothing keeps every rule. */
  readonly basket: PlannedBasket | null;
  /** What the basket by hand counts for more, or null where it breaks a rule of the frame. */
  readonly saved: bigint | null;
  readonly isWorthCounted: boolean;
  readonly chosen: "least" | "so far" | "by hand";
  readonly cutShort: keyof typeof WHY_OPEN | null;
  /** Materials that the frame or the lack of an offer keeps from the basket. */
  readonly notBought: number;
  /** Materials that nobody offers and that are made here. @rule AHEAD-9 */
  readonly toMake: number;
  /** What is lacking and waits by the frame. */
  readonly waiting: number;
  readonly lastDay: Day;
}

/** What the basket costs, against the one by hand, and how sure that is. */
export function BuyingFinding(finding: Finding): ReactNode {
  const { view, basket, chosen, notBought, toMake, waiting, lastDay } = finding;
  const missing = (
    <>
      {toMake > 0 &&
        ` ${inWordsFirst(toMake)} ${toMake === 1 ? "material is" : "materials are"} to be made, not bought.`}
      {notBought > 0 && (
        <span className="warn">
          {" "}
          {inWordsFirst(notBought)} {notBought === 1 ? "material" : "materials"} cannot be bought.
        </span>
      )}
    </>
  );
  if (basket === null || basket.orders.length === 0)
    return (
      <>
        {waiting > 0
          ? `Nothing must be ordered by that day: ${inWords(waiting)} ${waiting === 1 ? "material waits" : "materials wait"}.`
          : notBought === 0 && toMake > 0
            ? "Nothing is to be bought."
            : notBought === 0 && basket !== null
              ? `Nothing needs to be bought: the shelf and what is on its way are enough to ${dayShown(lastDay, view.today)}.`
              : "Nothing can be bought as you asked."}
        {missing}
      </>
    );
  const orders = `${inWordsFirst(basket.orders.length)} ${basket.orders.length === 1 ? "order" : "orders"}`;
  const late = basket.orders.flatMap(({ lines }) => lines).filter((line) => line.late).length;
  return (
    <>
      {orders}, <b>{moneyIn(view, basket.total)}</b> with delivery.{" "}
      {chosen === "by hand" ? (
        <span className="warn">
          The search failed, so this is the basket by hand: the lowest unit price, one at a time.
        </span>
      ) : (
        <Saved {...finding} basket={basket} />
      )}
      {waiting > 0 && ` ${inWordsFirst(waiting)} ${waiting === 1 ? "material waits" : "materials wait"}.`}
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

function Saved({
  view,
  basket,
  chosen,
  cutShort,
  saved,
  isWorthCounted,
}: Finding & { readonly basket: PlannedBasket }): ReactNode {
  const sure = chosen === "so far" ? "the search for a cheaper one goes on." : sureness(basket, view, cutShort);
  if (saved === null) return <>{asSentence(sure.replace(/\.$/, ""))}.</>;
  const counting = isWorthCounted ? ", leftovers counted" : "";
  if (saved === 0n)
    return (
      <>
        By hand it would be the same{counting}, and {sure}
      </>
    );
  return (
    <>
      That is <b>{moneyIn(view, saved)} less</b> than by hand{counting}, and {sure}
    </>
  );
}

/** @rule BUY-5 */
function sureness({ gap }: PlannedBasket, view: BuyingView, cutShort: Finding["cutShort"]): string {
  if (gap === null) return "proven: no basket costs less.";
  const why = WHY_OPEN[cutShort ?? "out of time"];
  return `at most ${moneyIn(view, gap)} more could be saved: ${why}.`;
}
