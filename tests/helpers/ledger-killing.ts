/** Kills a process that posts, again and again, and looks at what it left. */
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { closeStore, openStore } from "@/lib/store/open-store";
import { startChild } from "./child";
import type { Dice } from "./random-dice";
import { soundness } from "./store-soundness";

export interface Killed {
  readonly kills: number;
  /** Told of before a kill. */
  readonly acknowledged: number;
  /** There although nobody was told: the kill came between. */
  readonly untold: number;
}

const CLIENTS = 4;
const LONGEST_MILLISECONDS = 400;

/**
 * Starts a writer, lets it post, kills it at a random instant, opens the store and looks; so many times, in one store.
 * @throws where a posting that was acknowledged is gone, or the books or the file are not sound
 */
export async function killAgainAndAgain(store: string, kills: number, dice: Dice): Promise<Killed> {
  const told = new Set<string>();
  let there = 0;
  for (let round = 1; round <= kills; round += 1) {
    for (const key of await killedOnce(store, round, dice.whole(0, LONGEST_MILLISECONDS))) told.add(key);
    there = await inspected(store, told);
  }
  return { kills, acknowledged: told.size, untold: there - told.size };
}

/** @returns the keys that it told of */
function killedOnce(store: string, round: number, milliseconds: number): Promise<readonly string[]> {
  const writer = ["tests/helpers/ledger-writer.ts", [`k${String(round)}`, String(round), String(CLIENTS)]] as const;
  const child = startChild(...writer, { STILLROOM_STORE: store });
  let told = "";
  return new Promise((resolve, reject) => {
    child.stderr?.on("data", (text: Buffer) => {
      reject(new Error(text.toString()));
    });
    child.stdout?.on("data", (text: Buffer) => {
      if (told === "") setTimeout(() => child.kill("SIGKILL"), milliseconds);
      told += text.toString();
    });
    child.once("close", () => {
      // A last line that is cut short was not told.
      resolve(told.split("\n").slice(0, -1));
    });
  });
}

/** @returns how many postings are there beside those that opened the books */
async function inspected(store: string, told: ReadonlySet<string>): Promise<number> {
  const sound = soundness(store);
  if (sound.join() !== "ok") throw new Error(`the store is not sound: ${sound.join("; ")}`);
  const { reader } = await openStore(store);
  const postings = (await reader.alone(allPostings)).filter(({ kind }) => kind !== "opening");
  const keys = new Set(postings.map(({ id }) => id));
  const lost = [...told].filter((key) => !keys.has(key));
  if (lost.length > 0) throw new Error(`acknowledged and lost: ${lost.join(", ")}`);
  const { disagreements = [] } = (await checkLedger(store)) ?? {};
  if (disagreements.length > 0) throw new Error(disagreements.join("; "));
  await closeStore(store);
  return postings.length;
}
