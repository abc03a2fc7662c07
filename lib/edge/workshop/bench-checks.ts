/** The batches of a file against the rest of its past. @rule BENCH-5, BENCH-7, FILE-5 */
import { type Batch, type BenchNote, codeOf, type NoteOf, stateOf } from "@/lib/domain/bench/batch";
import type { ClosedRun } from "@/lib/domain/desk";
import type { Posted } from "@/lib/domain/ledger/posting";
import type { Workshop } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { quoted } from "@/lib/edge/shown-value";

interface PastOfBatches {
  readonly closedRuns: readonly ClosedRun[];
  readonly postings: readonly Posted[];
}

/**
 * The batches against the rest of the past: what was weighed is posted as it was written down, what was struck is taken
 * back, what was closed is closed, and nothing else is posted as weighed.
 */
export function checkBatches(
  batches: readonly Batch[],
  past: PastOfBatches,
  workshop: Workshop,
  faults: FaultList,
): void {
  checkNotes(batches, faults);
  checkCodes(batches, workshop, faults);
  const planned = new Set(workshop.runs.map(({ id }) => id));
  const closedRunOf = new Map(past.closedRuns.map((closed) => [closed.run.id, closed]));
  const ledger: PostingsByKey = {
    named: new Map(past.postings.map((posting) => [posting.id, posting])),
    reversalOf: new Map(
      past.postings.flatMap((posting) => (posting.reverses === null ? [] : [[posting.reverses, posting] as const])),
    ),
  };
  batches.forEach((batch, at) => {
    const path = `batches[${String(at)}]`;
    const closing = batch.notes.find(({ kind }) => kind === "closed");
    const closed = closedRunOf.get(batch.run.id);
    if ((closing === undefined) !== (closed === undefined) || (closing === undefined && !planned.has(batch.run.id)))
      faults.tell(`${path}.id`, "an open batch is of a planned run, a closed one of a run that is closed");
    batch.notes.forEach((note, index) => {
      const fault = faultOfNote(batch, note, ledger, closed);
      if (fault) faults.tell(`${path}.notes[${String(index)}].${fault.key}`, fault.says);
    });
  });
  checkWeighed(batches, past.postings, faults);
}

interface PostingsByKey {
  readonly named: ReadonlyMap<string, Posted>;
  /** By the id of what was taken back. */
  readonly reversalOf: ReadonlyMap<string, Posted>;
}

interface NoteFault {
  readonly key: string;
  readonly says: string;
}

/** What a note says that its posting does not. */
function faultOfNote(
  batch: Batch,
  note: BenchNote,
  ledger: PostingsByKey,
  closed: ClosedRun | undefined,
): NoteFault | null {
  switch (note.kind) {
    case "weighed":
    case "added":
      return note.lot === null ? null : faultOfWeight(batch, { ...note, lot: note.lot }, ledger);
    case "closed":
      return faultOfClosing(batch, note, ledger, closed);
    case "released":
      return faultOfKind(note, "released", ledger);
    case "rejected":
      return faultOfKind(note, "written off", ledger);
    case "struck":
    case "temperature":
    case "acidity":
    case "seen":
    case "checked":
    case "recoded":
    case "annexed":
      return null;
  }
}

function faultOfWeight(
  { run, notes }: Batch,
  { key, lot, net }: { readonly key: string; readonly lot: string; readonly net: bigint },
  { named, reversalOf }: PostingsByKey,
): NoteFault | null {
  const posting = named.get(key);
  if (posting === undefined) return { key: "key", says: notPosted(key) };
  if (posting.kind !== "weighed")
    return { key: "key", says: `posting ${quoted(key)} is one of ${posting.kind}; a weight is posted as weighed` };
  const { id, moved } = intoBatch(posting, run.id);
  if (id !== lot)
    return {
      key: "lot",
      says: `its posting is of lot ${id === null ? "nothing" : quoted(id)}; write the same in both`,
    };
  if (moved !== net)
    return {
      key: "net",
      says: `its posting moves ${String(moved)} into the batch (µg, or pieces); write the same in both`,
    };
  const strike = notes.find((each) => each.kind === "struck" && each.strikes === key);
  const reversal = reversalOf.get(key);
  if (strike?.key === reversal?.id) return null;
  return strike === undefined
    ? {
        key: "key",
        says: `its posting was taken back by ${quoted(reversal?.id ?? "")}, and no note strikes it; add one`,
      }
    : {
        key: "key",
        says: `note ${quoted(strike.key)} strikes it, and no posting of that id takes it back; add the reversal`,
      };
}

const notPosted = (key: string): string =>
  `nothing is posted under ${quoted(key)}; add the posting, or take the note out`;

/** The one lot that a posting moves into the batch, and how much of it. */
function intoBatch({ entries }: Posted, run: string): { readonly id: string | null; readonly moved: bigint } {
  const own = entries.filter(({ place }) => place.kind === "batch" && place.run === run);
  const [first] = own;
  return first === undefined || own.length > 1 ? { id: null, moved: 0n } : { id: first.lot.id, moved: first.quantity };
}

/** What was filled is what the run was closed with, under the code of the batch. */
function faultOfClosing(
  batch: Batch,
  { key, units }: NoteOf<"closed">,
  { named }: PostingsByKey,
  closed: ClosedRun | undefined,
): NoteFault | null {
  const posting = named.get(key);
  if (posting === undefined) return { key: "key", says: notPosted(key) };
  if (posting.kind !== "made")
    return {
      key: "key",
      says: `posting ${quoted(key)} is one of ${posting.kind}; a batch that is closed is posted as made`,
    };
  if (closed !== undefined && closed.unitsMade !== units)
    return { key: "units", says: `the run was closed with ${String(closed.unitsMade)}; write the same in both` };
  const code = codeOf(batch);
  const isNamed = units === 0n || posting.entries.some(({ lot }) => lot.id === code);
  return isNamed
    ? null
    : { key: "key", says: `its posting makes no lot of the batch’s code ${quoted(code)}; write the same in both` };
}

/** What was judged over the shelf, as could be before, has no posting of its own. */
function faultOfKind({ key }: BenchNote, kind: Posted["kind"], { named }: PostingsByKey): NoteFault | null {
  const posting = named.get(key);
  return posting === undefined || posting.kind === kind
    ? null
    : { key: "key", says: `posting ${quoted(key)} is one of ${posting.kind}; this note is posted as ${kind}` };
}

/** Nothing goes into a batch weight by weight that its record does not say. */
function checkWeighed(batches: readonly Batch[], postings: readonly Posted[], faults: FaultList): void {
  const written = new Set(batches.flatMap(({ notes }) => notes.map(({ key }) => key)));
  postings.forEach(({ id, kind }, at) => {
    if (kind === "weighed" && !written.has(id))
      faults.tell(`postings[${String(at)}].id`, `no batch has a note ${quoted(id)}; add it, or take the posting out`);
  });
}

/** What comes out of a batch that is open must not be there already. @rule BENCH-10 */
function checkCodes(batches: readonly Batch[], { lots, finished }: Workshop, faults: FaultList): void {
  const ids = new Set([...lots, ...finished].map(({ id }) => id));
  batches.forEach((batch, at) => {
    if (stateOf(batch) === "open" && ids.has(codeOf(batch)))
      faults.tell(
        `batches[${String(at)}].code`,
        `a lot has the code ${quoted(codeOf(batch))} already; write another, which nothing has`,
      );
  });
}

/** Each note stands once, names a line of its sheet, and strikes one before it. */
function checkNotes(batches: readonly Batch[], faults: FaultList): void {
  const keys = new Set<string>();
  batches.forEach(({ lines, notes }, at) => {
    notes.forEach((each, index) => {
      const path = `batches[${String(at)}].notes[${String(index)}]`;
      if (keys.has(each.key)) faults.tell(`${path}.key`, `another note has the key ${quoted(each.key)} already`);
      keys.add(each.key);
      if (each.kind === "weighed" && !lines.some(({ key }) => key === each.line))
        faults.tell(`${path}.line`, `the sheet has no line ${quoted(each.line)}`);
      if (each.kind === "struck" && !notes.slice(0, index).some(({ key }) => key === each.strikes))
        faults.tell(`${path}.strikes`, `no note before it has the key ${quoted(each.strikes)}`);
    });
  });
}
