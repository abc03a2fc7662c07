/**
 * `npm run bench`: how long the plan of a large workshop takes beside the bare arithmetic, the checks of a formula,
 * the report command from start to end, the ledger to post and to answer, a basket to be proven, and how long the
 * server takes for a page. Prints and asserts no times: they are the machine's. `npm run bench -- pages` is one of them:
 * plan, checks, report, ledger, baskets, pages.
 * The pages need a build, which is made where there is none.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { dayOf } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { largeWorkshop, REAL_TODAY } from "../helpers/random-workshop";
import { forgetFilledStores, runScript } from "../journeys/server";
import { benchBaskets } from "./basket-bench";
import { benchChecks } from "./checks-bench";
import { benchLedger } from "./ledger-bench";
import { line, medianTime, milliseconds } from "./median-time";
import { benchPages } from "./page-bench";
import { loopInput, projectByLoop } from "./typed-array-loop";

const SIZE = { materials: 400, products: 60, runs: 200, days: 56, seed: 1 };
const WARM_UPS = 5;

const today = dayOf(REAL_TODAY);
if (today === null) throw new Error("the day of the bench is not a day");
const file = largeWorkshop(SIZE);
const text = `${JSON.stringify(file)}\n`;
const reading = readWorkshopFile(new TextEncoder().encode(text), today);
if (reading.kind === "refused") throw new Error(`the invented workshop was refused: ${reading.faults.join("\n")}`);
const { workshop } = reading;
const day = workshop.settings.today ?? today;

function benchPlan(): void {
  const first = milliseconds(() => plan(workshop, day));
  for (let time = 0; time < WARM_UPS; time += 1) plan(workshop, day);
  const warm = medianTime(() => plan(workshop, day));

  const input = loopInput(workshop, day);
  for (let time = 0; time < WARM_UPS; time += 1) projectByLoop(input);
  const loop = medianTime(() => projectByLoop(input));

  console.log(line("plan, first call", first));
  console.log(line("plan, median of five", warm, `${(warm / loop).toFixed(0)} times the loop`));
  console.log(
    line("plain typed-array loop, balances alone, median of five", loop, agreement(workshop, plan(workshop, day))),
  );
}

/** A loop that reckons something else would be no measure: the most that each material is short must be the same. */
function agreement({ materials }: Workshop, { materials: outlooks }: Plan): string {
  const input = loopInput(workshop, day);
  const balances = projectByLoop(input);
  const different = materials.filter((material, row) => {
    const safety = Number(material.safetyStock?.quantity ?? 0n);
    const least = balances.subarray(row * input.days, (row + 1) * input.days).reduce((a, b) => Math.min(a, b), safety);
    return BigInt(safety - least) !== outlooks[row]?.shortBy;
  });
  if (different.length > 0) throw new Error(`loop and plan differ on ${different.map(({ id }) => id).join(", ")}`);
  return "agrees with plan on every material";
}

function benchReport(): void {
  const args = ["--workshop", "seed/demo-workshop.json", "--json"];
  const time = medianTime(() => runScript("report", args, process.env));
  console.log(line("npm run report, demo workshop, start to end", time));
}

async function benchLargePages(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "stillroom-bench-"));
  const path = join(folder, "large.json") as `${string}.json`;
  writeFileSync(path, text);
  try {
    await benchPages(path, workshop.runs);
  } finally {
    forgetFilledStores();
    rmSync(folder, { recursive: true, force: true });
  }
}

console.log(
  `${String(SIZE.materials)} materials, ${String(SIZE.products)} products, ${String(SIZE.runs)} runs, ` +
    `${String(SIZE.days)} days; Node ${process.version}, ${String(cpus().length)} × ${cpus()[0]?.model.trim() ?? "processor"}\n`,
);
const BENCHES: Readonly<Record<string, () => void | Promise<void>>> = {
  plan: benchPlan,
  checks: benchChecks,
  report: benchReport,
  ledger: benchLedger,
  baskets: benchBaskets,
  pages: benchLargePages,
};
const asked = process.argv.slice(2);
for (const [name, bench] of Object.entries(BENCHES)) if (asked.length === 0 || asked.includes(name)) await bench();
