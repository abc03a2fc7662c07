/**
 * `npm run soak -- postings 10000`: so many random postings, forbidden ones among them, each held to a naive model.
 * `npm run soak -- kills 200`: kills the running app while clients post through its forms, so many times, and looks at
 * what it left.
 * `npm run soak -- closings 200`: eight processes close so many runs at once, for which there is too little stock.
 * `npm run soak -- syncs 40`: has strace watch a process that posts, and counts how often the store's log is brought to
 * the disk before each acknowledgement.
 * `npm run soak -- weighing 50`: two devices weigh one batch while the network is cut and the app is killed so many times.
 * The last line has the figures; exit status 1 where something did not hold, 2 where there is no strace to count with.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { wholeValue } from "@/lib/domain/ledger/posting";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { closeStore } from "@/lib/store/open-store";
import { closeRunsAtOnce } from "../helpers/closing-processes";
import { shop } from "../helpers/ledger-shop";
import { ledgerSoak } from "../helpers/ledger-soak";
import { openBooks } from "../helpers/store-desk";
import { diceFrom } from "../helpers/random-dice";
import { killServerAgainAndAgain } from "../helpers/server-killing";
import { countSyncs } from "../helpers/syncs-counted";
import { cutWeighing } from "../helpers/weighing-cut";
import bringBuildUpToDate from "../journeys/built";

const SEED = 1;
const REPORT_EVERY = 1000;
const NOTHING_TO_COUNT_WITH = 2;

async function postings(count: number, store: string): Promise<string> {
  const soak = ledgerSoak(diceFrom(SEED), "soak");
  const began = performance.now();
  for (let told = 0; soak.posted() < count;) {
    await soak.step();
    if (soak.posted() < told + REPORT_EVERY) continue;
    told = soak.posted();
    const own = (process.cpuUsage().user / 1_000_000).toFixed(0);
    console.log(
      `${String(told)} postings, ${((performance.now() - began) / 1000).toFixed(0)} s, ${own} s of the processor`,
    );
  }
  const steps = [...soak.counts.values()].reduce((sum, each) => sum + each, 0);
  for (const [what, often] of [...soak.counts].sort()) console.log(`  ${what.padEnd(40)}${String(often).padStart(7)}`);
  return `${String(soak.posted())} postings of ${String(steps)} asked for, seed ${String(SEED)}; ${await clean(store)}`;
}

async function kills(count: number, store: string): Promise<string> {
  bringBuildUpToDate();
  const killed = await killServerAgainAndAgain(store, count, diceFrom(SEED));
  const told = `${String(killed.acknowledged)} postings acknowledged, each there once, ${String(killed.refused)} forms refused`;
  const untold = `${String(killed.unanswered)} left without an answer, ${String(killed.postedUntold)} of them posted, all sent again`;
  return `${String(count)} kills of the server, ${told}; ${untold}; ${await clean(store)}`;
}

async function closings(count: number, store: string): Promise<string> {
  const { processes, asked, posted, late, short, open } = await closeRunsAtOnce(store, count);
  const told = `${String(posted)} posted, each there once, ${String(late)} told that another closed the run, ${String(short)} that too little is left`;
  return `${String(processes)} processes asked ${String(asked)} times to close ${String(count)} runs: ${told}; ${String(open)} runs left open, nothing oversold; ${await clean(store)}`;
}

async function syncs(count: number, store: string): Promise<string> {
  await closeStore(store);
  const counted = countSyncs(store, count);
  if (counted.kind === "cannot count") {
    process.exitCode = NOTHING_TO_COUNT_WITH;
    return `nothing was counted: strace, which counts, does not run here (${counted.reason})`;
  }
  const all = counted.syncs.reduce((sum, each) => sum + each, 0);
  const more = counted.syncs.filter((each) => each > 1).length;
  const each = `one before each acknowledgement and after all that it wrote, and more before ${String(more)}, where the log begins anew`;
  return `${String(count)} postings acknowledged, ${String(all)} syncs of the log to disk: ${each}; ${await clean(store)}`;
}

async function clean(store: string): Promise<string> {
  const checked = await checkLedger(store);
  if (!checked) throw new Error("the store holds no workshop");
  if (checked.disagreements.length > 0) throw new Error(checked.disagreements.join("\n"));
  const { postings: posted, entries, value } = checked;
  return `${String(posted)} postings and ${String(entries)} entries checked, stock worth ${wholeValue(value.total).toString()} micro-units, 0 disagreements`;
}

async function weighing(count: number, store: string): Promise<string> {
  bringBuildUpToDate();
  const { kills: killed, cuts, written, posted } = await cutWeighing(store, count, diceFrom(SEED));
  const told = `${String(written)} notes of two devices written down, each there once, ${String(posted)} of them posted`;
  return `${String(killed)} kills of the server and ${String(cuts)} cuts of the network while weighing: ${told}; ${await clean(store)}`;
}

const SOAKS = { postings, kills, closings, syncs, weighing };

async function run(what: string | undefined, times: string | undefined): Promise<string> {
  const soak = Object.entries(SOAKS).find(([name]) => name === what)?.[1];
  const count = Number(times);
  if (!soak || !Number.isInteger(count) || count < 1) {
    throw new Error(
      "Write: npm run soak -- postings 10000, or: kills 200, or: closings 200, or: syncs 40, or: weighing 50",
    );
  }
  const folder = mkdtempSync(join(tmpdir(), "stillroom-soak-"));
  const store = join(folder, "stillroom.db");
  process.env.STILLROOM_STORE = store;
  try {
    await openBooks(shop());
    return await soak(count, store);
  } finally {
    await closeStore(store);
    rmSync(folder, { recursive: true, force: true });
  }
}

run(process.argv[2], process.argv[3]).then(console.log, (fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : String(fault));
  process.exitCode = 1;
});
