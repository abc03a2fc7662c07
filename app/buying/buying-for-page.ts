import "server-only";
import { planForPage, type Planned } from "@/app/plan-for-page";
import { type BasketDifference, differenceOf, withoutOffer } from "@/lib/domain/buying/basket-difference";
import type { PlannedBasket, PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import { type DecidingRule, lineReasons } from "@/lib/domain/buying/line-reasons";
import type { LotReceived } from "@/lib/domain/ledger/receipt";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { type FrameParameters, type FrameReading, readFrame } from "@/lib/edge/forms/buying-frame";
import { readReceivedOf } from "@/lib/store/ledger/ledger-answers";
import { basketInFrame, type BasketInFrame } from "@/lib/operations/basket-in-frame";
import { basketOf, type ChosenBasket } from "@/lib/operations/choose-basket";
import { withoutEachRule } from "@/lib/operations/rules-of-frame";

/** Time for a search that is not answered at once. It goes on beside the page, which shows the best so far. */
const SECONDS = 20;
/** How long a page waits for it. */
const PATIENCE = { seconds: SECONDS, waitMilliseconds: 350 };
/** A reason is asked for by itself and waited for. */
const FOR_A_REASON = { seconds: 8, waitMilliseconds: Infinity };
/** Steps for each question about the rules that decided, which are asked on this thread: some tens of milliseconds. */
const EFFORT_FOR_RULES = 60_000;

export interface Buying extends BasketInFrame {
  readonly found: Planned;
  readonly reading: FrameReading;
  /** What came of the basket's materials in deliveries, by the day. */
  readonly received: readonly LotReceived[];
}

/** What is to be bought in the frame that the address asks for, and the basket for it; null where no workshop is open. */
export async function buyingForPage(parameters: FrameParameters): Promise<Buying | null> {
  const found = await planForPage();
  if (found === null) return null;
  const reading = readFrame(parameters, found.workshop);
  const basket = await basketInFrame(found.workshop, found.plan, reading.frame, PATIENCE);
  const lines = basket.chosen?.planned.orders.flatMap((order) => order.lines) ?? [];
  return {
    found,
    reading,
    ...basket,
    received: await readReceivedOf([...new Set(lines.map(({ material }) => material.id))]),
  };
}

/** A page that is about more than buying waits for a basket no longer than a glance. */
const AT_A_GLANCE = { seconds: SECONDS, waitMilliseconds: 150 };

/** The least-cost basket without a frame, for a page that shows its orders; null while it is searched for, or where there is none. */
export async function basketAtAGlance({ workshop, plan }: Planned): Promise<PlannedBasket | null> {
  const { chosen } = await basketInFrame(workshop, plan, readFrame({}, workshop).frame, AT_A_GLANCE);
  return chosen?.chosen === "least" ? chosen.planned : null;
}

export type Why =
  /** Nothing else could serve, by itself or by the rules that decided. */
  | { readonly kind: "no other offer"; readonly decidedBy: readonly DecidingRule[] }
  | {
      readonly kind: "next best";
      readonly decidedBy: readonly DecidingRule[];
      readonly difference: BasketDifference;
      /** Whether both baskets are proven, so that the difference is. */
      readonly isProven: boolean;
    };

/** What the next best basket without the line's offer would cost, and what decided. @rule BUY-12 */
export async function whyOf(
  { offer, packs }: PlannedLine,
  { found, list, reading }: Buying,
  { basket, planned }: ChosenBasket,
): Promise<Why> {
  const { workshop, plan } = found;
  const { frame } = reading;
  const problem = problemOf(workshop, list, frame.cap);
  const without = withoutOffer(problem, offer.id);
  const other = without && (await basketOf(workshop, list, without, FOR_A_REASON));
  // Asked about this line alone: the reasons of a whole basket take as many searches for each of its lines.
  const asked = { kind: "basket" as const, basket, gap: planned.gap, packs: new Map([[offer.id, packs]]) };
  const rules = withoutEachRule(workshop, plan, frame, problem);
  const [reason] = lineReasons(problem, asked, EFFORT_FOR_RULES, rules);
  const decidedBy = reason?.decidedBy ?? [];
  if (other === null) return { kind: "no other offer", decidedBy };
  return {
    kind: "next best",
    decidedBy,
    difference: differenceOf(planned, other.planned),
    isProven: planned.gap === null && other.planned.gap === null,
  };
}
