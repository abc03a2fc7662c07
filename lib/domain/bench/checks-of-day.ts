/** What stands against starting a run as a batch on a day. @rule BENCH-1 */
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { errorsOf, warningsOf } from "@/lib/domain/formula-book/accepted-warnings";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { type Finding, findingKey } from "@/lib/domain/formula-book/findings";
import { standingVersion } from "@/lib/domain/formula-book/versions";
import { byId } from "@/lib/domain/index-by-id";
import { bulkOf, roundedUpFor } from "@/lib/domain/needs";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import type { Run } from "@/lib/domain/workshop";

/** What the checks say on the day on which a run is started as a batch. @rule BENCH-1, VERSION-5 */
export function checksOfDay({ workshop, desk }: Books, run: Run, today: Day) {
  const product = byId("product", workshop.products)(run.product);
  const formula = byId("formula", workshop.formulas)(product.formula);
  const batch = quantity<Micrograms>(roundedUpFor(bulkOf(product), run.units));
  const findings = checksOf(formula, { ...workshop, today, step: workshop.settings.balanceStep.quantity, batch });
  const accepted = new Set(standingVersion(desk, formula).accepted.map(({ key }) => key));
  const isAccepted = (finding: Finding): boolean => accepted.has(findingKey(finding));
  return {
    errors: errorsOf(findings),
    warnings: warningsOf(findings).filter((finding) => !isAccepted(finding)),
    accepted: warningsOf(findings).filter(isAccepted),
  };
}
