import type { ReactNode } from "react";
import type { BasketDifference } from "@/lib/domain/buying/basket-difference";
import type { DecidingRule } from "@/lib/domain/buying/line-reasons";
import { inARow } from "@/lib/edge/counted";
import { asSentence } from "@/app/_ui/sentence";
import type { PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import { type BuyingView, moneyIn, packsShown } from "./buying-view";
import { packsOf } from "./in-all";

export type Reason =
  | { readonly kind: "no other offer"; readonly decidedBy: readonly DecidingRule[] }
  | {
      readonly kind: "next best";
      readonly decidedBy: readonly DecidingRule[];
      readonly difference: BasketDifference;
      readonly isProven: boolean;
    };

const DECIDED: Readonly<Record<DecidingRule, string>> = {
  "price break": "the price for more packs",
  "shipping and minimum order": "delivery and minimum orders",
  "least packs": "the fewest packs that can be bought",
  "goes out of date": "what would go out of date",
  "leftovers count": "what leftovers count for",
  arrival: "the day on which it comes",
  "who is left out or held to": "whom you leave out or buy from",
};

/** Of baskets that cost the same the one found first is taken. @rule BUY-6 */
function decidedWords(rules: readonly DecidingRule[], more: bigint): string {
  if (rules.length === 0) return more === 0n ? "The one found first is taken." : "The price of the goods decides.";
  return `${asSentence(inARow(rules.map((rule) => DECIDED[rule])))} decided it.`;
}

interface Asked {
  readonly line: PlannedLine;
  readonly reason: Reason;
  readonly view: BuyingView;
}

/** What the next best choice would have cost, and which rule decided. @rule BUY-12 */
export function WhyWords({ line, reason, view }: Asked): ReactNode {
  if (reason.kind === "no other offer")
    return (
      <span className="line-reason">
        <b>No other offer of {line.material.name} could serve.</b>{" "}
        {reason.decidedBy.length > 0 && decidedWords(reason.decidedBy, 0n)}
      </span>
    );
  const { difference, decidedBy, isProven } = reason;
  const own = difference.materials.find(({ material }) => material.id === line.material.id);
  const others = difference.materials.length - (own ? 1 : 0);
  return (
    <span className="line-reason">
      <b>{own ? packsOf(own.there) : "Another basket"}</b> in place of {packsShown(line)} would make it all{" "}
      {difference.more === 0n ? "cost the same" : <b>{moneyIn(view, difference.more)} dearer</b>}
      {others > 0 && ", with other packs elsewhere too"}
      {difference.moreDelivery !== 0n && `, delivery ${deliveryWords(difference.moreDelivery, view)}`}.{" "}
      {decidedWords(decidedBy, difference.more)}
      {!isProven && " The search ran out of time for one of the two, so that this is not proven."}
    </span>
  );
}

const deliveryWords = (more: bigint, view: BuyingView): string =>
  more > 0n ? `${moneyIn(view, more)} more` : `${moneyIn(view, -more)} less`;
