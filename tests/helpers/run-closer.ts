/**
 * A process that closes every planned run of its store, in an order of its own, beside others that do the same:
 * `node … run-closer.ts NAME SEED GO`. It says `ready`, waits until the file GO is there, and tells each answer in a
 * line of JSON. Every form that was posted is sent a second time.
 */
import { existsSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";
import type { Day } from "@/lib/domain/calendar";
import type { Run } from "@/lib/domain/workshop";
import { makePlannedRun } from "@/lib/operations/make-run";
import { StoreUnusable } from "@/lib/store/store-unusable";
import type { ClosingTold } from "./closing-processes";
import { books, making, TODAY } from "./ledger-shop";
import { g } from "./notation";
import { type Dice, diceFrom, pick } from "./random-dice";

const [name = "", seed = "1", go = ""] = process.argv.slice(2);
const GO_EACH_MILLISECONDS = 5;

const dice: Dice = diceFrom(Number(seed));
const { runs } = (await books()).workshop;
process.stdout.write("ready\n");
while (!existsSync(go)) await wait(GO_EACH_MILLISECONDS);

const left = [...runs];
while (left.length > 0) {
  const run = pick(dice, left);
  left.splice(left.indexOf(run), 1);
  await closed(run, TODAY);
}

async function closed(run: Run, day: Day): Promise<void> {
  const key = `${name} ${run.id}`;
  const [oil, jars] = [dice.whole(20, 60), dice.whole(1, 3)];
  const asked = making("r", {
    key,
    run,
    day,
    finishedLot: { id: `F ${key}`, bestBefore: null },
    draws: [
      { lot: "late", quantity: g(String(oil)), spilt: 0n },
      { lot: "jars", quantity: BigInt(jars), spilt: 0n },
    ],
  });
  const first = await answered(asked);
  const missing = first.kind === "not there" ? { lot: first.lot.id, there: Number(first.there) } : null;
  tell({ key, run: run.id, kind: first.kind, late: oil * 1_000_000, jars, missing });
  if (first.kind !== "posted") return;
  const { kind } = await answered(asked);
  if (kind !== "already posted") throw new Error(`${key}, sent again, was ${kind}`);
}

/** A store that another program is writing to is asked again, as a person does who is told so. */
async function answered(asked: Parameters<typeof makePlannedRun>[0]): ReturnType<typeof makePlannedRun> {
  for (;;) {
    try {
      return await makePlannedRun(asked);
    } catch (fault) {
      if (!(fault instanceof StoreUnusable && fault.message.startsWith("Another program is busy"))) throw fault;
    }
  }
}

function tell(told: ClosingTold): void {
  process.stdout.write(`${JSON.stringify(told)}\n`);
}
