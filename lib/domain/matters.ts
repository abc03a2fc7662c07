/** What of a workshop asks for a hand today, the most pressing first. @rule TODAY-1, TODAY-2 */
import { type Batch, openBatches, stateOf } from "./bench/batch";
import { type Day, daysAfter, mondayOf } from "./calendar";
import { byCodePoint } from "./code-point-order";
import type { Books } from "./desk";
import { byId } from "./index-by-id";
import type { CountDue } from "./ledger/counts-due";
import { isAwaited } from "./orders";
import type { MaterialOutlook, Plan, RunOutlook } from "./plan-figures";
import { type RunInstead, runsInstead } from "./run-instead";
import { byTurn } from "./turns-of-day";
import type { Order } from "./workshop";

/** Each list soonest first. */
export interface Matters {
  /** To be ordered by today, or late. */
  readonly orderNow: readonly MaterialOutlook[];
  readonly notMakeable: readonly RunOutlook[];
  /** To be bought or made, and offered by nobody. */
  readonly notOffered: readonly MaterialOutlook[];
  readonly leftOpen: readonly Batch[];
  readonly toJudge: readonly Batch[];
  /** Their day has passed, and nobody has said what became of them. */
  readonly notClosed: readonly RunOutlook[];
  readonly dueIn: readonly Order[];
  readonly goingOut: readonly MaterialOutlook[];
  readonly toCount: readonly CountMatter[];
  /** To be ordered by the end of next week. */
  readonly orderSoon: readonly MaterialOutlook[];
  /** The run that makes what nobody offers, by material id. @rule AHEAD-9 */
  readonly instead: ReadonlyMap<string, RunInstead>;
  /** Materials that cover every run and of which nothing is lost. */
  readonly quiet: number;
}

/** A material that is due for a count. */
export interface CountMatter {
  readonly outlook: MaterialOutlook;
  readonly due: CountDue;
}

/** @param counts  how each material that is counted by a rhythm stands */
export function mattersOf({ workshop, desk }: Books, plan: Plan, counts: readonly CountDue[]): Matters {
  const { today, materials } = plan;
  const lacking = materials.filter(({ toBuy }) => toBuy > 0n);
  const instead = runsInstead(workshop, lacking, today);
  const orderedFromTo = (from: number, to: Day) =>
    lacking
      .filter(({ orderBy }) => orderBy !== null && orderBy > from && orderBy <= to)
      .sort(soonest(({ orderBy }) => orderBy));
  const open = openBatches(desk.batches);
  const atTheBench = new Set(open.map(({ run }) => run.id));
  const waiting = plan.runs.filter(({ run }) => !atTheBench.has(run.id)).sort(inTurn);
  const outlookOf = byId(
    "material",
    materials.map((outlook) => ({ id: outlook.material.id, outlook })),
  );
  return {
    orderNow: orderedFromTo(-Infinity, today),
    notMakeable: waiting.filter(({ run, makeable }) => !makeable && run.date >= today),
    notOffered: lacking.filter(({ pricedOffer }) => pricedOffer === null).sort(soonest(({ shortOn }) => shortOn)),
    leftOpen: open.filter(({ startedOn }) => startedOn < today),
    toJudge: desk.batches.filter((batch) => stateOf(batch) === "held"),
    notClosed: waiting.filter(({ run }) => run.date < today),
    dueIn: workshop.orders
      .filter((each) => isAwaited(each) && each.due <= today)
      .toSorted((a, b) => a.due - b.due || byCodePoint(a.id, b.id)),
    goingOut: materials.filter(({ expiring }) => expiring.length > 0).sort(soonest(firstLoss)),
    toCount: counts.filter(({ isDue }) => isDue).map((due) => ({ ...outlookOf(due.rhythm.material), due })),
    orderSoon: orderedFromTo(today, daysAfter(mondayOf(today), 13)),
    instead,
    quiet: materials.filter(({ belowSafetyOn, expiring }) => belowSafetyOn === null && expiring.length === 0).length,
  };
}

/** The day on which the first of a material's lots is out of date; null for none. */
const firstLoss = ({ expiring }: MaterialOutlook): Day | null =>
  expiring.reduce<Day | null>((first, { on }) => (first === null || on < first ? on : first), null);

const inTurn = (a: RunOutlook, b: RunOutlook): number => a.run.date - b.run.date || byTurn(a.run, b.run);

/** Without a day comes last. */
const soonest =
  (day: (outlook: MaterialOutlook) => Day | null) =>
  (a: MaterialOutlook, b: MaterialOutlook): number => {
    const [first, second] = [day(a), day(b)];
    if (first === null || second === null) return Number(first === null) - Number(second === null);
    return first - second || byCodePoint(a.material.id, b.material.id);
  };
