/** Closing a batch, and judging what came out of it: what both post. @rule BENCH-7, BENCH-8 */
import { type Batch, codeOf, type NoteOf } from "@/lib/domain/bench/batch";
import type { Day } from "@/lib/domain/calendar";
import type { ClosedRun } from "@/lib/domain/desk";
import type { Fraction } from "@/lib/domain/fraction";
import { byId } from "@/lib/domain/index-by-id";
import { type Draw, makeRun } from "@/lib/domain/ledger/make-run";
import { at, batchOf, finishedLot, type LotName, materialLot } from "@/lib/domain/ledger/posting";
import { latest } from "@/lib/domain/ledger/standing";
import { release, writeOff } from "@/lib/domain/ledger/stock-moves";
import { lotOfNothing, materialOfUnit, type RunOutput } from "@/lib/domain/run-output";
import type { Ledger } from "@/lib/store/post-to-books";
import { lossesOf, runMade, withClosed } from "./make-run";

export interface Closing {
  /** Of packaging and whatever else is not weighed, by lot. */
  readonly draws: readonly Draw[];
  /** Null for what is planned. */
  readonly minutes: Fraction | null;
}

/** The batch gives what it holds to the units that were filled. @rule BENCH-7, LEDGER-11, LEDGER-12 */
export async function closedBatch(ledger: Ledger, batch: Batch, note: NoteOf<"closed">, closing: Closing, today: Day) {
  const { books } = ledger;
  const { run } = batch;
  const code = codeOf(batch);
  // Of lots whose weights were struck a cost that came later may stand in the batch.
  const inIt = lotsOfBatch(batch).map(materialLot);
  const standing = await ledger.standingOf([...inIt, ...closing.draws.map(({ lot }) => materialLot(lot))]);
  const before = inIt.map((lot) => ({ lot: lot.id, ...latest(standing, lot, batchOf(run.id)) }));
  const asked = {
    key: note.key,
    day: today,
    note: reasonOf(note),
    unitsMade: note.units,
    finishedLot: { id: code, bestBefore: note.bestBefore },
    outOfDate: note.whyOutOfDate === null ? ("refuse" as const) : ("draw" as const),
    minutes: closing.minutes,
  };
  const made = { ...runMade(books, run, asked, closing.draws, today), before, onHold: note.held };
  const decided = makeRun(made, standing, lossesOf(books, run), ledger.records);
  if (decided.kind !== "posted") return decided;
  const output: RunOutput = {
    product: byId("product", books.workshop.products)(run.product),
    lot: { id: code, bestBefore: note.bestBefore },
    made: today,
    units: note.units,
    value: decided.finished.materials,
  };
  const versions = batch.versions.map(({ formula, number }) => ({ formula, number }));
  const closedRun: ClosedRun = { run, madeOn: today, unitsMade: note.units, versions };
  const after = withClosed(books, closedRun, output);
  return note.units > 0n ? { ...decided, books: after } : { ...decided, books: after, failed: lotOfNothing(output) };
}

/** The posting says the first of the reasons; the record has them all. */
const reasonOf = (note: NoteOf<"closed">): string | null =>
  note.why ?? note.whyNotWeighed ?? note.whyMoreFilled ?? note.whyOutOfDate ?? note.whyNotChecked;

/** Every lot that something of it was ever written down of. */
const lotsOfBatch = ({ notes }: Batch): readonly string[] => [
  ...new Set(
    notes.flatMap((note) =>
      (note.kind === "weighed" || note.kind === "added") && note.lot !== null ? [note.lot] : [],
    ),
  ),
];

/** The lot that came out of a batch, and waits for a second look: it goes into stock, or is lost. @rule BENCH-8 */
export async function judgedLot(
  ledger: Ledger,
  batch: Batch,
  note: NoteOf<"released"> | NoteOf<"rejected">,
  today: Day,
) {
  const product = byId("product", ledger.books.workshop.products)(batch.run.product);
  const code = codeOf(batch);
  const lot: LotName = materialOfUnit(product) === null ? finishedLot(code) : materialLot(code);
  const standing = await ledger.standingOf([lot]);
  const lines = [{ lot, quantity: latest(standing, lot, at("hold")).quantity }];
  const move = { key: note.key, day: today, today, reason: note.why ?? RELEASED, lines };
  return note.kind === "released"
    ? release(move, standing, ledger.records)
    : writeOff({ ...move, as: "lost", from: "hold" }, standing, ledger.records);
}

const RELEASED = "released at the bench";
