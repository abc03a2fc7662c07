/** Several processes close the same runs of one store at once; then what they were told is held against the ledger. */
import { writeFileSync } from "node:fs";
import type { Posted } from "@/lib/domain/ledger/posting";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { readBooks } from "@/lib/store/books";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { closeStore, openStore } from "@/lib/store/open-store";
import { startChild } from "./child";
import { shop } from "./ledger-shop";
import { run } from "./notation";
import { openBooks } from "./store-desk";

const PROCESSES = 8;
const GRAM = 1_000_000n;

/** What a process was told about one run. */
export interface ClosingTold {
  readonly key: string;
  readonly run: string;
  readonly kind: string;
  /** What it wanted to draw, in µg of oil and in jars. */
  readonly late: number;
  readonly jars: number;
  /** Of what there was too little, and what the refusal said is there. */
  readonly missing: { readonly lot: string; readonly there: number } | null;
}

export interface RunsClosed {
  readonly processes: number;
  readonly asked: number;
  readonly posted: number;
  /** Another process had closed the run. */
  readonly late: number;
  /** Too little was left. */
  readonly short: number;
  /** Runs that nobody could close. */
  readonly open: number;
}

/**
 * Opens books with so many runs, with stock for half of them at most, and lets processes of their own close all of them,
 * each in another order.
 * @throws where a lot was oversold, a posting that was told of is not there once, or a refusal gives a wrong reason
 */
export async function closeRunsAtOnce(store: string, runs: number): Promise<RunsClosed> {
  const { workshop, desk } = shop();
  await openBooks({ workshop: stocked(workshop, runs), desk });
  await closeStore(store);
  const told = await tellings(store, `${store}.go`);
  return await heldToLedger(store, told, runs);
}

function stocked(workshop: Workshop, count: number): Workshop {
  const plenty: Readonly<Record<string, bigint>> = {
    late: 20n * GRAM * BigInt(count),
    jars: BigInt(count) / 2n,
  };
  return {
    ...workshop,
    orders: [],
    lots: workshop.lots.map((lot) => ({ ...lot, remaining: quantity<Stock>(plenty[lot.id] ?? lot.remaining) })),
    runs: Array.from({ length: count }, (_, at) => run(`run ${String(at)}`, "p", "2026-11-24", 10, { sequence: at })),
  };
}

/** Starts the processes, lets them go once all are ready, and hears what they were told. */
async function tellings(store: string, go: string): Promise<readonly ClosingTold[]> {
  let ready = 0;
  const each = Array.from({ length: PROCESSES }, (_, at) => {
    const child = startChild("tests/helpers/run-closer.ts", [`p${String(at)}`, String(at + 1), go], {
      STILLROOM_STORE: store,
    });
    const [out, err]: [string[], string[]] = [[], []];
    child.stderr?.on("data", (text: Buffer) => err.push(text.toString()));
    child.stdout?.on("data", (text: Buffer) => {
      if (out.length === 0 && (ready += 1) === PROCESSES) writeFileSync(go, "");
      out.push(text.toString());
    });
    return new Promise<string>((resolve, reject) => {
      child.once("error", reject);
      child.once("close", (code) => {
        if (code === 0) resolve(out.join(""));
        else {
          // The others wait for this one.
          writeFileSync(go, "");
          reject(new Error(err.join("")));
        }
      });
    });
  });
  const said = (await Promise.all(each)).join("").split("\n");
  return said.filter((line) => line.startsWith("{")).map((line) => JSON.parse(line) as ClosingTold);
}

async function heldToLedger(store: string, told: readonly ClosingTold[], runs: number): Promise<RunsClosed> {
  if (told.length !== PROCESSES * runs) throw new Error(`${String(told.length)} answers came`);
  const by = (kind: string): readonly ClosingTold[] => told.filter((each) => each.kind === kind);
  const [posted, late, short] = [by("posted"), by("already made"), by("not there")];
  if (posted.length + late.length + short.length !== told.length) throw new Error("a refusal of another kind came");
  const { reader } = await openStore(store);
  const there = (await reader.alone(allPostings)).filter(({ kind }) => kind !== "opening");
  sameOnce(there, posted);
  const closed = new Set(posted.map((each) => each.run));
  if (closed.size !== posted.length) throw new Error("a run was closed twice");
  const early = late.find((each) => !closed.has(each.run));
  if (early) throw new Error(`${early.key}: nobody closed it, and it was told so`);
  await heldToLots(posted, short, runs);
  const { disagreements = ["no workshop"] } = (await checkLedger(store)) ?? {};
  if (disagreements.length > 0) throw new Error(disagreements.join("; "));
  const figures = { asked: told.length, posted: posted.length, late: late.length, short: short.length };
  return { processes: PROCESSES, ...figures, open: runs - closed.size };
}

/** Every posting that was told of is there once, with what it asked for; and there is no other. */
function sameOnce(there: readonly Posted[], posted: readonly ClosingTold[]): void {
  const asked = posted.map(({ key, late, jars }) => `${key}: ${String(late)} oil, ${String(jars)} jars`);
  const found = there.map((posting) => {
    const [oil, jars] = ["late", "jars"].map((lot) => leftShelf(posting, lot));
    return `${posting.id}: ${String(oil)} oil, ${String(jars)} jars`;
  });
  if (found.sort().join("\n") !== asked.sort().join("\n")) throw new Error("what is there is not what was told");
}

const leftShelf = ({ entries }: Posted, lot: string): bigint =>
  entries
    .filter((entry) => entry.lot.of === "material" && entry.lot.id === lot && entry.place.kind === "shelf")
    .reduce((sum, entry) => sum - entry.quantity, 0n);

/** What is left is what there was less what was drawn, and was never too much for a form that was refused. */
async function heldToLots(posted: readonly ClosingTold[], short: readonly ClosingTold[], runs: number): Promise<void> {
  const [books, began] = [await readBooks(), stocked(shop().workshop, runs)];
  for (const of of ["late", "jars"] as const) {
    const left = books?.workshop.lots.find(({ id }) => id === of)?.remaining ?? -1n;
    const drawn = posted.reduce((sum, each) => sum + BigInt(each[of]), 0n);
    const first = began.lots.find(({ id }) => id === of)?.remaining ?? 0n;
    if (left < 0n || left !== first - drawn) throw new Error(`${of}: ${String(left)} is left`);
    const wrong = short.find(
      (each) => each.missing?.lot === of && (each[of] <= each.missing.there || BigInt(each.missing.there) < left),
    );
    if (wrong) throw new Error(`${wrong.key} was refused although there was enough: ${JSON.stringify(wrong)}`);
  }
  const silent = short.find(({ missing }) => missing === null || !["late", "jars"].includes(missing.lot));
  if (silent) throw new Error(`${silent.key} was refused without a reason`);
}
