/** What the checks need to know of a material, as its record in the file says it. @rule CHECK-1, CHECK-9 */
import {
  type LegalLimit,
  MARKETS,
  type MaterialFacts,
  ROLES,
  type Sheet,
  SHEET_KINDS,
  WAYS_OF_USE,
} from "@/lib/domain/formula-book/facts";
import { compare } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue, type PartsPerMillion, quantity, sum, WHOLE } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, name, oneOf, orElse, yesOrNo } from "@/lib/edge/fields";
import { countsAs, percentByWeight, ph } from "@/lib/edge/figure-fields";
import { complete, readEntries, records } from "@/lib/edge/record-reading";
import type { Json } from "@/lib/edge/json-tree";
import { percentText } from "@/lib/edge/written-figures";

/** The fields of a material's record that hold its facts. */
export const MATERIAL_FACTS = {
  role: orElse(oneOf(ROLES), null),
  phFrom: orElse(ph, null),
  phTo: orElse(ph, null),
  composition: orElse(records, []),
  limits: orElse(records, []),
  flammable: orElse(yesOrNo, false),
  allergen: orElse(yesOrNo, false),
  eyeHazard: orElse(yesOrNo, false),
  sheets: orElse(records, []),
};

const COMPONENT = { inci: name, percent: percentByWeight };

const LIMIT = {
  market: oneOf(MARKETS),
  use: orElse(oneOf(WAYS_OF_USE), null),
  substance: name,
  maximum: percentByWeight,
  countsAs: orElse(countsAs, "1" as DecimalText),
  source: name,
  copied: day,
};

const SHEET = { kind: oneOf(SHEET_KINDS), reference: name, reviewBy: orElse(day, null) };

type Rows = readonly Json[] | undefined;

interface Typed {
  readonly phFrom: DecimalText | null | undefined;
  readonly phTo: DecimalText | null | undefined;
  readonly composition: Rows;
  readonly limits: Rows;
  readonly sheets: Rows;
}

type FactLists = Pick<MaterialFacts, "composition" | "limits" | "sheets">;

/** The lists of a material's facts. What is wrong with them is told under the path of the material. */
export function readMaterialFacts(path: string, typed: Typed, faults: FaultList): FactLists {
  checkPhOrder(path, typed, faults);
  return {
    composition: readComposition(path, typed.composition, faults),
    limits: readEntries(typed.limits, LIMIT, `${path}.limits`, faults).flatMap(
      ({ fields }): LegalLimit | readonly [] => complete(fields) ?? [],
    ),
    sheets: readEntries(typed.sheets, SHEET, `${path}.sheets`, faults).flatMap(
      ({ fields }): Sheet | readonly [] => complete(fields) ?? [],
    ),
  };
}

/** Components by their INCI names, each once, adding up to the whole. @rule CHECK-9 */
function readComposition(path: string, typed: Rows, faults: FaultList): MaterialFacts["composition"] {
  const entries = readEntries(typed, COMPONENT, `${path}.composition`, faults);
  const named = new Set<string>();
  for (const { path: at, fields } of entries) {
    const key = fields.inci?.toLowerCase();
    if (key === undefined) continue;
    if (named.has(key)) faults.tell(`${at}.inci`, `${String(fields.inci)} stands there already; add the two up`);
    named.add(key);
  }
  const components = entries.flatMap(({ fields: { inci, percent } }) => complete({ inci, share: percent }) ?? []);
  const total = components.reduce((all, { share }) => sum(all, share), quantity<PartsPerMillion>(0n));
  if (components.length > 0 && components.length === typed?.length && total !== WHOLE) {
    faults.tell(`${path}.composition`, `the components add up to ${percentText(total)} %; they must add up to 100 %`);
  }
  return components;
}

/** A window or a target whose ends are the right way round. */
export function checkPhOrder(path: string, { phFrom, phTo }: Pick<Typed, "phFrom" | "phTo">, faults: FaultList): void {
  if (phFrom == null || phTo == null || compare(decimalValue(phFrom), decimalValue(phTo)) <= 0) return;
  faults.tell(`${path}.phFrom`, `pH ${phFrom} is above phTo, ${phTo}`);
}
