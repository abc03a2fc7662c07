/** "Make it", where a material is made and not bought, and the form of the week that plans the run. @rule AHEAD-9 */
import { type Day, isoDate, mondayOf } from "@/lib/domain/calendar";
import type { RunInstead } from "@/lib/domain/run-instead";
import { counted } from "./counted";
import { countShown, dayShown } from "./figures";

/** `a run of Steep, 100 g of 5 units, by Thu 26 Nov`; null where what is planned is enough. */
export const runInsteadWords = ({ product, units, day }: RunInstead, today: Day): string | null =>
  units === 0n
    ? null
    : `a run of ${product.name} of ${countShown(units)} ${units === 1n ? "unit" : "units"}, ${day <= today ? "today" : `by ${dayShown(day, today)}`}`;

/** What is planned of it already: `1 run of Steep, 100 g is planned, on Thu 26 Nov`; null where nothing is. */
export function plannedInsteadWords({ product, planned }: RunInstead, today: Day): string | null {
  const [first] = planned;
  if (first === undefined) return null;
  const runs = counted(planned.length, "run", "runs");
  const day = dayShown(first.date, today);
  return planned.length === 1
    ? `${runs} of ${product.name} is planned, on ${day}`
    : `${runs} of ${product.name} are planned, the first on ${day}`;
}

/** The week's form for a run, with product, day and units filled in. */
export const planInsteadAddress = ({ product, units, day }: RunInstead): `/week?${string}` =>
  `/week?${new URLSearchParams({
    of: isoDate(mondayOf(day)),
    plan: isoDate(day),
    product: product.id,
    size: units.toString(),
  }).toString()}#plan-a-run`;
