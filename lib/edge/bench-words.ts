/** The states and notes of a batch as the screens and its record say them. @rule BENCH-4, BENCH-8 */
import type { BatchState, NoteKind } from "@/lib/domain/bench/batch";

export const STATE_WORDS: Readonly<Record<BatchState, string>> = {
  open: "Open",
  held: "Closed, waits for a second look",
  released: "Released",
  rejected: "Rejected",
  "given up": "Given up",
};

export const NOTE_WORDS: Readonly<Record<NoteKind, string>> = {
  weighed: "Weighed",
  added: "Added beside the formula",
  struck: "Struck",
  temperature: "Temperature",
  acidity: "pH",
  seen: "Seen",
  closed: "Closed",
  released: "Released",
  rejected: "Rejected",
  annexed: "Annexed",
};
