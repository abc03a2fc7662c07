/** `npm run report`: what a workshop comes to, as one JSON document or as tables. @rule REPORT-1 */
import type { Batch } from "@/lib/domain/bench/batch";
import { inBatchesOf } from "@/lib/domain/bench/in-batches";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { plan, preparedFor } from "@/lib/domain/plan";
import { type Basis, BASES } from "@/lib/domain/plan-figures";
import { realToday } from "@/lib/edge/real-today";
import { reportJson, reportOf, reportTables } from "@/lib/edge/report";
import { chooseBasket } from "@/lib/operations/choose-basket";
import { readArguments } from "./arguments";
import type { Workshop } from "@/lib/domain/workshop";
import { ownStanding } from "./own-workshop";
import { Refusal, runCommand } from "./refusal";
import { throughStoreOfItsOwn } from "./store-of-its-own";
import { workshopIn } from "./workshop-in";

const USAGE = "npm run report -- [--workshop FILE] [--json] [--basis replacement|shelf|average]";

async function report(given: readonly string[]): Promise<string> {
  const takes = { flags: ["--json"], values: ["--workshop", "--basis"], file: false, usage: USAGE };
  const { flags, values } = readArguments(given, takes);
  const basis = basisOf(values.get("--basis"));
  const file = values.get("--workshop");
  const today = realToday();
  const { workshop, batches } = file === undefined ? ofOwn(await ownStanding()) : await ofFile(file, today);
  const day = workshop.settings.today ?? today;
  const planned = plan(workshop, day, preparedFor(workshop, day, inBatchesOf(batches)));
  const made = reportOf(workshop, planned, await chooseBasket(workshop, planned), basis);
  if (made.kind === "out of range") throw new Refusal(made.faults);
  return flags.has("--json") ? reportJson(made.report) : reportTables(made.report, workshop);
}

/** What is reported on: a run whose batch is open asks for what was not weighed yet. @rule BENCH-6 */
interface Reported {
  readonly workshop: Workshop;
  readonly batches: readonly Batch[];
}

const ofOwn = ({ workshop, desk }: Books): Reported => ({ workshop, batches: desk.batches });

async function ofFile(file: string, today: Day): Promise<Reported> {
  const read = workshopIn(file, today);
  return { workshop: await throughStoreOfItsOwn(read), batches: read.past?.batches ?? [] };
}

function basisOf(named: string | undefined): Basis {
  if (named === undefined) return "replacement";
  const basis = BASES.find((one) => one === named);
  if (basis) return basis;
  throw new Refusal([`--basis must be ${BASES.join(", ")}, not ${JSON.stringify(named)}. Write: ${USAGE}`]);
}

await runCommand(report);
