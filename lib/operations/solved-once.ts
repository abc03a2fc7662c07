/**
 * One search for one problem: a page that is loaded again looks at it and does not search again. A search goes on while
 * pages come and go, tells how far it is, and can be stopped.
 */
import { createHash } from "node:crypto";
import type { BasketProblem, PacksByOffer } from "@/lib/domain/buying/basket-problem";
import type { BasketAnswer } from "@/lib/domain/buying/least-basket";
import type { Progress } from "@/lib/domain/buying/least-of-parts";
import { type SolvedBasket, solvedBasket } from "@/lib/solver/solved-basket";

/** Of so many problems the answer is kept, the latest asked for. */
const MOST_KEPT = 64;

export interface BasketSearch {
  /** Names the search where it is to be stopped or begun again. */
  readonly key: string;
  /** What it comes to; null where it failed altogether. */
  readonly answered: Promise<SolvedBasket | null>;
  /** What was found at once, while the search goes on. */
  readonly first: () => BasketAnswer | null;
  readonly progress: () => Progress | null;
}

/** A basket that a search ended with, and when. */
export interface EarlierAnswer {
  readonly packs: PacksByOffer;
  readonly at: Date;
}

/** So many answers are kept to stand in while a later search goes on, whatever they were asked for. */
const MOST_EARLIER = 8;

interface Running extends BasketSearch {
  readonly stop: AbortController;
}

/** Pages and actions may be given modules of their own by the server; what is being searched is the process's. */
const KEPT = Symbol.for("stillroom.searches");
const EARLIER = Symbol.for("stillroom.earlier answers");
const kept = globalThis as unknown as {
  [KEPT]: Map<string, Running> | undefined;
  [EARLIER]: readonly EarlierAnswer[] | undefined;
};

function searches(): Map<string, Running> {
  const all = kept[KEPT] ?? new Map<string, Running>();
  kept[KEPT] = all;
  return all;
}

/** What the latest searches ended with, the last first. They may not fit the problem at hand: check them against it. */
export const earlierAnswers = (): readonly EarlierAnswer[] => kept[EARLIER] ?? [];

/**
 * Searches unless the same problem was asked before; who asks while it is being searched gets that search.
 * What failed is not kept, and is tried again.
 * @rule BUY-9
 */
export function searchFor(problem: BasketProblem, seconds: number): BasketSearch {
  const key = fingerprintOf({ problem, seconds });
  const all = searches();
  const search = all.get(key) ?? begun(problem, seconds, key);
  all.delete(key);
  all.set(key, search);
  for (const [oldest, { stop }] of all) {
    if (all.size <= MOST_KEPT) break;
    stop.abort();
    all.delete(oldest);
  }
  return search;
}

/** The answer of a search, waited for. */
export const solvedOnce = (problem: BasketProblem, seconds: number): Promise<SolvedBasket | null> =>
  searchFor(problem, seconds).answered;

/** Ends a search with the best that it has found, and waits until it has. One that has ended stays as it is. */
export async function stopSearch(key: string): Promise<void> {
  const search = searches().get(key);
  search?.stop.abort();
  await search?.answered;
}

/** Forgets an answer, so that the next page searches again. */
export async function forgetSearch(key: string): Promise<void> {
  await stopSearch(key);
  searches().delete(key);
}

function begun(problem: BasketProblem, seconds: number, key: string): Running {
  const stop = new AbortController();
  let first: BasketAnswer | null = null;
  let progress: Progress | null = null;
  const solving = solved(problem, {
    seconds,
    signal: stop.signal,
    onFirst: (answer) => (first = answer),
    onProgress: (soFar) => (progress = soFar),
  });
  const search: Running = {
    key,
    answered: solving.then((answer) => {
      if (answer?.answer.kind === "basket")
        kept[EARLIER] = [{ packs: answer.answer.packs, at: new Date() }, ...earlierAnswers()].slice(0, MOST_EARLIER);
      if ((answer === null || answer.cutShort === "failed") && searches().get(key) === search) searches().delete(key);
      return answer;
    }),
    first: () => first,
    progress: () => progress,
    stop,
  };
  return search;
}

async function solved(...asked: Parameters<typeof solvedBasket>): Promise<SolvedBasket | null> {
  try {
    return await solvedBasket(...asked);
  } catch {
    // Whatever the search stumbled over, the maker has the basket by hand, marked as such.
    return null;
  }
}

const fingerprintOf = (asked: { readonly problem: BasketProblem; readonly seconds: number }): string =>
  createHash("sha256")
    .update(JSON.stringify(asked, (_, value: unknown) => (typeof value === "bigint" ? `${value.toString()}n` : value)))
    .digest("hex");
