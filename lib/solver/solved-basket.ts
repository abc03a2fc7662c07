/** The least-cost basket of any problem: small ones at once, the rest in a thread of their own. @rule BUY-5, BUY-9 */
import path from "node:path";
import { Worker } from "node:worker_threads";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { type BasketAnswer, leastBasket, type Progress } from "@/lib/domain/buying/least-basket";
import type { FromThread, ThreadTask } from "./thread-messages";

/** Steps for a problem that is answered without a thread: some tens of milliseconds. */
const EFFORT_AT_ONCE = 60_000;

/** A thread that has not answered by so long after its time is stopped. */
const GRACE_SECONDS = 5;

export interface SolvingOrders {
  /** Time for what is not answered at once. */
  readonly seconds: number;
  /** Stops the search; what was found so far is the answer. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (soFar: Progress) => void;
}

export interface SolvedBasket {
  readonly answer: BasketAnswer;
  /** Why the answer is not the best that could be had: stopped by the caller, out of time, or a fault of the thread. */
  readonly cutShort: "stopped" | "out of time" | "failed" | null;
}

/**
 * Never throws for what the solver does: where it fails or runs out of time, the best basket that was found at once
 * stands, with what is not proven of it.
 */
export async function solvedBasket(problem: BasketProblem, orders: SolvingOrders): Promise<SolvedBasket> {
  const atOnce = leastBasket(problem, { effort: EFFORT_AT_ONCE });
  const isSettled = atOnce.kind === "basket" ? atOnce.gap === null : atOnce.isProven;
  if (isSettled) return { answer: atOnce, cutShort: null };
  if (orders.signal?.aborted) return { answer: atOnce, cutShort: "stopped" };
  const known = atOnce.kind === "basket" ? atOnce.packs : new Map<string, bigint>();
  const outcome = await inThread({ problem, known, seconds: orders.seconds }, orders);
  if (typeof outcome === "string") return { answer: atOnce, cutShort: outcome };
  const isOpen = outcome.kind === "basket" ? outcome.gap !== null : !outcome.isProven;
  return { answer: outcome, cutShort: isOpen ? "out of time" : null };
}

type Outcome = BasketAnswer | Exclude<SolvedBasket["cutShort"], null>;

function inThread(task: ThreadTask, { signal, onProgress }: SolvingOrders): Promise<Outcome> {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), "lib", "solver", "basket-worker.mjs");
  const worker = new Worker(file, { workerData: task });
  return new Promise<Outcome>((resolve) => {
    const timer = setTimeout(() => end("out of time"), (task.seconds + GRACE_SECONDS) * 1000);
    const stop = () => end("stopped");
    signal?.addEventListener("abort", stop, { once: true });
    function end(outcome: Outcome): void {
      clearTimeout(timer);
      signal?.removeEventListener("abort", stop);
      void worker.terminate();
      resolve(outcome);
    }
    worker.once("error", () => end("failed"));
    worker.once("exit", () => end("failed"));
    worker.on("message", (message: FromThread) => {
      if (message.kind === "answer") end(message.answer);
      else onProgress?.(message);
    });
  });
}
