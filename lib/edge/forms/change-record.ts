/**
 * One record of a workshop put in, changed or taken out. A form is a record of the workshop file: it is put in its
 * place in the document, and read by the readers of the file, so that there is one set of checks.
 */
import { type Day, later } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import type { Json, JsonObject } from "@/lib/edge/json-tree";
import { readTree } from "@/lib/edge/workshop/reading";
import { LATEST_VERSION } from "@/lib/edge/workshop/versions";
import { workshopDocument } from "@/lib/edge/workshop/writing";
import { faultsInWords, placedFaults } from "./faults-in-words";
import { CALLED, RECORD_LISTS, type RecordList } from "./form-fields";
import type { FieldFault, TypedRecord } from "./form-reading";
import { partForRecord, partForSettings } from "./part-of-workshop";
import { plainTree } from "./plain-tree";
import { sameRecord } from "./staleness";
import { writtenRecord, writtenSettings } from "./written-record";

export interface Refused {
  readonly kind: "refused";
  /** What is wrong with the record itself. */
  readonly faults: readonly FieldFault[];
  /** What the change would make wrong elsewhere, each named by what a person knows it by; at most 100, then how many more. */
  readonly breaks: readonly string[];
  /** The record that was to be changed is not there any more; what was typed can be kept as a new one. */
  readonly isGone?: true;
}

export type RecordChange =
  | {
      readonly kind: "changed";
      readonly workshop: Workshop;
      /** The record as the file now writes it. */
      readonly record: TypedRecord;
    }
  /** A new record that was sent before and is there, just as it was sent. */
  | { readonly kind: "already kept"; readonly workshop: Workshop; readonly record: TypedRecord }
  | Refused;

const refused = (message: string): Refused => ({
  kind: "refused",
  faults: [{ field: null, message }],
  breaks: [],
});

/**
 * Puts a record into its list: in the place of the one with that id, or at the end.
 * @param id         of the record to be changed, which it keeps; null for a new one, whose id is in the record
 * @param realToday  on which no lot may be still to come, where the workshop sets no day of its own
 * @param typed      what a form has already found wrong with the record; told in place of what the reader says there
 */
export function putRecord(
  workshop: Workshop,
  list: RecordList,
  id: string | null,
  record: TypedRecord,
  realToday: Day,
  typed: readonly FieldFault[] = [],
): RecordChange {
  const ownId = id ?? (typeof record.id === "string" ? record.id : "");
  const stored = writtenRecord(workshop, list, ownId);
  if (id !== null && stored === null) {
    const gone = refused(`this ${CALLED[list]} is no longer in the workshop; it was removed meanwhile`);
    return { ...gone, isGone: true };
  }
  const toBe = id === null ? record : { ...record, id };
  const part = partForRecord(workshop, list, ownId, toBe);
  const document = documentOf(part);
  const others = ((document.get(list) ?? []) as readonly JsonObject[]).filter((other) => other.get("id") !== ownId);
  // It is read last, so that what collides with it is told of it and not of the other.
  document.set(list, [...others, plainTree(toBe)]);
  const path = `${list}[${String(others.length)}]`;
  const reading = judge(document, path, dayForLots(workshop, realToday), typed);
  if (reading.kind === "refused") return reading;
  const written = writtenRecord(reading.workshop, list, ownId) ?? toBe;
  if (id === null && stored !== null) {
    return sameRecord(stored, written)
      ? { kind: "already kept", workshop, record: stored }
      : refused(`this ${CALLED[list]} was kept before, with something else in it; open it to change it`);
  }
  return { kind: "changed", workshop: withRecordsOf(workshop, reading.workshop, list, ownId), record: written };
}

/** Puts other settings in the place of the workshop's. The parameters are those of {@link putRecord}. */
export function putSettings(
  workshop: Workshop,
  record: TypedRecord,
  realToday: Day,
  typed: readonly FieldFault[] = [],
): RecordChange {
  const document = documentOf(partForSettings(workshop));
  document.set("workshop", plainTree(record));
  const reading = judge(document, "workshop", dayForLots(workshop, realToday), typed);
  if (reading.kind === "refused") return reading;
  const changed = { ...workshop, settings: reading.workshop.settings };
  return { kind: "changed", workshop: changed, record: writtenSettings(changed) };
}

/** Of the last version, which can say whatever a form may. */
const documentOf = (workshop: Workshop): Map<string, Json> =>
  (plainTree(workshopDocument(workshop)) as Map<string, Json>).set("version", LATEST_VERSION);

/** What is on the shelf already stays there, also where the computer's clock has been set back since. */
const dayForLots = ({ settings, lots }: Workshop, realToday: Day): Day =>
  settings.today === null ? lots.reduce((latest, { received }) => later(latest, received), realToday) : realToday;

type Judgement = { readonly kind: "read"; readonly workshop: Workshop } | Refused;

function judge(document: JsonObject, path: string, today: Day, typed: readonly FieldFault[]): Judgement {
  const told = placedFaults();
  const workshop = readTree(document, today, told);
  if (workshop !== undefined && typed.length === 0) return { kind: "read", workshop };
  const { faults, breaks } = faultsInWords(told.placed(), { document, path });
  const better = new Set(typed.map(({ field }) => field));
  return { kind: "refused", faults: [...typed, ...faults.filter(({ field }) => !better.has(field))], breaks };
}

/** The workshop with every record that was read again in its place, and a new one at the end of its list. */
function withRecordsOf(workshop: Workshop, read: Workshop, list: RecordList, id: string): Workshop {
  const changed: Partial<Record<RecordList, readonly { readonly id: string }[]>> = {};
  for (const inList of RECORD_LISTS) {
    const byId = new Map<string, { readonly id: string }>(read[inList].map((record) => [record.id, record]));
    if (byId.size === 0) continue;
    const kept: readonly { readonly id: string }[] = workshop[inList];
    const records = kept.map((record) => byId.get(record.id) ?? record);
    const added = inList === list && !kept.some((record) => record.id === id) ? byId.get(id) : undefined;
    changed[inList] = added === undefined ? records : [...records, added];
  }
  return { ...workshop, ...changed } as Workshop;
}
