/** The run that makes what is lacking of a material, where a product is made into it. @rule AHEAD-9 */
import { type Day, daysAfter, later, workingCalendar, workingDayUpTo } from "./calendar";
import type { MaterialOutlook } from "./plan-figures";
import { quantity, type Stock, type Units } from "./quantity";
import type { Product, Run, Workshop } from "./workshop";

export interface RunInstead {
  readonly product: Product;
  /** Beside what its planned runs make; 0 where those are enough. */
  readonly units: Units;
  /** The last day on which the workshop works and it would be there in time, or today. */
  readonly day: Day;
  /** What is to be bought, and what of that the planned runs make. */
  readonly wanted: Stock;
  readonly coming: Stock;
  /** The day by which it is needed; before today where it is late. */
  readonly neededBy: Day;
  /** Its runs that are planned already, in the order in which they draw. */
  readonly planned: readonly Run[];
}

/**
 * By material id, for those of which something is to be bought and a product is made into. Runs that are planned bring
 * nothing to the plan (AHEAD-5), and are counted here, so that nobody plans them twice.
 * @rule AHEAD-9
 */
export function runsInstead(
  { products, runs, settings }: Pick<Workshop, "products" | "runs" | "settings">,
  outlooks: readonly Pick<MaterialOutlook, "material" | "toBuy" | "belowSafetyOn">[],
  today: Day,
): ReadonlyMap<string, RunInstead> {
  const makerOf = new Map(products.flatMap((product) => (product.madeInto ? [[product.madeInto, product]] : [])));
  const workingDays = workingCalendar(settings.closedDays);
  return new Map(
    outlooks.flatMap(({ material, toBuy, belowSafetyOn }): readonly [string, RunInstead][] => {
      const product = makerOf.get(material.id);
      if (product === undefined || toBuy === 0n) return [];
      const planned = runs.filter((run) => run.product === product.id).toSorted(inOrder);
      const coming = planned.reduce((sum, { units }) => sum + units * product.fill.quantity, 0n);
      const lacking = toBuy > coming ? toBuy - coming : 0n;
      const units = (lacking + product.fill.quantity - 1n) / product.fill.quantity;
      const neededBy = daysAfter(belowSafetyOn ?? today, -material.safetyDays);
      const day = later(today, workingDayUpTo(workingDays, later(today, neededBy)));
      const reckoned = { wanted: toBuy, coming: quantity<Stock>(coming), neededBy };
      return [[material.id, { product, units: quantity<Units>(units), day, planned, ...reckoned }]];
    }),
  );
}

const inOrder = (a: Run, b: Run): number => a.date - b.date || a.sequence - b.sequence || (a.id < b.id ? -1 : 1);
