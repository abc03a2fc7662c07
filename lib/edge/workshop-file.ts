/**
 * The workshop file: one JSON document in which a workshop is read, written and exchanged. Version 1.
 * @rule FILE-1 to FILE-4
 */
import type { Day } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { faultList } from "./fault-list";
import { readJson } from "./json-text";
import { readTree } from "@/lib/edge/workshop/reading";
import { workshopDocument } from "@/lib/edge/workshop/writing";

export type FileReading =
  | { readonly kind: "read"; readonly workshop: Workshop }
  /** Lines as `lots[3].expires: no such day "2026-02-30"`: at most 100, then one that says how many more there are. */
  | { readonly kind: "refused"; readonly faults: readonly string[] };

/**
 * Reads a workshop file, all or nothing.
 * @param realToday  the day on which no lot may be still to come, where the file sets none of its own
 */
export function readWorkshopFile(bytes: Uint8Array, realToday: Day): FileReading {
  const faults = faultList();
  const tree = readJson(bytes, faults);
  const workshop = tree === undefined ? undefined : readTree(tree, realToday, faults);
  return workshop === undefined ? { kind: "refused", faults: faults.lines() } : { kind: "read", workshop };
}

/** The workshop as a file, in its one canonical form: reading it gives an equal workshop. @rule FILE-4 */
export const writeWorkshopFile = (workshop: Workshop): string =>
  `${JSON.stringify(workshopDocument(workshop), null, 2)}\n`;
