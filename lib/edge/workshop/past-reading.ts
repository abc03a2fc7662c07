/** The lists that version 2 of a workshop file adds: what was made, what was struck off and all that was posted. @rule LEDGER-24 */
import type { ClosedRun } from "@/lib/domain/desk";
import { auditor } from "@/lib/domain/ledger/audit";
import { statedIn } from "@/lib/domain/ledger/opening";
import type { Past, StruckOffLot } from "@/lib/domain/ledger/past";
import {
  type Entry,
  homeOf,
  type LotName,
  lotKey,
  type Moved,
  type Place,
  PLACES,
  type Posted,
  POSTING_KINDS,
} from "@/lib/domain/ledger/posting";
import type { LotRecord } from "@/lib/domain/ledger/refusal";
import { latest, movesOf, standingAfter } from "@/lib/domain/ledger/standing";
import type { MicroUnits } from "@/lib/domain/money";
import { LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, id, note, oneOf, orElse, reference, sequence, units, wholeNumber } from "@/lib/edge/fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, indexById, readEntries, records, referredTo } from "@/lib/edge/record-reading";
import { checkBatches } from "./bench-checks";
import { readBatches } from "./bench-reading";
import { type BookIndexes, readTrials, readVersions, readVersionsUsed } from "./formula-history";
import type { ProductIndex } from "./products";
import { checkReceipts, readReceipts } from "./receipts-reading";

const LARGEST = Number(LARGEST_FIGURE);
const figure = orElse(wholeNumber(-LARGEST, LARGEST), 0);
const KINDS_OF_LOT = ["material", "finished"] as const;

const CLOSED_RUN = {
  id,
  product: reference("product"),
  date: day,
  sequence: orElse(sequence, 0),
  units: units(1),
  madeOn: day,
  unitsMade: units(0),
  versions: orElse(records, []),
};
const STRUCK_OFF = { of: oneOf(KINDS_OF_LOT), id, item: orElse(id, null), since: day, expires: orElse(day, null) };
const POSTING = {
  id: note(300),
  kind: oneOf(POSTING_KINDS),
  day,
  reason: orElse(note(1000), null),
  reverses: orElse(note(300), null),
  entries: records,
};
const ENTRY = {
  of: oneOf(KINDS_OF_LOT),
  lot: id,
  place: oneOf(PLACES),
  run: orElse(id, null),
  quantity: figure,
  materials: figure,
  labour: figure,
  overhead: figure,
};

/** The keys of the past in the document (versions.ts says since when). */
export const PAST_KEYS = {
  closedRuns: records,
  struckOff: records,
  postings: records,
  receipts: orElse(records, []),
  formulaVersions: orElse(records, []),
  trials: orElse(records, []),
  batches: orElse(records, []),
};
/** Those that a file which calls itself version 2 must have. */
export const PAST_LISTS = ["closedRuns", "struckOff", "postings"] as const;

export interface PastLists {
  readonly closedRuns: readonly Json[] | undefined;
  readonly struckOff: readonly Json[] | undefined;
  readonly postings: readonly Json[] | undefined;
  readonly receipts: readonly Json[] | undefined;
  readonly formulaVersions: readonly Json[] | undefined;
  readonly trials: readonly Json[] | undefined;
  readonly batches: readonly Json[] | undefined;
}

/** The lists of the workshop that the past refers to. */
export interface PastIndexes extends BookIndexes {
  readonly products: ProductIndex;
}

/** The past in its lists, each record by itself. */
export function readPast(lists: PastLists, indexes: PastIndexes, faults: FaultList): Past {
  const closed = readEntries(lists.closedRuns, CLOSED_RUN, "closedRuns", faults);
  indexById(lists.closedRuns, closed, faults);
  const closedRuns = closed.flatMap(({ path, fields }): readonly ClosedRun[] => {
    referredTo(indexes.products, "product", fields.product, `${path}.product`, faults);
    const read = complete(fields);
    if (!read) return [];
    const { madeOn, unitsMade, versions: used, ...run } = read;
    return [{ run, madeOn, unitsMade, versions: readVersionsUsed(used, `${path}.versions`, indexes, faults) }];
  });
  const struckOff = readEntries(lists.struckOff, STRUCK_OFF, "struckOff", faults).flatMap(
    ({ fields }): readonly StruckOffLot[] => {
      const read = complete(fields);
      return read
        ? [{ lot: { of: read.of, id: read.id }, item: read.item, since: read.since, expires: read.expires }]
        : [];
    },
  );
  const postings = readEntries(lists.postings, POSTING, "postings", faults).flatMap(
    ({ path, fields }, at): readonly Posted[] => {
      const read = complete(fields);
      if (!read) return [];
      const entries = readEntries(read.entries, ENTRY, `${path}.entries`, faults).flatMap((entry) =>
        entryOf(entry, faults),
      );
      return [{ ...read, sequence: at + 1, entries }];
    },
  );
  return {
    closedRuns,
    struckOff,
    postings,
    receipts: readReceipts(lists.receipts, faults),
    versions: readVersions(lists.formulaVersions, indexes, faults),
    trials: readTrials(lists.trials, indexes, faults),
    batches: readBatches(lists.batches, indexes, faults),
  };
}

function entryOf(
  { path, fields }: ReturnType<typeof readEntries<typeof ENTRY>>[number],
  faults: FaultList,
): readonly Entry[] {
  const read = complete(fields);
  if (!read) return [];
  if ((read.place === "batch") !== (read.run !== null)) {
    faults.tell(`${path}.run`, "a batch names its run, and no other place does");
    return [];
  }
  const place: Place = read.place === "batch" ? { kind: "batch", run: read.run ?? "" } : { kind: read.place };
  const value = {
    materials: quantity<MicroUnits>(BigInt(read.materials)),
    labour: quantity<MicroUnits>(BigInt(read.labour)),
    overhead: quantity<MicroUnits>(BigInt(read.overhead)),
  };
  return [{ lot: { of: read.of, id: read.lot }, place, quantity: quantity<Moved>(BigInt(read.quantity)), value }];
}

/** The past against the workshop that it led to: the books are clean, and come to what the lists say is there. */
export function checkPast(workshop: Workshop, past: Past, faults: FaultList): void {
  const recordOf = recordsOf(workshop, past, faults);
  const audit = auditor((lot) => recordOf.get(lotKey(lot)) ?? null);
  past.postings.forEach(audit.take);
  const standing = standingAfter(movesOf(past.postings));
  const { disagreements } = audit.finish(
    null,
    past.closedRuns.map(({ run }) => run.id),
  );
  for (const fault of disagreements) faults.tell("postings", fault);
  checkReceipts(past.receipts, past.postings, faults);
  checkTrials(past, faults);
  const planned = new Set(workshop.runs.map((run) => run.id));
  checkBatches(past.batches, past, workshop, faults);
  past.closedRuns.forEach(({ run }, at) => {
    if (planned.has(run.id))
      faults.tell(`closedRuns[${String(at)}].id`, "the run stands among those to be made as well");
  });
  const at = { material: 0, finished: 0 };
  for (const { lot, quantity: there, value } of statedIn(workshop)) {
    const path = lot.of === "material" ? `lots[${String(at.material++)}]` : `finished[${String(at.finished++)}]`;
    const posted = latest(standing, lot, homeOf(lot));
    // Of a lot that a run made labour and overhead stand in the postings alone.
    if (posted.quantity !== there || (value !== null && posted.value.materials !== value.materials)) {
      faults.tell(
        path,
        `the postings come to ${posted.quantity.toString()} worth ${posted.value.materials.toString()} of it`,
      );
    }
  }
}

/** Each trial's posting is among those of the file, took something off the shelf, and is that of one trial. @rule TRIAL-2 */
function checkTrials({ trials, postings }: Past, faults: FaultList): void {
  const postingOf = new Map(postings.map((posting) => [posting.id, posting]));
  const trialOf = new Map<string, string>();
  trials.forEach(({ id: trial, posting }, at) => {
    if (posting === null) return;
    const [path, kind] = [`trials[${String(at)}].posting`, postingOf.get(posting)?.kind];
    const other = trialOf.get(posting);
    if (kind === undefined)
      faults.tell(path, `no posting ${JSON.stringify(posting)}; correct it, or leave it out where nothing was taken`);
    else if (kind !== "written off")
      faults.tell(path, `posting ${JSON.stringify(posting)} is one of ${kind}; a trial is written off the shelf`);
    if (other !== undefined) faults.tell(path, `is the posting of trial ${JSON.stringify(other)} already`);
    trialOf.set(posting, trial);
  });
}

function recordsOf(workshop: Workshop, past: Past, faults: FaultList): ReadonlyMap<string, LotRecord> {
  const recordByLot = new Map<string, LotRecord>(
    statedIn(workshop).map(({ lot, since, item }) => [lotKey(lot), { since, expires: null, item }]),
  );
  past.struckOff.forEach(({ lot, since, expires, item }, at) => {
    if (recordByLot.has(lotKey(lot))) faults.tell(`struckOff[${String(at)}].id`, named(lot));
    recordByLot.set(lotKey(lot), { since, expires, item: item ?? "" });
  });
  return recordByLot;
}

const named = ({ id: repeated }: LotName): string =>
  `repeated id ${JSON.stringify(repeated)}; another lot has it already`;
