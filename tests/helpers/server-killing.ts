/** Kills the running app, again and again, while several clients post through its forms; then looks at what it left. */
import { finishedLot, lotKey, type Posted } from "@/lib/domain/ledger/posting";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { MicroUnits } from "@/lib/domain/money";
import type { Run } from "@/lib/domain/workshop";
import { readBooks } from "@/lib/store/books";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { closeStore, openStore } from "@/lib/store/open-store";
import { type RunningApp, serveToKill } from "../journeys/server";
import { shop, TODAY, units } from "./ledger-shop";
import { run } from "./notation";
import type { Dice } from "./random-dice";
import { keepBooks, openBooks } from "./store-desk";
import { soundness } from "./store-soundness";
import { type Answer, anyForm, formsOf, selling, type Sent, sendOnce, SOLD_OF } from "./server-posting";

const CLIENTS = 8;
const RUNS_AT_ONCE = 6;
const LONGEST_MILLISECONDS = 3000;
const SENT_AGAIN = 5;
/** Fewer jars than the runs of all rounds ask for: the last ones must be refused. */
const JARS_A_ROUND = 4n;

/** What was sent in all rounds, by key. */
interface Told {
  readonly sent: Map<string, Sent>;
  readonly acknowledged: Set<string>;
  readonly refused: Set<string>;
  readonly unanswered: Sent[];
}

export interface ServerKilled {
  readonly kills: number;
  readonly acknowledged: number;
  readonly refused: number;
  /** Forms that a kill left without an answer: those that had been posted all the same, and all of them. */
  readonly postedUntold: number;
  readonly unanswered: number;
}

/**
 * Starts the server on one store, lets clients post, kills it at a random instant and looks; so many times. What was
 * left without an answer is sent again to the next server, and every round one form is sent five times at once.
 * @throws where an acknowledged posting is gone or there twice, a refused one is there, one is half there, or file or
 *         books are not sound
 */
export async function killServerAgainAndAgain(store: string, kills: number, dice: Dice): Promise<ServerKilled> {
  await openBooks(stocked(kills));
  const told: Told = { sent: new Map(), acknowledged: new Set(), refused: new Set(), unanswered: [] };
  let [unanswered, postedUntold] = [0, 0];
  for (let round = 1; round <= kills; round += 1) {
    await killedOnce(store, round, told, dice);
    const there = await inspected(store, told);
    unanswered += told.unanswered.length;
    postedUntold += told.unanswered.filter(({ key }) => there.has(key)).length;
  }
  // One last server, that nobody kills before it has answered.
  const app = await started(store);
  await sendAgain(app.url, told);
  await app.stop();
  await inspected(store, told);
  return { kills, acknowledged: told.acknowledged.size, refused: told.refused.size, postedUntold, unanswered };
}

/** The shop, with much to sell and hold of, and with too few jars. */
function stocked(kills: number) {
  const { workshop, desk } = shop();
  const rounds = BigInt(kills);
  const lots = workshop.lots.map((lot) => {
    if (lot.id === "jars") return { ...lot, remaining: quantity<Stock>(JARS_A_ROUND * rounds) };
    return lot.id === "late"
      ? { ...lot, remaining: quantity<Stock>(lot.remaining * rounds), value: quantity<MicroUnits>(lot.value * rounds) }
      : lot;
  });
  const finished = [{ id: SOLD_OF, product: "p", made: TODAY, bestBefore: null, units: units(1000 * kills) }];
  return { workshop: { ...workshop, orders: [], runs: [], lots, finished }, desk };
}

async function killedOnce(store: string, round: number, told: Told, dice: Dice): Promise<void> {
  const runs = await plannedAnew(round);
  const app = await started(store);
  try {
    await sendAgain(app.url, told);
    const forms = await formsOf(app.url, runs[0]?.id ?? "");
    const same = selling(forms.sell);
    await Promise.all(
      Array.from({ length: SENT_AGAIN }, async () => {
        if ((await sending(app.url, same, told)) !== "posted") throw new Error("the same form was refused");
      }),
    );
    const clients = Array.from({ length: CLIENTS }, async () => {
      for (let answer: Answer = "posted"; answer !== "no answer";)
        answer = await sending(
          app.url,
          anyForm(
            forms,
            runs.map(({ id }) => id),
            dice,
          ),
          told,
        );
    });
    await Promise.all([...clients, killedAfter(app, dice.whole(0, LONGEST_MILLISECONDS))]);
  } finally {
    await app.stop();
  }
}

const killedAfter = async (app: RunningApp, milliseconds: number): Promise<void> => {
  await new Promise((wake) => setTimeout(wake, milliseconds));
  await app.stop();
};

/** The store is the server's alone while it runs. */
async function started(store: string): Promise<RunningApp> {
  await closeStore(store);
  return await serveToKill(store);
}

/** Runs that are planned when the server starts; those that the last round left are planned no more. */
async function plannedAnew(round: number): Promise<readonly Run[]> {
  const books = await readBooks();
  if (!books) throw new Error("the store holds no workshop");
  const runs = Array.from({ length: RUNS_AT_ONCE }, (_, at) =>
    run(`r${String(round)}.${String(at)}`, "p", "2026-11-26", 10, { sequence: at }),
  );
  await keepBooks({ ...books, workshop: { ...books.workshop, runs } });
  return runs;
}

async function sending(url: string, form: Sent, told: Told): Promise<Answer> {
  told.sent.set(form.key, form);
  const answer = await sendOnce(url, form);
  if (answer === "posted") told.acknowledged.add(form.key);
  if (answer === "refused") told.refused.add(form.key);
  if (answer === "no answer") told.unanswered.push(form);
  return answer;
}

/** What had no answer, as a browser sends it that loads the page again. */
async function sendAgain(url: string, told: Told): Promise<void> {
  for (const form of told.unanswered.splice(0)) {
    if ((await sending(url, form, told)) === "no answer") throw new Error("a server that nobody killed did not answer");
  }
}

/** @returns the keys of what is there beside the postings that opened the books */
async function inspected(store: string, told: Told): Promise<ReadonlySet<string>> {
  const sound = soundness(store);
  if (sound.join() !== "ok") throw new Error(`the store is not sound: ${sound.join("; ")}`);
  const { reader } = await openStore(store);
  const postings = (await reader.alone(allPostings)).filter(({ kind }) => kind !== "opening");
  const keys = new Set(postings.map(({ id }) => id));
  const lost = [...told.acknowledged].filter((key) => !keys.has(key));
  if (lost.length > 0) throw new Error(`acknowledged and lost: ${lost.join(", ")}`);
  const denied = [...told.refused].filter((key) => keys.has(key));
  if (denied.length > 0) throw new Error(`refused and there all the same: ${denied.join(", ")}`);
  const strange = [...keys].filter((key) => !told.sent.has(key));
  if (strange.length > 0) throw new Error(`there and never sent: ${strange.join(", ")}`);
  heldToForms(postings, told);
  const { disagreements = [] } = (await checkLedger(store)) ?? {};
  if (disagreements.length > 0) throw new Error(disagreements.join("; "));
  return keys;
}

/** Everything of a place came there by a form, each counted once: no posting is there twice or in part. */
function heldToForms(postings: readonly Posted[], { sent }: Told): void {
  const [expected, found] = [new Map<string, bigint>(), new Map<string, bigint>()];
  const add = (to: Map<string, bigint>, name: string, moved: bigint) => to.set(name, (to.get(name) ?? 0n) + moved);
  for (const { id, entries } of postings) {
    const effect = sent.get(id)?.effect;
    if (effect) add(expected, `${lotKey(effect.lot)} ${effect.place}`, effect.quantity);
    for (const { lot, place, quantity: moved } of entries) add(found, `${lotKey(lot)} ${place.kind}`, moved);
  }
  for (const [name, moved] of expected) {
    const there = found.get(name) ?? 0n;
    if (there !== moved) throw new Error(`${name}: ${there.toString()} there, ${moved.toString()} by the forms`);
  }
  const sold = `${lotKey(finishedLot(SOLD_OF))} sold`;
  if ((expected.get(sold) ?? 0n) === 0n) throw new Error("nothing was sold; the clients did nothing");
}
