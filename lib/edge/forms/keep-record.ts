/** A form that was sent, decided on as a whole: whether it may be kept, and if so, what the workshop then is. */
import type { Day } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { putRecord, putSettings, type RecordChange } from "./change-record";
import type { RecordList } from "./form-fields";
import type { FormReading } from "./form-reading";
import { type Stale, staleness } from "./staleness";
import { writtenRecord, writtenSettings } from "./written-record";

export type KeepDecision = RecordChange | Stale;

export interface SentRecord {
  /** What was typed, with what could not be understood. */
  readonly reading: FormReading;
  /** The fingerprint of the record as the form was drawn; empty for a new one. */
  readonly seen: string;
}

/** Decides on a record's form. A stale form is told so before anything that is wrong with it. @param id null for a new one */
export function keepRecord(
  workshop: Workshop,
  list: RecordList,
  id: string | null,
  { reading, seen }: SentRecord,
  realToday: Day,
): KeepDecision {
  const put = putRecord(workshop, list, id, reading.record, realToday, reading.faults);
  const stored = id === null ? null : writtenRecord(workshop, list, id);
  // A new record has nothing to be stale against; one that was removed meanwhile is refused as such.
  if (id === null || stored === null) return put;
  return staleness(seen, stored, put.kind === "refused" ? { ...reading.record, id } : put.record) ?? put;
}

/** Decides on the form of the settings. */
export function keepSettings(workshop: Workshop, { reading, seen }: SentRecord, realToday: Day): KeepDecision {
  const put = putSettings(workshop, reading.record, realToday, reading.faults);
  return staleness(seen, writtenSettings(workshop), put.kind === "refused" ? reading.record : put.record) ?? put;
}
