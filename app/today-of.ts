import "server-only";
import { betterDays } from "@/app/_ui/better-day";
import { carriedOf } from "@/app/_ui/run-carried";
import { newId } from "@/app/_ui/new-id";
import { type BroughtForward, broughtForward } from "@/lib/domain/bring-forward";
import { mondayOf } from "@/lib/domain/calendar";
import { type Matters, mattersOf } from "@/lib/domain/matters";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Today } from "./_parts/today";
import { basketAtAGlance } from "./buying/buying-for-page";
import { countsDue } from "./counts-due-for-page";
import type { Planned } from "./plan-for-page";

/** So many runs are looked at for another day, each by planning many days through. */
const MOST_LOOKED_AT = 2;

/** What asks for a hand today, with the way out of each that was planned through. @rule TODAY-1, SUGGEST-1, SUGGEST-5 */
export async function todayOf(found: Planned): Promise<Today> {
  const { workshop, today, plan, prepared, desk } = found;
  const [counts, basket] = await Promise.all([countsDue(found, today), basketAtAGlance(found)]);
  const matters = mattersOf(found, plan, counts);
  return {
    workshop,
    today,
    plan,
    matters,
    basket,
    better: betterDays(matters.notMakeable.slice(0, MOST_LOOKED_AT), {
      workshop,
      prepared,
      plan,
      benchMinutes: desk.benchMinutes,
    }),
    forward: forwardOnce(found, matters.goingOut),
    carriedOf: (run) => carriedOf(run, { monday: mondayOf(run.date), runs: workshop.runs }),
    newOrderId: newId,
  };
}

interface Answered {
  readonly hours: Planned["desk"]["benchMinutes"];
  readonly forward: BroughtForward | null;
}

/** Each plan has one answer by the maker's hours, which takes as long as three plans: it is worked out once. */
const forwardByPlan = new WeakMap<Plan, Answered>();

/** Of the first lot that can still be saved: what is out of date already is not. */
function forwardOnce(found: Planned, goingOut: Matters["goingOut"]): BroughtForward | null {
  const { plan, desk } = found;
  const hours = desk.benchMinutes;
  const known = forwardByPlan.get(plan);
  if (known?.hours === hours) return known.forward;
  const losing = goingOut.find(({ expiring }) => expiring.every(({ on }) => on > plan.today));
  const soonest = losing?.expiring.toSorted((a, b) => a.on - b.on)[0];
  const planned = { ...found, benchMinutes: hours };
  const forward = losing && soonest ? broughtForward(losing, soonest, planned, desk.batches) : null;
  forwardByPlan.set(plan, { hours, forward });
  return forward;
}
