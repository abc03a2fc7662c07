/** The least-cost basket of any problem: small ones at once, the rest in a thread of their own. @rule BUY-5, BUY-9 */
import path from "node:path";
import { Worker } from "node:worker_threads";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { type BasketAnswer, isSearchable, leastBasket } from "@/lib/domain/buying/least-basket";
import type { Progress } from "@/lib/domain/buying/least-of-parts";
import type { FromThread, ThreadTask } from "./thread-messages";

/** Steps for a problem that is answered without a thread: some tens of milliseconds. */
const EFFORT_AT_ONCE = 60_000;

/** A thread that has not answered by so long after its time is stopped. */
const GRACE_SECONDS = 5;

/** A search that is stopped has so long to answer with the best it has. */
const STOP_SECONDS = 1;

export interface SolvingOrders {
  /** Time for what is not answered at once. */
  readonly seconds: number;
  /** Stops the search; the best that was found so far is the answer, with its gap. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (soFar: Progress) => void;
  /** What was found at once, where the search goes on in a thread. */
  readonly onFirst?: (answer: BasketAnswer) => void;
}

export interface SolvedBasket {
  readonly answer: BasketAnswer;
  /**
   * Why the answer is not the best that could be had: stopped by the caller, out of time, a fault of the thread, or
   * figures that are too large to be searched exactly.
   */
  readonly cutShort: "stopped" | "out of time" | "failed" | "too large" | null;
}

/**
 * Never throws for what the solver does: where it fails or runs out of time, the best basket that was found at once
 * stands, with what is not proven of it.
 */
export async function solvedBasket(problem: BasketProblem, orders: SolvingOrders): Promise<SolvedBasket> {
  const atOnce = leastBasket(problem, { effort: EFFORT_AT_ONCE });
  const isSettled = atOnce.kind === "basket" ? atOnce.gap === null : atOnce.isProven;
  if (isSettled) return { answer: atOnce, cutShort: null };
  if (!isSearchable(problem)) return { answer: atOnce, cutShort: "too large" };
  if (orders.signal?.aborted) return { answer: atOnce, cutShort: "stopped" };
  orders.onFirst?.(atOnce);
  const known = atOnce.kind === "basket" ? atOnce.packs : new Map<string, bigint>();
  const stop = new SharedArrayBuffer(4);
  const outcome = await inThread({ problem, known, seconds: orders.seconds, stop }, atOnce, orders);
  const { answer, end } = outcome;
  const isOpen = answer.kind === "basket" ? answer.gap !== null : !answer.isProven;
  if (end === "answered") {
    return { answer, cutShort: isOpen ? (orders.signal?.aborted ? "stopped" : "out of time") : null };
  }
  return { answer, cutShort: isOpen ? end : null };
}

interface Outcome {
  readonly answer: BasketAnswer;
  readonly end: "answered" | Exclude<SolvedBasket["cutShort"], null>;
}

function inThread(task: ThreadTask, atOnce: BasketAnswer, { signal, onProgress }: SolvingOrders): Promise<Outcome> {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), "lib", "solver", "basket-worker.mjs");
  const worker = new Worker(file, { workerData: task });
  return new Promise<Outcome>((resolve) => {
    let soFar = atOnce;
    let timer = setTimeout(() => end("out of time"), (task.seconds + GRACE_SECONDS) * 1000);
    // The search ends with the best it has; the solver does not hear, and is ended.
    const stop = () => {
      Atomics.store(new Int32Array(task.stop), 0, 1);
      clearTimeout(timer);
      timer = setTimeout(() => end("stopped"), STOP_SECONDS * 1000);
    };
    signal?.addEventListener("abort", stop, { once: true });
    function end(how: Outcome["end"], answer: BasketAnswer = soFar): void {
      clearTimeout(timer);
      signal?.removeEventListener("abort", stop);
      void worker.terminate();
      resolve({ answer, end: how });
    }
    worker.once("error", () => end("failed"));
    worker.once("exit", () => end("failed"));
    worker.on("message", (message: FromThread) => {
      switch (message.kind) {
        case "answer":
          return end("answered", message.answer);
        case "so far":
          soFar = message.answer;
          return;
        case "progress":
          return onProgress?.(message);
      }
    });
  });
}
