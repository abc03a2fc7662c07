/**
 * The workshop file: one JSON document in which a workshop is read, written and exchanged. What each version adds
 * is said in workshop/versions.ts.
 * @rule FILE-1 to FILE-5, LEDGER-24
 */
import type { Day } from "@/lib/domain/calendar";
import { type Past, saysAll } from "@/lib/domain/ledger/past";
import type { Workshop } from "@/lib/domain/workshop";
import { faultList } from "./fault-list";
import { readJson } from "./json-text";
import { readTreeWithPast } from "@/lib/edge/workshop/reading";
import { workshopDocument } from "@/lib/edge/workshop/writing";

export type FileReading =
  /** `past` is there where the file holds one. */
  | { readonly kind: "read"; readonly workshop: Workshop; readonly past?: Past }
  /** Lines as `lots[3].expires: no such day "2026-02-30"`: at most 100, then one that says how many more there are. */
  | { readonly kind: "refused"; readonly faults: readonly string[] };

/**
 * Reads a workshop file, all or nothing.
 * @param realToday  the day on which no lot may be still to come, where the file sets none of its own
 */
export function readWorkshopFile(bytes: Uint8Array, realToday: Day): FileReading {
  const faults = faultList();
  const tree = readJson(bytes, faults);
  const read = tree === undefined ? undefined : readTreeWithPast(tree, realToday, faults);
  if (read === undefined) return { kind: "refused", faults: faults.lines() };
  return { kind: "read", workshop: read.workshop, ...(read.past && { past: read.past }) };
}

/**
 * The workshop as a file, in its one canonical form: reading it gives an equal workshop and past. A past of which the
 * workshop says everything is left out. @rule FILE-4, FILE-5
 */
export const writeWorkshopFile = (workshop: Workshop, past: Past | null = null): string =>
  `${JSON.stringify(workshopDocument(workshop, past && saysAll(workshop, past) ? null : past), null, 2)}\n`;
