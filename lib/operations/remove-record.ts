import type { Books } from "@/lib/domain/desk";
import { changes, onTheBooks } from "./on-the-books";

export interface RecordToRemove<Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }> {
  /** Takes a record or a draft out. What is decided carries the books; the refusal says what uses it. */
  readonly remove: (books: Books) => Decided;
  /** Somebody has changed it since it was shown. Null where it may go. */
  readonly stale: (books: Books) => Stale | null;
}

/** Takes a record or a draft out of the books, where nothing uses it. @rule BOOK-4 */
export const removeRecord = <Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }>({
  remove,
  stale,
}: RecordToRemove<Decided, Stale>) =>
  onTheBooks((books): Decided | Stale => {
    const decided = remove(books);
    return changes(books, decided) ? (stale(books) ?? decided) : decided;
  });
