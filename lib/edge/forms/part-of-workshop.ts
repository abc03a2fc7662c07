/**
 * The part of a workshop that one record is judged by: what it refers to, what is judged by it, and what must differ
 * from it. The rest was valid before and stays so, and a form answers sooner for not reading it again.
 */
import type { Workshop } from "@/lib/domain/workshop";
import { RECORD_LISTS, type RecordList } from "./form-fields";
import type { TypedRecord } from "./form-reading";

/** Tells each record that a record refers to. */
type Visit = (list: RecordList, id: string) => void;
type References = { readonly [L in RecordList]: (record: Workshop[L][number], visit: Visit) => void };

const REFERENCES: References = {
  suppliers: () => undefined,
  materials: () => undefined,
  offers: ({ material, supplier }, visit) => {
    visit("materials", material);
    visit("suppliers", supplier);
  },
  lots: ({ material }, visit) => visit("materials", material),
  orders: ({ supplier, lines }, visit) => {
    visit("suppliers", supplier);
    for (const { material } of lines) visit("materials", material);
  },
  formulas: ({ lines }, visit) => {
    for (const { of } of lines) visit(of.kind === "material" ? "materials" : "formulas", of.id);
  },
  products: ({ formula, packaging, perRun, madeInto }, visit) => {
    visit("formulas", formula);
    if (madeInto !== null) visit("materials", madeInto);
    for (const { material } of packaging) visit("materials", material);
    for (const { material } of perRun) visit("materials", material);
  },
  runs: ({ product }, visit) => visit("products", product),
  finished: ({ product }, visit) => visit("products", product),
  labels: ({ product }, visit) => visit("products", product),
  papers: () => undefined,
};

/** A key that names a record of another list, in every record of the file. */
const LIST_BY_KEY: ReadonlyMap<string, RecordList> = new Map([
  ["material", "materials"],
  ["supplier", "suppliers"],
  ["formula", "formulas"],
  ["product", "products"],
  ["madeInto", "materials"],
]);

/** What a record refers to as it is typed, in its lines as well. */
export function referencesTyped(record: TypedRecord, visit: Visit): void {
  for (const [key, value] of Object.entries(record)) {
    const list = LIST_BY_KEY.get(key);
    if (list !== undefined && typeof value === "string") visit(list, value);
    if (!Array.isArray(value)) continue;
    for (const row of value as readonly unknown[]) {
      if (typeof row === "object" && row !== null) referencesTyped(row as TypedRecord, visit);
    }
  }
}

/** Lists in which an amount is read by the record, or a chain leads through it. */
const JUDGED_BY: Partial<Readonly<Record<RecordList, readonly RecordList[]>>> = {
  materials: ["offers", "lots", "orders", "formulas", "products"],
  formulas: ["products"],
};

/**
 * A workshop of the records that a change of one bears on. The record itself is in it as it stands, if it does.
 * @param typed  the record as it is to be
 */
export function partForRecord(workshop: Workshop, list: RecordList, id: string, typed: TypedRecord): Workshop {
  const part = partBuilder(workshop);
  part.take(list, id);
  referencesTyped(typed, part.take);
  for (const judged of JUDGED_BY[list] ?? []) part.takeThoseReferringTo(judged, list, id);
  // Any formula may lie above or below this one, or the one that is made ahead.
  const isChained = list === "formulas" || (list === "products" && typeof typed.madeInto === "string");
  if (isChained) {
    for (const formula of workshop.formulas) part.take("formulas", formula.id);
    for (const product of workshop.products) if (product.madeInto !== null) part.take("products", product.id);
  }
  // At most one offer of a material is preferred.
  if (list === "offers" && typeof typed.material === "string") {
    part.takeThoseReferringTo("offers", "materials", typed.material);
  }
  // No lot has the id of a line on order.
  if (list === "lots") part.take("orders", id.replace(/\/[1-9]\d*$/, ""));
  if (list === "orders") for (const lot of workshop.lots) if (lot.id.startsWith(`${id}/`)) part.take("lots", lot.id);
  return part.workshop();
}

/** A workshop of its settings, and of the lots, which must have come by its today. */
export function partForSettings(workshop: Workshop): Workshop {
  const part = partBuilder(workshop);
  for (const { id } of workshop.lots) part.take("lots", id);
  return part.workshop();
}

function partBuilder(workshop: Workshop) {
  const taken = new Map(RECORD_LISTS.map((list) => [list, new Set<string>()]));
  const recordsByList = new Map<RecordList, ReadonlyMap<string, AnyRecord>>();
  const recordOf = (list: RecordList, id: string): AnyRecord | undefined => {
    const kept: readonly AnyRecord[] = workshop[list];
    const byId = recordsByList.get(list) ?? new Map(kept.map((record) => [record.id, record]));
    recordsByList.set(list, byId);
    return byId.get(id);
  };
  // Chains of premixes are at most eight deep, so that this ends soon.
  const take = (list: RecordList, id: string): void => {
    const record = recordOf(list, id);
    if (record === undefined || taken.get(list)?.has(id) === true) return;
    taken.get(list)?.add(id);
    referencesOf(list, record, take);
  };
  const takeThoseReferringTo = (list: RecordList, to: RecordList, id: string): void => {
    for (const record of workshop[list]) {
      referencesOf(list, record, (toList, toId) => {
        if (toList === to && toId === id) take(list, record.id);
      });
    }
  };
  const part = <L extends RecordList>(list: L): Workshop[L] =>
    (workshop[list] as readonly AnyRecord[]).filter(({ id }) => taken.get(list)?.has(id)) as unknown as Workshop[L];
  return {
    take,
    takeThoseReferringTo,
    workshop: (): Workshop => ({
      settings: workshop.settings,
      suppliers: part("suppliers"),
      materials: part("materials"),
      offers: part("offers"),
      lots: part("lots"),
      orders: part("orders"),
      formulas: part("formulas"),
      products: part("products"),
      runs: part("runs"),
      finished: part("finished"),
      sales: [],
      labels: part("labels"),
      papers: part("papers"),
    }),
  };
}

type AnyRecord = Workshop[RecordList][number];

/** The table asks for a record of its list, which the caller took from that very list. */
const referencesOf = (list: RecordList, record: AnyRecord, visit: Visit): void =>
  (REFERENCES[list] as (record: AnyRecord, visit: Visit) => void)(record, visit);
