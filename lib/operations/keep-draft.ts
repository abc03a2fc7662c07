import type { Books } from "@/lib/domain/desk";
import { changes, onTheBooks } from "./on-the-books";

/** What the form of a formula asks for, put together where forms are read. */
export interface DraftToKeep<Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }> {
  /** Puts the draft on the desk, or takes it off as a formula that adds up. What is decided carries the books. */
  readonly change: (books: Books) => Decided;
  /** As for a record: null where the form may be saved, and for a draft that is new. */
  readonly stale: (books: Books, decided: Decided) => Stale | null;
}

/** Keeps a formula that does not add up yet, or one that now does. @rule BOOK-3 */
export const keepDraft = <Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }>({
  change,
  stale,
}: DraftToKeep<Decided, Stale>) =>
  onTheBooks((books): Decided | Stale => {
    const decided = change(books);
    return changes(books, decided) ? (stale(books, decided) ?? decided) : decided;
  });
