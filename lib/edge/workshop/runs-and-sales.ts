/** What is to be made, what is made and left, and what was sold. */
import type { FinishedLot, Run, Sale } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, id, orElse, reference, sequence, units } from "@/lib/edge/fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, indexById, readEntries, referredTo } from "@/lib/edge/record-reading";
import type { ProductIndex } from "./products";

const product = reference("product");

const RUN = { id, product, date: day, sequence: orElse(sequence, 0), units: units(1) };
const FINISHED_LOT = { id, product, made: day, bestBefore: orElse(day, null), units: units(0) };
const SALE = { product, date: day, units: units(1) };

/** The runs that are still to be made. */
export function readRuns(list: readonly Json[] | undefined, products: ProductIndex, faults: FaultList): readonly Run[] {
  const entries = readEntries(list, RUN, "runs", faults);
  indexById(list, entries, faults);
  return entries.flatMap(({ path, fields }) => {
    referredTo(products, "product", fields.product, `${path}.product`, faults);
    return complete(fields) ?? [];
  });
}

/** What is made and not sold yet. */
export function readFinished(
  list: readonly Json[] | undefined,
  products: ProductIndex,
  faults: FaultList,
): readonly FinishedLot[] {
  const entries = readEntries(list, FINISHED_LOT, "finished", faults);
  indexById(list, entries, faults);
  return entries.flatMap(({ path, fields }) => {
    referredTo(products, "product", fields.product, `${path}.product`, faults);
    return complete(fields) ?? [];
  });
}

/** What was sold; nothing is reckoned from it yet. */
export function readSales(
  list: readonly Json[] | undefined,
  products: ProductIndex,
  faults: FaultList,
): readonly Sale[] {
  return readEntries(list, SALE, "sales", faults).flatMap(({ path, fields }) => {
    referredTo(products, "product", fields.product, `${path}.product`, faults);
    return complete(fields) ?? [];
  });
}
