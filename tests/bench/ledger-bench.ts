/**
 * The ledger's times: one run's posting beside raw prepared statements that write the same, and history, valuation and
 * trace of a ledger of a million entries. Printed, not asserted: they are the machine's.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { type Day, daysAfter, isoDate } from "@/lib/domain/calendar";
import { at, batchOf, finishedLot, materialLot, moving, ofMaterials, type Posting } from "@/lib/domain/ledger/posting";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import {
  readCostOfSales,
  readHistoryOfDay,
  readHistoryOfMaterial,
  readRecall,
  readStockOn,
  readStockValue,
  readTraceBack,
  readTraceForward,
} from "@/lib/store/ledger/ledger-answers";
import { post } from "@/lib/store/ledger/posting-rows";
import { closeStore, openStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { inPlainTransaction } from "@/lib/store/transaction";
import { day, formula, lot, material, product } from "../helpers/notation";
import { bareWorkshop } from "../helpers/store-workshop";
import { line, median, medianTimeOf } from "./median-time";

const FIRST = day("2016-01-01");
const DAYS = 3650;
const MATERIALS = 400;
const LOTS = 8000;
const ENTRIES = 1_000_000;
const ENTRIES_A_RUN = 12;
const RUNS = Math.ceil(ENTRIES / ENTRIES_A_RUN);
const AT_ONCE = 2000;
const POSTINGS_COMPARED = 200;
const POSTINGS_A_TURN = 10;

const dayOf = (number: number): Day => daysAfter(FIRST, Math.floor((number * DAYS) / RUNS));

/** Five lots drawn into a batch, and ten units out of it: twelve entries. */
function runPosting(number: number, key = `run ${String(number)}`): Posting {
  const draws = Array.from({ length: 5 }, (_, which) => materialLot(`L${String((number * 5 + which * 131) % LOTS)}`));
  const run = `r${String(number)}`;
  return {
    id: key,
    kind: "made",
    day: dayOf(number),
    reason: null,
    reverses: null,
    entries: [
      ...draws.flatMap((drawn) => moving(drawn, 1000n, ofMaterials(200n), at("shelf"), batchOf(run))),
      ...moving(finishedLot(`F${String(number % 1000)}`), 10n, ofMaterials(1000n), batchOf(run), at("finished")),
    ],
  };
}

function largeLedger(): Workshop {
  const materials = Array.from({ length: MATERIALS }, (_, id) => material(`m${String(id)}`));
  return bareWorkshop("A large ledger", {
    materials,
    formulas: [formula("f", { m0: "100" })],
    products: [product("p", "f")],
    lots: Array.from({ length: LOTS }, (_, id) =>
      lot(`L${String(id)}`, `m${String(id % MATERIALS)}`, "0", "100", {
        received: FIRST,
        remaining: quantity<Stock>(10n ** 9n),
      }),
    ),
    finished: Array.from({ length: 1000 }, (_, id) => ({
      id: `F${String(id)}`,
      product: "p",
      made: FIRST,
      bestBefore: null,
      units: quantity<never>(0n),
    })),
  });
}

async function withStore(work: (file: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "stillroom-ledger-"));
  const file = join(folder, "stillroom.db");
  process.env.STILLROOM_STORE = file;
  try {
    await replaceWorkshop(file, largeLedger());
    await work(file);
  } finally {
    await closeStore(file);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A copy of the store without its triggers, written by prepared statements with the same durability. */
function rawWriter(file: string): (posting: Posting, number: number) => void {
  const source = new Database(file, { readonly: true });
  source.prepare("VACUUM INTO ?").run(`${file}-raw`);
  source.close();
  const raw = new Database(`${file}-raw`);
  raw.pragma("journal_mode = WAL");
  raw.pragma("synchronous = FULL");
  const triggers = raw.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all() as { name: string }[];
  for (const { name } of triggers) raw.exec(`DROP TRIGGER "${name}"`);
  const header = raw.prepare("INSERT INTO postings (sequence, id, kind, day) VALUES (?, ?, ?, ?)");
  const entry = raw.prepare("INSERT INTO entries VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  const balance = raw.prepare(
    `INSERT INTO balances VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET quantity = quantity + excluded.quantity,
       materials = materials + excluded.materials, labour = labour + excluded.labour, overhead = overhead + excluded.overhead`,
  );
  const total = raw.prepare(
    `INSERT INTO day_totals VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET materials = materials + excluded.materials,
       labour = labour + excluded.labour, overhead = overhead + excluded.overhead`,
  );
  const write = raw.transaction((posting: Posting, number: number) => {
    header.run(number, posting.id, posting.kind, isoDate(posting.day));
    posting.entries.forEach(({ lot: of, place, quantity: moved, value }, position) => {
      const cell = [of.of, of.id, place.kind, place.kind === "batch" ? place.run : ""];
      const figures = [moved, value.materials, value.labour, value.overhead].map(Number);
      entry.run(number, position, isoDate(posting.day), ...cell, ...figures);
      balance.run(...cell, ...figures);
      total.run(of.of, place.kind, isoDate(posting.day), ...figures.slice(1));
    });
  });
  return (posting, number) => {
    write.immediate(posting, number);
  };
}

/** Turn and turn about, so that both meet the same disk. */
async function comparePosting(file: string): Promise<void> {
  const raw = rawWriter(file);
  const { writer } = await openStore(file);
  const own = (posting: Posting) => writer.alone((sql) => inPlainTransaction(sql, () => post(sql, [posting])));
  const [ownTimes, rawTimes]: [number[], number[]] = [[], []];
  for (let number = 0; number < POSTINGS_COMPARED; number += POSTINGS_A_TURN) {
    const postings = Array.from({ length: POSTINGS_A_TURN }, (_, which) =>
      runPosting(number + which, `compared ${String(number + which)}`),
    );
    let began = performance.now();
    for (const posting of postings) await own(posting);
    ownTimes.push((performance.now() - began) / POSTINGS_A_TURN);
    began = performance.now();
    postings.forEach((posting, which) => {
      raw(posting, 1_000_000 + number + which);
    });
    rawTimes.push((performance.now() - began) / POSTINGS_A_TURN);
  }
  const rate = (median(rawTimes) / median(ownTimes)) * 100;
  console.log(line("one run's posting (12 entries), raw prepared statements", median(rawTimes)));
  console.log(
    line("the same through the store, with its checks", median(ownTimes), `${rate.toFixed(0)} % of the raw rate`),
  );
}

async function fill(file: string): Promise<void> {
  const { writer } = await openStore(file);
  const began = performance.now();
  for (let first = 0; first < RUNS; first += AT_ONCE) {
    const postings = Array.from({ length: Math.min(AT_ONCE, RUNS - first) }, (_, which) => runPosting(first + which));
    await writer.alone((sql) => inPlainTransaction(sql, () => post(sql, postings)));
  }
  const seconds = (performance.now() - began) / 1000;
  console.log(`${String(RUNS)} runs posted, ${String(RUNS * ENTRIES_A_RUN)} entries, in ${seconds.toFixed(0)} s`);
}

const LAST = daysAfter(FIRST, DAYS - 1);
const MIDDLE = daysAfter(FIRST, Math.floor(DAYS / 2));

const QUESTIONS: readonly { readonly what: string; readonly by: string; readonly ask: () => Promise<unknown> }[] = [
  { what: "history of a material", by: "entries (of, lot, place, run, day)", ask: () => readHistoryOfMaterial("m7") },
  { what: "history of a day", by: "postings (day), day_totals (of, place, day)", ask: () => readHistoryOfDay(MIDDLE) },
  { what: "value of stock on the last day", by: "day_totals (of, place, day)", ask: () => readStockValue(LAST) },
  { what: "value of stock half-way", by: "day_totals (of, place, day)", ask: () => readStockValue(MIDDLE) },
  {
    what: "cost of sales of a year",
    by: "day_totals (of, place, day)",
    ask: () => readCostOfSales(daysAfter(LAST, -365), LAST),
  },
  {
    what: "what stood a month ago, to be counted",
    by: "balances (place), entries (of, lot, place, run, day)",
    ask: () => readStockOn(daysAfter(LAST, -30)),
  },
  { what: "trace of a lot forward", by: "entries (of, lot, …), (run, posting)", ask: () => readTraceForward("L77") },
  { what: "trace of a finished lot back", by: "entries (of, lot, …), (run, posting)", ask: () => readTraceBack("F77") },
  { what: "recall of a lot", by: "entries (of, lot, …), (run, posting)", ask: () => readRecall(materialLot("L77")) },
  { what: "recall of a finished lot", by: "entries (of, lot, …)", ask: () => readRecall(finishedLot("F77")) },
];

/** Prints the times of the ledger. */
export async function benchLedger(): Promise<void> {
  await withStore(async (file) => {
    await comparePosting(file);
    await fill(file);
    for (const { what, by, ask } of QUESTIONS) console.log(line(what, await medianTimeOf(ask), `by ${by}`));
  });
}

if (process.argv[1] === import.meta.filename) await benchLedger();
