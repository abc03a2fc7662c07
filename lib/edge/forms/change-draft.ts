/** Formulas that do not add up yet: kept on the desk, checked as any formula but for what they come to. @rule FORMULA-1 */
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { type FormulaTotal, formulaTotal } from "@/lib/domain/formula-total";
import type { Formula, Workshop } from "@/lib/domain/workshop";
import type { Json } from "@/lib/edge/json-tree";
import { readFormulas } from "@/lib/edge/workshop/formulas";
import { readMaterials } from "@/lib/edge/workshop/materials";
import { workshopDocument } from "@/lib/edge/workshop/writing";
import { putRecord, type Refused } from "./change-record";
import { faultsInWords, placedFaults } from "./faults-in-words";
import type { FieldFault, TypedRecord } from "./form-reading";
import { partForRecord } from "./part-of-workshop";
import { plainTree } from "./plain-tree";
import { sameRecord } from "./staleness";
import { totalInWords } from "./total-in-words";
import { writtenRecord } from "./written-record";

export interface DraftKept {
  readonly kind: "changed" | "already kept";
  readonly books: Books;
  /** The draft as a file would write it. */
  readonly record: TypedRecord;
  readonly total: FormulaTotal;
  /** What it comes to and what is missing, as a sentence. */
  readonly says: string;
}

/**
 * Keeps a formula on the desk, whatever its percents come to.
 * @param id  of the draft to be changed, which it keeps; null for a new one, whose id is in the record
 */
export function putDraft(
  books: Books,
  id: string | null,
  record: TypedRecord,
  typed: readonly FieldFault[] = [],
): DraftKept | Refused {
  const { workshop, desk } = books;
  const stored = desk.drafts.find((draft) => draft.id === (id ?? record.id));
  if (id !== null && stored === undefined)
    return { ...refused("this draft is not there any more; it was removed meanwhile"), isGone: true };
  const reading = readDraft(workshop, id === null ? record : { ...record, id }, typed);
  if (reading.kind === "refused") return reading;
  const { draft } = reading;
  const total = formulaTotal(draft);
  const about = { record: writtenDraft(workshop, draft), total, says: totalInWords(total) };
  if (stored === undefined) return { kind: "changed", books: withDrafts(books, [...desk.drafts, draft]), ...about };
  if (id === null) {
    return sameRecord(writtenDraft(workshop, stored), about.record)
      ? { kind: "already kept", books, ...about }
      : refused("this draft was kept before, with something else in it; open it to change it");
  }
  const drafts = desk.drafts.map((other) => (other.id === id ? draft : other));
  return { kind: "changed", books: withDrafts(books, drafts), ...about };
}

/** The draft, once it adds up, as a formula of the workshop; the desk lets go of it. */
export function finishDraft(
  books: Books,
  id: string,
  record: TypedRecord,
  realToday: Day,
  typed: readonly FieldFault[] = [],
): { readonly kind: "changed"; readonly books: Books; readonly record: TypedRecord } | Refused {
  const put = putRecord(books.workshop, "formulas", null, { ...record, id }, realToday, typed);
  if (put.kind === "refused") return put;
  const drafts = books.desk.drafts.filter((draft) => draft.id !== id);
  return { kind: "changed", books: withDrafts({ ...books, workshop: put.workshop }, drafts), record: put.record };
}

/** A draft as the file would write a formula. */
export const writtenDraft = (workshop: Workshop, draft: Formula): TypedRecord =>
  writtenRecord({ ...workshop, formulas: [draft] }, "formulas", draft.id) ?? {};

const refused = (message: string): Refused => ({ kind: "refused", faults: [{ field: null, message }], breaks: [] });

const withDrafts = (books: Books, drafts: readonly Formula[]): Books => ({ ...books, desk: { ...books.desk, drafts } });

type DraftReading = { readonly kind: "read"; readonly draft: Formula } | Refused;

function readDraft(workshop: Workshop, record: TypedRecord, typed: readonly FieldFault[]): DraftReading {
  const id = typeof record.id === "string" ? record.id : "";
  const part = partForRecord(workshop, "formulas", id, record);
  const document = plainTree(workshopDocument(part)) as Map<string, Json>;
  // A draft beside the formula of the same id would be two formulas of one id, and the reader says so.
  const formulas = [...(document.get("formulas") as readonly Json[]), plainTree(record)];
  document.set("formulas", formulas);
  const told = placedFaults();
  const materials = readMaterials(document.get("materials") as readonly Json[], told);
  const read = readFormulas(formulas, materials.index, told, "left open").formulas;
  const draft = read.at(-1);
  if (draft !== undefined && told.count() === 0 && typed.length === 0) return { kind: "read", draft };
  const path = `formulas[${String(formulas.length - 1)}]`;
  const { faults, breaks } = faultsInWords(told.placed(), { document, path });
  const better = new Set(typed.map(({ field }) => field));
  return { kind: "refused", faults: [...typed, ...faults.filter(({ field }) => !better.has(field))], breaks };
}
