/** Batches of the small shop: started, weighed and closed through the operations. */
import { expect } from "vitest";
import type { BenchNote, Instant, NoteKind, NoteOf } from "@/lib/domain/bench/batch";
import type { Closing } from "@/lib/operations/close-batch";
import type { StartBatch } from "@/lib/operations/start-batch";
import { writeDown } from "@/lib/operations/write-down";
import { books, TODAY, units } from "./ledger-shop";
import { day, decimal, g } from "./notation";

export const AT = "2026-11-25T09:30:00Z" as Instant;
export const starting = (given: Partial<StartBatch> = {}): StartBatch => ({
  run: { id: "r", product: "p", date: day("2026-11-24"), units: units(10) },
  code: "B-1",
  at: AT,
  who: "R. Weaver",
  despite: null,
  realToday: TODAY,
  ...given,
});

type Given<Kind extends NoteKind> = Partial<NoteOf<Kind>>;
const NO_REASONS = { whyNotWeighed: null, whyMoreFilled: null, whyOutOfDate: null, whyNotChecked: null };
const BLANK = {
  weighed: { line: "1", lot: "soon", net: g("1000"), gross: null, tare: null, more: false, why: null },
  added: { material: "oil", called: null, lot: "late", net: g("5"), why: "made up for what evaporated" },
  struck: { strikes: "w", why: "misread" },
  temperature: { phase: null, celsius: decimal("70"), meter: null, calibrated: null },
  acidity: { ph: decimal("4.5"), meter: "pen", calibrated: day("2026-11-20") },
  seen: { what: "Colour", found: "yellow" },
  closed: { units: units(10), leftOver: null, bestBefore: day("2027-11-25"), held: false, why: null, ...NO_REASONS },
  checked: { what: "pH", asked: "from 5 to 6", found: "5.5", within: true, why: null },
  recoded: { code: "B-1a", why: "the code is taken" },
  released: { why: null, whyNotChecked: null },
  rejected: { why: "grainy" },
  annexed: { found: "seen again" },
} satisfies { readonly [Kind in NoteKind]: Omit<NoteOf<Kind>, "key" | "at" | "who" | "kind"> };

export const note = <Kind extends NoteKind>(kind: Kind, key: string, given: Given<Kind> = {}): BenchNote =>
  ({ key, at: AT, who: "R. Weaver", kind, ...BLANK[kind], ...given }) as unknown as BenchNote;

export const write = (written: BenchNote, seen: readonly string[] = [], closing: Closing | null = null) =>
  writeDown({ batch: "r", note: written, seen, closing, realToday: TODAY });
export const jars: Closing = { draws: [{ lot: "jars", quantity: 10n, spilt: 0n }], minutes: null };

export const batch = async () => {
  const found = (await books()).desk.batches[0];
  if (found === undefined) throw new Error("no batch was started");
  return found;
};
export const left = async (id: string) => (await books()).workshop.lots.find((each) => each.id === id)?.remaining;
/** All 1000 g from the two lots, 600 g and 400 g, as LOT-1 would have it. */
export const weighAll = async () => {
  expect(await write(note("weighed", "w", { net: g("600"), more: true }))).toMatchObject({ kind: "posted" });
  expect(await write(note("weighed", "w2", { lot: "late", net: g("400") }), ["w"])).toMatchObject({ kind: "posted" });
};
