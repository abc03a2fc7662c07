/** Records of a workshop as its file writes them, one at a time. @rule FILE-4 */
import type { Workshop } from "@/lib/domain/workshop";
import { workshopDocument } from "@/lib/edge/workshop/writing";
import type { RecordList } from "./form-fields";
import type { TypedRecord } from "./form-reading";

/** The record with that id as the file holds it, or null where there is none. */
export function writtenRecord(workshop: Workshop, list: RecordList, id: string): TypedRecord | null {
  const kept: readonly { readonly id: string }[] = workshop[list];
  const [record] = writtenOf(workshop, list, kept.filter((record) => record.id === id).slice(0, 1));
  return record ?? null;
}

/** All records of a list as the file holds them. */
export const writtenRecords = (workshop: Workshop, list: RecordList): readonly TypedRecord[] =>
  writtenOf(workshop, list, workshop[list]);

/** The settings as the file holds them. */
export const writtenSettings = ({ settings }: Workshop): TypedRecord =>
  documentOf({ ...EMPTY, settings }).workshop as TypedRecord;

const EMPTY: Omit<Workshop, "settings"> = {
  suppliers: [],
  materials: [],
  offers: [],
  lots: [],
  orders: [],
  formulas: [],
  products: [],
  runs: [],
  finished: [],
  sales: [],
  labels: [],
  papers: [],
};

function writtenOf(
  { settings, materials }: Workshop,
  list: RecordList,
  records: readonly { readonly id: string }[],
): readonly TypedRecord[] {
  // Lots and orders are written in the measure of their materials.
  const measures = list === "lots" || list === "orders" ? materials : [];
  const alone = { ...EMPTY, settings, materials: measures, [list]: records };
  // A list of a later version that has nothing in it is not written.
  return (documentOf(alone)[list] ?? []) as readonly TypedRecord[];
}

/** What is left out stands as undefined in the document; here it is not there at all. */
const documentOf = (workshop: Workshop): TypedRecord =>
  JSON.parse(JSON.stringify(workshopDocument(workshop))) as TypedRecord;
