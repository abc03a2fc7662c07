import type { BasketProblem, PacksByOffer } from "@/lib/domain/buying/basket-problem";
import type { BasketAnswer, Progress } from "@/lib/domain/buying/least-basket";

/** What the thread is given. */
export interface ThreadTask {
  readonly problem: BasketProblem;
  /** A basket to beat; empty where there is none. */
  readonly known: PacksByOffer;
  readonly seconds: number;
}

/** What it says: how far it is, and at the end what it found. */
export type FromThread =
  ({ readonly kind: "progress" } & Progress) | { readonly kind: "answer"; readonly answer: BasketAnswer };
