/** What runs in the thread: the search by itself, then the solver's proposal, then the search again to prove it. @rule BUY-9 */
import { parentPort, workerData } from "node:worker_threads";
import type { PacksByOffer } from "@/lib/domain/buying/basket-problem";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { type BasketAnswer, countedCost, leastBasket } from "@/lib/domain/buying/least-basket";
import { proposedBasket } from "./proposed-basket";
import type { FromThread, ThreadTask } from "./thread-messages";

/** Steps for the search by itself, which is often enough: a second or two. */
const EFFORT_ALONE = 20_000_000;
/** A share of the time for the solver, the rest for the proof. */
const SOLVERS_SHARE = 1 / 2;
/** The search asks often; news is sent less often. */
const MILLISECONDS_BETWEEN_NEWS = 100;

const { problem, known, seconds, stop } = workerData as ThreadTask;
const stopped = new Int32Array(stop);
const began = performance.now();
let lastNews = began;

send({ kind: "answer", answer: await answered() });

async function answered(): Promise<BasketAnswer> {
  const alone = search(EFFORT_ALONE, known);
  const isOpen = alone.kind === "basket" ? alone.gap !== null : !alone.isProven;
  if (!isOpen || !hasTime()) return alone;
  // The solver cannot be asked to end: whoever stops it is answered with this.
  send({ kind: "so far", answer: alone });
  const total = alone.kind === "basket" ? countedCost(alone.basket) : null;
  const proposed = await proposedBasket(problem, total ?? 0n, seconds * SOLVERS_SHARE);
  const checked = proposed && checkedBasket(problem, proposed);
  const isCheaper = checked?.kind === "holds" && (total === null || countedCost(checked.basket) < total);
  const best = proposed && isCheaper ? proposed : alone.kind === "basket" ? alone.packs : known;
  return search(Number.MAX_SAFE_INTEGER, best);
}

function search(effort: number, toBeat: PacksByOffer): BasketAnswer {
  return leastBasket(problem, {
    effort,
    known: toBeat,
    mayGoOn: (soFar) => {
      const now = performance.now();
      if (now - lastNews > MILLISECONDS_BETWEEN_NEWS) {
        lastNews = now;
        send({ kind: "progress", ...soFar });
      }
      return hasTime();
    },
  });
}

function hasTime(): boolean {
  return Atomics.load(stopped, 0) === 0 && performance.now() - began < seconds * 1000;
}

function send(message: FromThread): void {
  parentPort?.postMessage(message);
}
