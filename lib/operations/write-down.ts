import { type Batch, type BenchNote, type Instant, movesStock, type NoteOf } from "@/lib/domain/bench/batch";
import { type NoteToWrite, refusedNote } from "@/lib/domain/bench/refused-note";
import type { Day } from "@/lib/domain/calendar";
import type { Books, ClosedRun } from "@/lib/domain/desk";
import type { Fraction } from "@/lib/domain/fraction";
import { byId } from "@/lib/domain/index-by-id";
import { type Draw, makeRun } from "@/lib/domain/ledger/make-run";
import { at, batchOf, finishedLot, type LotName, materialLot } from "@/lib/domain/ledger/posting";
import { reverse } from "@/lib/domain/ledger/reverse";
import { latest } from "@/lib/domain/ledger/standing";
import { release, weighIn, writeOff } from "@/lib/domain/ledger/stock-moves";
import { lotOfNothing, materialOfUnit, type RunOutput } from "@/lib/domain/run-output";
import type { Ledger } from "@/lib/store/post-to-books";
import { lossesOf, runMade, withClosed } from "./make-run";
import { onTheBooks } from "./on-the-books";
import { onTheLedger } from "./on-the-ledger";

export interface WriteDown extends NoteToWrite {
  /** The run of the batch. */
  readonly batch: string;
  /** Of a note that closes it. */
  readonly closing: Closing | null;
  readonly realToday: Day;
}

export interface Closing {
  /** Of packaging and whatever else is not weighed, by lot. */
  readonly draws: readonly Draw[];
  /** Null for what is planned. */
  readonly minutes: Fraction | null;
}

type Found =
  | { readonly kind: "no such batch" }
  /** The same note, sent again. @rule BENCH-5 */
  | { readonly kind: "written already" }
  | { readonly kind: "found"; readonly batch: Batch };

function found({ desk }: Books, { batch: run, note }: WriteDown): Found {
  const batch = desk.batches.find((each) => each.run.id === run);
  if (batch === undefined) return { kind: "no such batch" };
  return batch.notes.some(({ key }) => key === note.key) ? { kind: "written already" } : { kind: "found", batch };
}

/**
 * Writes a note down in a batch, and posts what it moves, in one transaction. A second time it changes nothing.
 * @rule BENCH-3 to BENCH-8
 */
export async function writeDown(asked: WriteDown) {
  const told = await onTheBooks((books) => {
    const there = found(books, asked);
    if (there.kind !== "found") return there;
    const refused = refusedNote(there.batch, asked, books.workshop);
    if (refused) return refused;
    if (isForTheLedger(there.batch, asked.note)) return { kind: "is for the ledger" as const };
    return { kind: "written" as const, books: withNote(books, there.batch, asked.note) };
  });
  if (told.kind !== "is for the ledger") return told;
  const posted = await postDown(asked);
  const judges = asked.note.kind === "released" || asked.note.kind === "rejected";
  return posted.kind === "nothing to post" && judges ? noteAlone(asked) : posted;
}

/** What was on hold has left it another way, over the shelf: the record says all the same how it was judged. */
const noteAlone = (asked: WriteDown) =>
  onTheBooks((books) => {
    const there = found(books, asked);
    if (there.kind !== "found") return there;
    const refused = refusedNote(there.batch, asked, books.workshop);
    return refused ?? { kind: "written" as const, books: withNote(books, there.batch, asked.note) };
  });

/** Whether stock moves with a note. */
function isForTheLedger({ notes }: Batch, note: BenchNote): boolean {
  switch (note.kind) {
    case "weighed":
      return note.lot !== null;
    case "struck": {
      const struck = notes.find(({ key }) => key === note.strikes);
      return struck !== undefined && movesStock(struck) && !(struck.kind === "weighed" && struck.lot === null);
    }
    case "added":
    case "closed":
    case "released":
    case "rejected":
      return true;
    case "temperature":
    case "acidity":
    case "seen":
    case "annexed":
      return false;
  }
}

const postDown = (asked: WriteDown) =>
  onTheLedger({ key: asked.note.key, realToday: asked.realToday }, async (ledger, today) => {
    const there = found(ledger.books, asked);
    if (there.kind !== "found") return there;
    const refused = refusedNote(there.batch, asked, ledger.books.workshop);
    if (refused) return refused;
    const { batch } = there;
    const decided: PostedDown = await posted(ledger, batch, asked, today);
    if (decided.kind !== "posted") return decided;
    return { ...decided, books: withNote(decided.books ?? ledger.books, batch, asked.note) };
  });

const withNote = ({ workshop, desk }: Books, batch: Batch, note: BenchNote): Books => ({
  workshop,
  desk: {
    ...desk,
    batches: desk.batches.map((each) =>
      each.run.id === batch.run.id ? { ...each, notes: [...each.notes, note] } : each,
    ),
  },
});

type Answered = Awaited<ReturnType<typeof posted>>;
/** Of what is posted, the books that are to be beside the note, where they change. */
type PostedDown =
  | Exclude<Answered, { readonly kind: "posted" }>
  | (Extract<Answered, { readonly kind: "posted" }> & { readonly books?: Books });

/** What the ledger says to a note. */
async function posted(ledger: Ledger, batch: Batch, asked: WriteDown, today: Day) {
  const { note, closing } = asked;
  switch (note.kind) {
    case "weighed":
    case "added":
      return weighed(ledger, batch, note, today);
    case "struck":
      return struck(ledger, note, today);
    case "closed":
      return closed(ledger, batch, note, closing ?? { draws: [], minutes: null }, today);
    case "released":
    case "rejected":
      return judgedLot(ledger, batch, note, today);
    case "temperature":
    case "acidity":
    case "seen":
    case "annexed":
      throw new Error(`a note of the kind "${note.kind}" moves nothing`);
  }
}

async function weighed(ledger: Ledger, { run }: Batch, note: NoteOf<"weighed"> | NoteOf<"added">, today: Day) {
  const lots = note.lot === null ? [] : [materialLot(note.lot)];
  const lines = lots.map((lot) => ({ lot, quantity: note.net }));
  const standing = await ledger.standingOf(lots);
  // A lot that is out of date is drawn only where a reason says so.
  const outOfDate = note.kind === "added" || note.why === null ? ("refuse" as const) : ("draw" as const);
  const into = { key: note.key, day: today, today, reason: note.why, lines, run: run.id, outOfDate };
  return weighIn(into, standing, ledger.records);
}

async function struck(ledger: Ledger, note: NoteOf<"struck">, today: Day) {
  const posting = await ledger.postingNamed(note.strikes);
  const reversedBy = await ledger.reversalOf(note.strikes);
  const lots = posting?.entries.map(({ lot }) => lot) ?? [];
  const back = { key: note.key, reverses: note.strikes, day: today, today, reason: note.why ?? "" };
  return reverse(back, { posting, reversedBy }, await ledger.standingOf(lots), () => []);
}

/** The batch gives what it holds to the units that were filled. @rule BENCH-7, LEDGER-11, LEDGER-12 */
async function closed(ledger: Ledger, batch: Batch, note: NoteOf<"closed">, closing: Closing, today: Day) {
  const { books } = ledger;
  const { run, code } = batch;
  // Of lots whose weights were struck a cost that came later may stand in the batch.
  const inIt = lotsOfBatch(batch).map(materialLot);
  const standing = await ledger.standingOf([...inIt, ...closing.draws.map(({ lot }) => materialLot(lot))]);
  const before = inIt.map((lot) => ({ lot: lot.id, ...latest(standing, lot, batchOf(run.id)) }));
  const asked = {
    key: note.key,
    day: today,
    note: note.why,
    unitsMade: note.units,
    finishedLot: { id: code, bestBefore: note.bestBefore },
    outOfDate: note.why === null ? ("refuse" as const) : ("draw" as const),
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
  const closedRun: ClosedRun = { run, madeOn: today, unitsMade: note.units, versions: batch.versions };
  const after = withClosed(books, closedRun, output);
  return note.units > 0n ? { ...decided, books: after } : { ...decided, books: after, failed: lotOfNothing(output) };
}

/** Every lot that something of it was ever written down of. */
const lotsOfBatch = ({ notes }: Batch): readonly string[] => [
  ...new Set(
    notes.flatMap((note) =>
      (note.kind === "weighed" || note.kind === "added") && note.lot !== null ? [note.lot] : [],
    ),
  ),
];

/** The lot that came out of a batch, and waits for a second look: it goes into stock, or is lost. @rule BENCH-8 */
async function judgedLot(
  ledger: Ledger,
  { run, code }: Batch,
  note: NoteOf<"released"> | NoteOf<"rejected">,
  today: Day,
) {
  const product = byId("product", ledger.books.workshop.products)(run.product);
  const lot: LotName = materialOfUnit(product) === null ? finishedLot(code) : materialLot(code);
  const standing = await ledger.standingOf([lot]);
  const lines = [{ lot, quantity: latest(standing, lot, at("hold")).quantity }];
  const move = { key: note.key, day: today, today, reason: note.why ?? RELEASED, lines };
  return note.kind === "released"
    ? release(move, standing, ledger.records)
    : writeOff({ ...move, as: "lost", from: "hold" }, standing, ledger.records);
}

const RELEASED = "released at the bench";

export type NoteTold = Awaited<ReturnType<typeof writeDown>>;
type Written = Extract<NoteTold, { readonly kind: "written" | "written already" | "posted" | "already posted" }>;

/** Whether a note stands in the record now, whoever sent it how often. */
export const isWritten = (told: NoteTold): told is Written =>
  ["written", "written already", "posted", "already posted"].includes(told.kind);

/** A moment to the second, in universal time. */
export const instantOf = (now: Date): Instant => `${now.toISOString().slice(0, 19)}Z` as Instant;
