import type { BasketProblem, PacksByOffer } from "@/lib/domain/buying/basket-problem";
import type { BasketAnswer } from "@/lib/domain/buying/least-basket";
import type { Progress } from "@/lib/domain/buying/least-of-parts";

/** What the thread is given. */
export interface ThreadTask {
  readonly problem: BasketProblem;
  /** A basket to beat; empty where there is none. */
  readonly known: PacksByOffer;
  readonly seconds: number;
  /** Four bytes, shared: not zero once the search is to end with what it has. */
  readonly stop: SharedArrayBuffer;
}

/** What it says: how far it is, what it would answer if it were stopped now, and at the end what it found. */
export type FromThread =
  ({ readonly kind: "progress" } & Progress) | { readonly kind: "so far" | "answer"; readonly answer: BasketAnswer };
