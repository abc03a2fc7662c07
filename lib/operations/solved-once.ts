/** One answer for one problem, so that a page that is loaded again does not search again. */
import { createHash } from "node:crypto";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { type SolvedBasket, solvedBasket } from "@/lib/solver/solved-basket";

/** Of so many problems the answer is kept, the latest asked for. */
const MOST_KEPT = 64;

const answers = new Map<string, Promise<SolvedBasket | null>>();

/**
 * Searches unless the same problem was asked before; who asks while it is being searched waits for that answer.
 * @returns null where the search failed altogether. What failed is not kept, and is tried again.
 * @rule BUY-9
 */
export function solvedOnce(problem: BasketProblem, seconds: number): Promise<SolvedBasket | null> {
  const key = `${String(seconds)} ${fingerprintOf(problem)}`;
  const answer = answers.get(key) ?? searched(problem, seconds, key);
  answers.delete(key);
  answers.set(key, answer);
  for (const oldest of answers.keys()) {
    if (answers.size <= MOST_KEPT) break;
    answers.delete(oldest);
  }
  return answer;
}

async function searched(problem: BasketProblem, seconds: number, key: string): Promise<SolvedBasket | null> {
  try {
    const solved = await solvedBasket(problem, { seconds });
    if (solved.cutShort === "failed") answers.delete(key);
    return solved;
  } catch {
    // Whatever the search stumbled over, the maker has the basket by hand, marked as such.
    answers.delete(key);
    return null;
  }
}

const fingerprintOf = (problem: BasketProblem): string =>
  createHash("sha256")
    .update(
      JSON.stringify(problem, (_, value: unknown) => (typeof value === "bigint" ? `${value.toString()}n` : value)),
    )
    .digest("hex");
