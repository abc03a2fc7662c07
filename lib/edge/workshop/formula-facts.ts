/** What the checks need to know of a formula, as its record in the file says it. @rule CHECK-1 */
import {
  type FormulaCheck,
  type FormulaFacts,
  MARKETS,
  type Phase,
  type Step,
  WAYS_OF_USE,
} from "@/lib/domain/formula-book/facts";
import { compare } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { dayCount, name, note, oneOf, orElse, phase } from "@/lib/edge/fields";
import { celsius, decimal, ph } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, readEntries, records } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import { checkPhOrder } from "./material-facts";

/** The fields of a formula's record that hold its facts. */
export const FORMULA_FACTS = {
  market: orElse(oneOf(MARKETS), null),
  use: orElse(oneOf(WAYS_OF_USE), null),
  phFrom: orElse(ph, null),
  phTo: orElse(ph, null),
  keepsDays: orElse(dayCount, null),
  phases: orElse(records, []),
  steps: orElse(records, []),
  checks: orElse(records, []),
};

const PHASE = { name: phase, temperature: orElse(celsius, null) };

const MOST_CHARACTERS = 1000;

const STEP = {
  phase: orElse(phase, null),
  text: note(MOST_CHARACTERS),
  temperature: orElse(celsius, null),
  minutes: orElse(decimal, null),
  caution: orElse(name, null),
};

const CHECK = {
  what: name,
  from: orElse(decimal, null),
  to: orElse(decimal, null),
  unit: orElse(name, null),
  looks: orElse(note(MOST_CHARACTERS), null),
};

interface Typed {
  readonly phFrom: DecimalText | null | undefined;
  readonly phTo: DecimalText | null | undefined;
  readonly phases: readonly Json[] | undefined;
  readonly steps: readonly Json[] | undefined;
  readonly checks: readonly Json[] | undefined;
}

type FactLists = Pick<FormulaFacts, "phases" | "steps" | "checks">;

/** The lists of a formula's facts. What is wrong with them is told under the path of the formula. */
export function readFormulaFacts(path: string, typed: Typed, faults: FaultList): FactLists {
  checkPhOrder(path, typed, faults);
  const phases = readEntries(typed.phases, PHASE, `${path}.phases`, faults);
  const named = new Set<string>();
  for (const { path: at, fields } of phases) {
    if (fields.name === undefined) continue;
    if (named.has(fields.name)) faults.tell(`${at}.name`, `phase ${quoted(fields.name)} stands there already`);
    named.add(fields.name);
  }
  return {
    phases: phases.flatMap(({ fields }): Phase | readonly [] => complete(fields) ?? []),
    steps: readEntries(typed.steps, STEP, `${path}.steps`, faults).flatMap(
      ({ fields }): Step | readonly [] => complete(fields) ?? [],
    ),
    checks: readChecks(typed.checks, `${path}.checks`, faults),
  };
}

/** A check asks for something, and for each thing once. @rule BENCH-11 */
function readChecks(list: readonly Json[] | undefined, path: string, faults: FaultList): readonly FormulaCheck[] {
  const asked = new Set<string>();
  return readEntries(list, CHECK, path, faults).flatMap(({ path: at, fields }): FormulaCheck | readonly [] => {
    const check = complete(fields);
    if (check === undefined) return [];
    if (asked.has(check.what)) faults.tell(`${at}.what`, `${quoted(check.what)} is asked for already`);
    asked.add(check.what);
    const { from, to, looks } = check;
    if (from === null && to === null && looks === null)
      faults.tell(at, "asks for nothing: give limits from or to, or say what is right where it is seen");
    if (from !== null && to !== null && compare(decimalValue(from), decimalValue(to)) > 0)
      faults.tell(`${at}.to`, `must not be below ${from}`);
    return check;
  });
}
