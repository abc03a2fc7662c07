import { type Batch, type BenchNote, type Instant, movesStock, type NoteOf, stateOf } from "@/lib/domain/bench/batch";
import { type NoteToWrite, refusedNote } from "@/lib/domain/bench/refused-note";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { labelsToKeep } from "@/lib/domain/label/label-of-run";
import { materialLot } from "@/lib/domain/ledger/posting";
import { reverse } from "@/lib/domain/ledger/reverse";
import { weighIn } from "@/lib/domain/ledger/stock-moves";
import type { Ledger } from "@/lib/store/post-to-books";
import { type Closing, closedBatch, judgedLot } from "./close-batch";
import { besideTheLedger, onTheLedger } from "./on-the-ledger";
import { onTheBooks } from "./on-the-books";
import { isCodeFree, nextFreeCode } from "./free-code";

export interface WriteDown extends NoteToWrite {
  /** The run of the batch. */
  readonly batch: string;
  /** Of a note that closes it. */
  readonly closing: Closing | null;
  readonly realToday: Day;
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
    const refused = refusedNote(there.batch, asked, books);
    if (refused) return refused;
    if (isForTheLedger(there.batch, asked.note)) return { kind: "is for the ledger" as const };
    return { kind: "written" as const, books: withNote(books, there.batch, asked.note) };
  });
  if (told.kind !== "is for the ledger") return told;
  if (asked.note.kind === "recoded") return giveCode(asked, asked.note);
  const posted = await postDown(asked);
  const judges = asked.note.kind === "released" || asked.note.kind === "rejected";
  return posted.kind === "nothing to post" && judges ? noteAlone(asked) : posted;
}

/** What was on hold has left it another way, over the shelf: the record says all the same how it was judged. */
const noteAlone = (asked: WriteDown) =>
  onTheBooks((books) => {
    const there = found(books, asked);
    if (there.kind !== "found") return there;
    const refused = refusedNote(there.batch, asked, books);
    return refused ?? { kind: "written" as const, books: withNote(books, there.batch, asked.note) };
  });

/** Another code in the place of one that is taken: it must be free, and that the ledger knows as well. @rule BENCH-10 */
const giveCode = (asked: WriteDown, note: NoteOf<"recoded">) =>
  besideTheLedger(asked.realToday, (ledger, today) => Promise.resolve(decideCode(ledger, asked, note, today)));

function decideCode(ledger: Ledger, asked: WriteDown, note: NoteOf<"recoded">, today: Day) {
  const there = found(ledger.books, asked);
  if (there.kind !== "found") return there;
  const refused = refusedNote(there.batch, asked, ledger.books);
  if (refused) return refused;
  const { code } = note;
  if (!isCodeFree(ledger, code)) return { kind: "code taken" as const, code, next: nextFreeCode(ledger, today, code) };
  return { kind: "written" as const, keeps: withNote(ledger.books, there.batch, note) };
}

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
    case "recoded":
    case "closed":
    case "released":
    case "rejected":
      return true;
    case "temperature":
    case "acidity":
    case "seen":
    case "checked":
    case "annexed":
      return false;
  }
}

const postDown = (asked: WriteDown) =>
  onTheLedger({ key: asked.note.key, realToday: asked.realToday }, async (ledger, today) => {
    const there = found(ledger.books, asked);
    if (there.kind !== "found") return there;
    const refused = refusedNote(there.batch, asked, ledger.books);
    if (refused) return refused;
    const { batch } = there;
    const decided: PostedDown = await posted(ledger, batch, asked, today);
    if (decided.kind !== "posted") return decided;
    return { ...decided, books: withNote(decided.books ?? ledger.books, batch, asked.note) };
  });

/** The books with the note in its batch; a batch that it releases keeps its labels as they are. @rule BENCH-9 */
function withNote({ workshop, desk }: Books, batch: Batch, written: BenchNote): Books {
  const note = written.kind === "added" ? { ...written, called: nameOf(workshop, written.material) } : written;
  const noted = { ...batch, notes: [...batch.notes, note] };
  const isReleased = stateOf(noted) === "released" && stateOf(batch) !== "released";
  const kept = isReleased ? { ...noted, labels: labelsToKeep({ workshop, desk }, noted) } : noted;
  const batches = desk.batches.map((each) => (each.run.id === batch.run.id ? kept : each));
  return { workshop, desk: { ...desk, batches } };
}

const nameOf = ({ materials }: Books["workshop"], material: string): string =>
  materials.find(({ id }) => id === material)?.name ?? material;

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
      return closedBatch(ledger, batch, note, closing ?? { draws: [], minutes: null }, today);
    case "released":
    case "rejected":
      return judgedLot(ledger, batch, note, today);
    case "temperature":
    case "acidity":
    case "seen":
    case "checked":
    case "recoded":
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

export type NoteTold = Awaited<ReturnType<typeof writeDown>>;
type Written = Extract<NoteTold, { readonly kind: "written" | "written already" | "posted" | "already posted" }>;

/** Whether a note stands in the record now, whoever sent it how often. */
export const isWritten = (told: NoteTold): told is Written =>
  ["written", "written already", "posted", "already posted"].includes(told.kind);

/** A moment to the second, in universal time. */
export const instantOf = (now: Date): Instant => `${now.toISOString().slice(0, 19)}Z` as Instant;
