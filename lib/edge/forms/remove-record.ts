/** A record taken out of the books, where nothing uses it; else the sentences that say what does. */
import { isoDate } from "@/lib/domain/calendar";
import { type Books, RETIRABLE, type RetirableList } from "@/lib/domain/desk";
import { type Usage, usageOf, type User, type UsingList } from "@/lib/domain/usage-of";
import type { JsonObject } from "@/lib/edge/json-tree";
import { quoted } from "@/lib/edge/shown-value";
import { workshopDocument } from "@/lib/edge/workshop/writing";
import type { Refused } from "./change-record";
import { recordInWords } from "./faults-in-words";
import { CALLED, RECORD_LISTS, type RecordList } from "./form-fields";
import { plainTree } from "./plain-tree";

export type Removal = { readonly kind: "removed"; readonly books: Books } | Refused;

/** Takes a record out of its list. One that is in use stays; `breaks` names what uses it. */
export function removeRecord(books: Books, list: RecordList, id: string): Removal {
  const { workshop, desk } = books;
  const kept: readonly { readonly id: string }[] = workshop[list];
  if (!kept.some((record) => record.id === id)) return refused(`this ${CALLED[list]} is no longer in the workshop`, []);
  const retirable = asRetirable(list);
  const usages = retirable === undefined ? [] : usageOf(books, retirable, id);
  if (usages.length > 0) return refused(`this ${CALLED[list]} is in use and stays`, usersInWords(books, usages));
  const without = { ...workshop, [list]: kept.filter((record) => record.id !== id) };
  if (retirable === undefined) return { kind: "removed", books: { ...books, workshop: without } };
  const retired = { ...desk.retired, [retirable]: desk.retired[retirable].filter((hidden) => hidden !== id) };
  return { kind: "removed", books: { workshop: without, desk: { ...withoutWhatIsSaidOf(desk, list, id), retired } } };
}

/** The rhythm of counting goes with its material, and the versions with their formula. */
const withoutWhatIsSaidOf = (desk: Books["desk"], list: RecordList, id: string): Books["desk"] => ({
  ...desk,
  countRhythms: desk.countRhythms.filter(({ material }) => !(list === "materials" && material === id)),
  versions: desk.versions.filter(({ formula }) => !(list === "formulas" && formula === id)),
});

/** Takes a draft off the desk. Nothing can be made with a draft, so that nothing keeps it. */
export function removeDraft(books: Books, id: string): Removal {
  const { drafts } = books.desk;
  if (!drafts.some((draft) => draft.id === id)) return refused("this draft is not there any more", []);
  return {
    kind: "removed",
    books: { ...books, desk: { ...books.desk, drafts: drafts.filter((one) => one.id !== id) } },
  };
}

const asRetirable = (list: RecordList): RetirableList | undefined => RETIRABLE.find((retirable) => retirable === list);

const refused = (message: string, breaks: readonly string[]): Refused => ({
  kind: "refused",
  faults: [{ field: null, message }],
  breaks,
});

const MOST_OF_A_LIST = 10;

function usersInWords(books: Books, usages: readonly Usage[]): readonly string[] {
  const document = plainTree(workshopDocument(books.workshop)) as JsonObject;
  return usages.flatMap(({ list, users }) => {
    const named = users.slice(0, MOST_OF_A_LIST).map((user) => userInWords(list, user, document));
    const more = users.length - named.length;
    return more === 0 ? named : [...named, `and ${String(more)} more ${MANY[list]}`];
  });
}

const MANY: Readonly<Record<UsingList, string>> = {
  offers: "offers",
  lots: "lots",
  orders: "orders",
  formulas: "formulas",
  drafts: "drafts",
  versions: "earlier versions",
  trials: "trials",
  products: "products",
  runs: "runs",
  finished: "finished lots",
  sales: "sales",
  closedRuns: "runs that were made",
  batches: "batches at the bench",
  labels: "labels",
};

function userInWords(list: UsingList, { id, name, on }: User, document: JsonObject): string {
  const day = on === null ? "" : isoDate(on);
  if (list === "drafts") return `draft ${quoted(name ?? "")}`;
  if (list === "versions") return `an earlier version of ${quoted(name ?? "")}`;
  if (list === "trials") return `the trial ${quoted(name ?? "")} of ${day}`;
  if (list === "sales") return `the sale of ${day}`;
  if (list === "closedRuns") return `the run that was made on ${day}`;
  if (list === "batches") return `the batch at the bench, started on ${day}`;
  const records = isRecordList(list) ? (document.get(list) as readonly JsonObject[]) : [];
  const record = records.find((one) => one.get("id") === id);
  return record === undefined || !isRecordList(list) ? `${list} ${day}` : recordInWords(list, record, document);
}

const isRecordList = (list: string): list is RecordList => (RECORD_LISTS as readonly string[]).includes(list);
