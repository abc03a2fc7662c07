/** The demo workshop as the app reads it, its plan, and short ways to quote its figures. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { isoDate, type Day } from "@/lib/domain/calendar";
import type { Fraction } from "@/lib/domain/fraction";
import { moneyText } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import type { MaterialOutlook, Plan, ProductCost, RunOutlook } from "@/lib/domain/plan-figures";
import type { Stock } from "@/lib/domain/quantity";
import type { Material, Workshop } from "@/lib/domain/workshop";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { day, inGrams } from "@/tests/helpers/notation";

const DEMO_FILE = fileURLToPath(new URL("../../seed/demo-workshop.json", import.meta.url));

/** Some other day than the file's own, so that a plan which forgot the file's `today` would not pass. */
const REAL_TODAY = day("2030-06-14");

export interface Demo {
  readonly workshop: Workshop;
  readonly plan: Plan;
}

export function readDemo(): Demo {
  const reading = readWorkshopFile(readFileSync(DEMO_FILE), REAL_TODAY);
  if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
  const { workshop } = reading;
  return { workshop, plan: plan(workshop, workshop.settings.today ?? REAL_TODAY) };
}

const found = <T>(value: T | undefined, what: string): T => {
  if (value === undefined) throw new Error(`the demo has no ${what}`);
  return value;
};

export const materialOf = ({ plan: { materials } }: Demo, id: string): MaterialOutlook =>
  found(
    materials.find(({ material }) => material.id === id),
    `material ${id}`,
  );
export const runOf = ({ plan: { runs } }: Demo, id: string): RunOutlook =>
  found(
    runs.find(({ run }) => run.id === id),
    `run ${id}`,
  );
export const costOf = ({ plan: { costs } }: Demo, id: string): ProductCost =>
  found(
    costs.find(({ product }) => product.id === id),
    `product ${id}`,
  );

/** `1342.925 g`, `52 each`. */
export const amountText = (material: Material, amount: Stock): string =>
  material.measure === "count" ? `${amount.toString()} each` : `${inGrams(amount)} g`;
/** `2026-12-08`, or `-` for none. */
export const dayText = (at: Day | null): string => (at === null ? "-" : isoDate(at));
/** Money to so many decimals, or `not known`. */
export const costText = (exact: Fraction | null, decimals = 4): string =>
  exact === null ? "not known" : moneyText(exact, decimals);
