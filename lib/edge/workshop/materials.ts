import type { Stock } from "@/lib/domain/quantity";
import type { Material } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { dayCount, id, name, oneOf, orElse, reference } from "@/lib/edge/fields";
import { amount, decimal, density, percent, percentByWeight } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import {
  called,
  complete,
  type Entry,
  type Index,
  indexById,
  readEntries,
  referredTo,
} from "@/lib/edge/record-reading";
import { percentText } from "@/lib/edge/written-figures";
import { MATERIAL_FACTS, readMaterialFacts } from "./material-facts";
import { measured, type Subject, UNKNOWN_SUBJECT } from "./amounts";

const MATERIAL = {
  id,
  name,
  kind: oneOf(["ingredient", "packaging", "consumable"]),
  measure: oneOf(["mass", "count"]),
  density: orElse(density, null),
  safetyStock: orElse(amount, null),
  safetyDays: orElse(dayCount, 0),
  useMin: orElse(percent, null),
  useMax: orElse(percentByWeight, null),
  addBelow: orElse(decimal, null),
  ...MATERIAL_FACTS,
};

export type MaterialEntry = Entry<typeof MATERIAL>;
export type MaterialIndex = Index<MaterialEntry>;

/** The field of another record that names a material. */
export const material = reference("material");

export interface MaterialsReading {
  readonly materials: readonly Material[];
  readonly index: MaterialIndex;
}

/** The materials, and the index by which all other lists find them. */
export function readMaterials(list: readonly Json[] | undefined, faults: FaultList): MaterialsReading {
  const entries = readEntries(list, MATERIAL, "materials", faults);
  const index = indexById(list, entries, faults);
  return { materials: entries.flatMap((entry) => readMaterial(entry, faults) ?? []), index };
}

function readMaterial(entry: MaterialEntry, faults: FaultList): Material | undefined {
  const { path, fields } = entry;
  const { safetyStock: typed, useMin, useMax } = fields;
  const safetyStock =
    typed === null ? null : measured<Stock>(typed, subjectOf(entry), 0n, `${path}.safetyStock`, faults);
  if (useMin != null && useMax != null && useMin > useMax) {
    faults.tell(`${path}.useMin`, `${percentText(useMin)} % is above useMax, ${percentText(useMax)} %`);
  }
  return complete({ ...fields, safetyStock, ...readMaterialFacts(path, fields, faults) });
}

/** What an amount of the material is measured by. */
export const subjectOf = (entry: MaterialEntry | undefined): Subject =>
  entry === undefined
    ? UNKNOWN_SUBJECT
    : { measure: entry.fields.measure, density: entry.fields.density, called: called("material", entry) };

/** The material that a record names at `path`; one that is not there is told. */
export const materialNamed = (
  index: MaterialIndex,
  id: string | undefined,
  path: string,
  faults: FaultList,
): MaterialEntry | undefined => referredTo(index, "material", id, `${path}.material`, faults);
