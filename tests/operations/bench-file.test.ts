/** A file whose batch says otherwise than its postings is refused, with place and cure. */
import { beforeEach, expect, test } from "vitest";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { startBatch } from "@/lib/operations/start-batch";
import { readBooksWithPast } from "@/lib/store/ledger/past";
import { jars, note, starting, weighAll, write } from "../helpers/bench-shop";
import { shop, TODAY } from "../helpers/ledger-shop";
import { g } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

type Fields = Record<string, unknown>;
interface Saved {
  batches: { code: string; notes: Fields[] }[];
  closedRuns: Fields[];
  runs: Fields[];
  postings: (Fields & { entries: Fields[] })[];
  lots: Fields[];
}

let saved: string;
async function save(): Promise<void> {
  const all = await readBooksWithPast();
  if (all === null) throw new Error("no workshop");
  saved = writeWorkshopFile(all.workshop, all.past);
}

/** Every line that the file is refused with once it was changed; those that only the books themselves tell are left out. */
function faultsAfter(change: (file: Saved) => void): readonly string[] {
  const file = JSON.parse(saved) as Saved;
  change(file);
  const read = readWorkshopFile(new TextEncoder().encode(JSON.stringify(file)), TODAY);
  return read.kind === "refused"
    ? read.faults.filter((line) => line.startsWith("batches") || /^postings\[/.test(line))
    : [];
}

const noteIn = (file: Saved, key: string): Fields => {
  const found = file.batches[0]?.notes.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no note ${key}`);
  return found;
};
const postingIn = (file: Saved, id: string) => {
  const found = file.postings.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no posting ${id}`);
  return found;
};

/** Notes 0 to 6: a weight, its strike, two weights, an addition, closed and held, released. */
beforeEach(async () => {
  await openBooks(shop());
  await startBatch(starting());
  await write(note("weighed", "wrong", { net: g("600"), more: true }));
  await write(note("struck", "strike", { strikes: "wrong" }));
  await weighAll();
  await write(note("added", "more"));
  await write(note("closed", "c", { held: true }), [], jars);
  await write(note("released", "ok"));
  await save();
});

test("[FILE-5] as it was saved it is read", () => {
  expect(faultsAfter(() => undefined)).toEqual([]);
});

test.each([
  {
    says: "a weight of another mass",
    change: (file: Saved) => (noteIn(file, "w").net = 500_000_000),
    faults: [
      "batches[0].notes[2].net: its posting moves 600000000 into the batch (µg, or pieces); write the same in both",
    ],
  },
  {
    says: "a weight from another lot",
    change: (file: Saved) => (noteIn(file, "w").lot = "late"),
    faults: ['batches[0].notes[2].lot: its posting is of lot "soon"; write the same in both'],
  },
  {
    says: "an addition of another mass",
    change: (file: Saved) => (noteIn(file, "more").net = 1),
    faults: [
      "batches[0].notes[4].net: its posting moves 5000000 into the batch (µg, or pieces); write the same in both",
    ],
  },
  {
    says: "a weight that nothing is posted of",
    change: (file: Saved) => (noteIn(file, "w").key = "gone"),
    faults: [
      'batches[0].notes[2].key: nothing is posted under "gone"; add the posting, or take the note out',
      'postings[5].id: no batch has a note "w"; add it, or take the posting out',
    ],
  },
  {
    says: "a weight under a posting of another kind",
    change: (file: Saved) => {
      noteIn(file, "c").key = "w";
      noteIn(file, "w").key = "c";
    },
    faults: [
      'batches[0].notes[2].key: posting "c" is one of made; a weight is posted as weighed',
      'batches[0].notes[5].key: posting "w" is one of weighed; a batch that is closed is posted as made',
    ],
  },
  {
    says: "a weight that is struck and not taken back",
    change: (file: Saved) => (noteIn(file, "strike").strikes = "w"),
    faults: [
      'batches[0].notes[1].strikes: no note before it has the key "w"',
      'batches[0].notes[0].key: its posting was taken back by "strike", and no note strikes it; add one',
      'batches[0].notes[2].key: note "strike" strikes it, and no posting of that id takes it back; add the reversal',
    ],
  },
  {
    says: "a weight that is taken back and not struck",
    change: (file: Saved) => file.batches[0]?.notes.splice(1, 1),
    faults: ['batches[0].notes[0].key: its posting was taken back by "strike", and no note strikes it; add one'],
  },
  {
    says: "other units than the run was closed with",
    change: (file: Saved) => (noteIn(file, "c").units = 9),
    faults: ["batches[0].notes[5].units: the run was closed with 10; write the same in both"],
  },
  {
    says: "a lot under another code",
    change: (file: Saved) => file.batches.forEach((batch) => (batch.code = "B-7")),
    faults: ['batches[0].notes[5].key: its posting makes no lot of the batch’s code "B-7"; write the same in both'],
  },
  {
    says: "a release that is posted as something else",
    change: (file: Saved) => (postingIn(file, "ok").kind = "held"),
    faults: ['batches[0].notes[6].key: posting "ok" is one of held; this note is posted as released'],
  },
  {
    says: "a closed batch of a run that is planned",
    change: (file: Saved) => {
      file.runs.push({ id: "r", product: "p", date: "2026-11-24", units: 10 });
      file.closedRuns = [];
    },
    faults: ["batches[0].id: an open batch is of a planned run, a closed one of a run that is closed"],
  },
])("[BENCH-5] [FILE-2] $says", ({ change, faults }) => {
  expect(faultsAfter(change)).toEqual(faults);
});

test("[BENCH-10] an open batch whose code a lot has is refused", async () => {
  await openBooks(shop());
  await startBatch(starting());
  await save();
  expect(faultsAfter((file) => file.batches.forEach((batch) => (batch.code = "late")))).toEqual([
    'batches[0].code: a lot has the code "late" already; write another, which nothing has',
  ]);
});
