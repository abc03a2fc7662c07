import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { contentKey, deskAfterChange } from "@/lib/domain/formula-book/versions";
import type { Workshop } from "@/lib/domain/workshop";
import { todayIn } from "./on-the-ledger";
import { onTheBooks } from "./on-the-books";

export interface VersionToBegin<Refusal extends { readonly kind: string }> {
  readonly formula: string;
  readonly why: string;
  readonly realToday: Day;
  /** Puts the formula as it is to be into its place. */
  readonly change: (books: Books) => { readonly kind: "changed"; readonly workshop: Workshop } | Refusal;
}

/**
 * Begins the next version of a formula, from a swap or a trial, whether or not a batch has used the one that stands.
 * Where the formula is like that already, as when it is sent twice, nothing is changed.
 * @rule VERSION-2, TRIAL-5
 */
export const beginVersion = <Refusal extends { readonly kind: string }>(asked: VersionToBegin<Refusal>) =>
  onTheBooks((books) => {
    const was = books.workshop.formulas.find(({ id }) => id === asked.formula);
    if (was === undefined) return { kind: "no such formula" as const };
    const decided = asked.change(books);
    if (!("workshop" in decided)) return decided;
    const is = decided.workshop.formulas.find(({ id }) => id === asked.formula);
    if (is === undefined || contentKey(was) === contentKey(is)) return { kind: "stands already" as const };
    const told = { today: todayIn(books, asked.realToday), why: asked.why, asNext: true };
    return {
      kind: "begun" as const,
      books: { workshop: decided.workshop, desk: deskAfterChange(books.desk, was, is, told) },
    };
  });
