/** The formulas as they were when a run was made: the versions it noted in the place of those that stand. @rule VERSION-2 */
import type { Books } from "@/lib/domain/desk";
import { versionsOf } from "@/lib/domain/formula-book/versions";
import type { Formula } from "@/lib/domain/workshop";

/** @param run  null, or one of before versions were noted, for the formulas as they stand */
export function formulasOfRun({ workshop, desk }: Books, run: string | null): readonly Formula[] {
  const used = desk.closedRuns.find((closed) => closed.run.id === run)?.versions ?? [];
  const numberOf = new Map(used.map(({ formula, number }) => [formula, number]));
  return workshop.formulas.map((formula) => {
    const number = numberOf.get(formula.id);
    if (number === undefined) return formula;
    return versionsOf(desk, formula).find((version) => version.number === number)?.as ?? formula;
  });
}
