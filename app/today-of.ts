import "server-only";
import { betterDays } from "@/app/_ui/better-day";
import { carriedOf } from "@/app/_ui/run-carried";
import { newId } from "@/app/_ui/new-id";
import { type BroughtForward, broughtForward } from "@/lib/domain/bring-forward";
import { mondayOf } from "@/lib/domain/calendar";
import { mattersOf } from "@/lib/domain/matters";
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
    forward: forwardOnce(found, matters.goingOut[0]),
    carriedOf: (run) => carriedOf(run, { monday: mondayOf(run.date), runs: workshop.runs }),
    newOrderId: newId,
  };
}

/** Each plan has one answer, which takes as long as three plans: it is worked out when it is first asked for. */
const forwardByPlan = new WeakMap<Plan, BroughtForward | null>();

function forwardOnce(found: Planned, losing: Plan["materials"][number] | undefined): BroughtForward | null {
  const { plan, desk } = found;
  const known = forwardByPlan.get(plan);
  if (known !== undefined) return known;
  const soonest = losing?.expiring.toSorted((a, b) => a.on - b.on).find(({ on }) => on > plan.today);
  const planned = { ...found, benchMinutes: desk.benchMinutes };
  const answer = losing && soonest ? broughtForward(losing, soonest, planned, desk.batches) : null;
  forwardByPlan.set(plan, answer);
  return answer;
}
