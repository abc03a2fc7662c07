import type { DecimalText, Measured, Micrograms, Stock } from "@/lib/domain/quantity";
import type { Product } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { id, name, orElse, reference, units } from "@/lib/edge/fields";
import { amount, decimal, lossPercent, price } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import {
  complete,
  type Entry,
  type Index,
  indexById,
  readEntries,
  records,
  referredTo,
} from "@/lib/edge/record-reading";
import { measured } from "./amounts";
import { formulaSubject, type FormulaIndex } from "./formulas";
import { material, type MaterialIndex, materialNamed, subjectOf } from "./materials";
import { NO_SHARE } from "./settings";

/** No minutes at the bench. */
export const NO_TIME = "0" as DecimalText;

const PRODUCT = {
  id,
  name,
  formula: reference("formula"),
  fill: amount,
  overfill: orElse(amount, null),
  processLoss: orElse(lossPercent, NO_SHARE),
  heel: orElse(amount, null),
  usualRun: units(1),
  packaging: orElse(records, []),
  perRun: orElse(records, []),
  labourMinutesPerRun: orElse(decimal, NO_TIME),
  labourMinutesPerUnit: orElse(decimal, NO_TIME),
  priceToShops: orElse(price, null),
  priceToCustomers: orElse(price, null),
  madeInto: orElse(material, null),
};

const PER_RUN_ITEM = { material, amount };
const PACKAGING_ITEM = { ...PER_RUN_ITEM, spoilage: orElse(lossPercent, NO_SHARE) };

export type ProductIndex = Index<Entry<typeof PRODUCT>>;

export interface ProductsReading {
  readonly products: readonly Product[];
  readonly index: ProductIndex;
}

/** The products: what is filled is read by their formula, what they use by its material. @rule QTY-1 */
export function readProducts(
  list: readonly Json[] | undefined,
  formulas: FormulaIndex,
  materials: MaterialIndex,
  faults: FaultList,
): ProductsReading {
  const entries = readEntries(list, PRODUCT, "products", faults);
  const index = indexById(list, entries, faults);
  const products = entries.flatMap(({ path, fields }) => {
    const subject = formulaSubject(referredTo(formulas, "formula", fields.formula, `${path}.formula`, faults));
    const filled = (key: "fill" | "overfill" | "heel"): Measured<Micrograms> | null | undefined => {
      const typed = fields[key];
      return typed === null ? null : measured(typed, subject, key === "fill" ? 1n : 0n, `${path}.${key}`, faults);
    };
    return (
      complete({
        ...fields,
        fill: filled("fill") ?? undefined,
        overfill: filled("overfill"),
        heel: filled("heel"),
        packaging: readItems(fields.packaging, PACKAGING_ITEM, `${path}.packaging`, materials, faults),
        perRun: readItems(fields.perRun, PER_RUN_ITEM, `${path}.perRun`, materials, faults),
      }) ?? []
    );
  });
  return { products, index };
}

/** The items of a packaging or perRun list, each material at most once. */
function readItems<S extends typeof PER_RUN_ITEM>(
  list: readonly Json[] | undefined,
  shape: S,
  path: string,
  materials: MaterialIndex,
  faults: FaultList,
) {
  const firstAt = new Map<string, string>();
  return readEntries(list, shape, path, faults).flatMap((entry) => {
    const { material: id, amount: typed } = entry.fields as Entry<typeof PER_RUN_ITEM>["fields"];
    const of = materialNamed(materials, id, entry.path, faults);
    const subject = subjectOf(of);
    const first = id === undefined || of === undefined ? undefined : firstAt.get(id);
    if (first !== undefined) {
      faults.tell(`${entry.path}.material`, `${subject.called} occurs twice in this list; ${first} has it already`);
    } else if (id !== undefined) {
      firstAt.set(id, entry.path);
    }
    const amount = measured<Stock>(typed, subject, 1n, `${entry.path}.amount`, faults);
    return complete({ ...entry.fields, amount }) ?? [];
  });
}
