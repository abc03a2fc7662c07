import type { Prepared } from "@/lib/domain/plan";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { type TookIt, tookIt } from "@/lib/domain/took-it";
import type { Run } from "@/lib/domain/workshop";

/** For each of the runs shown that cannot be made, which earlier run took what it is short of. @rule MAKE-4 */
export function tookItFor(
  shown: readonly RunOutlook[],
  outlooks: readonly RunOutlook[],
  { runs, stock }: Pick<Prepared, "runs" | "stock">,
): ReadonlyMap<Run, TookIt> {
  const outlookByRun = new Map(outlooks.map((outlook) => [outlook.run, outlook]));
  const outlookOf = (run: Run): RunOutlook => {
    const outlook = outlookByRun.get(run);
    if (!outlook) throw new Error(`run "${run.id}" has no outlook`);
    return outlook;
  };
  return new Map(
    shown
      .filter(({ makeable }) => !makeable)
      .flatMap((outlook) => {
        const took = tookIt(outlook, runs, outlookOf, stock);
        return took ? [[outlook.run, took] as const] : [];
      }),
  );
}
