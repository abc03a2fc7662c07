import type { Supplier } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { dayCount, days, id, name, oneOf, orElse } from "@/lib/edge/fields";
import { money } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, type Entry, type Index, indexById, readEntries } from "@/lib/edge/record-reading";
import { NO_MONEY } from "./settings";

const SUPPLIER = {
  id,
  name,
  leadDays: dayCount,
  leadCounts: oneOf(["working", "calendar"]),
  closedDays: orElse(days, []),
  shipping: orElse(money, NO_MONEY),
  shippingFreeFrom: orElse(money, null),
  minimumOrder: orElse(money, null),
};

export interface SuppliersReading {
  readonly suppliers: readonly Supplier[];
  readonly index: Index<Entry<typeof SUPPLIER>>;
}

/** The suppliers, and the index by which offers and orders find them. */
export function readSuppliers(list: readonly Json[] | undefined, faults: FaultList): SuppliersReading {
  const entries = readEntries(list, SUPPLIER, "suppliers", faults);
  const index = indexById(list, entries, faults);
  return { suppliers: entries.flatMap(({ fields }) => complete(fields) ?? []), index };
}
