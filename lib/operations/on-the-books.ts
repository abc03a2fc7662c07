import type { Books } from "@/lib/domain/desk";
import type { LotName } from "@/lib/domain/ledger/posting";
import { changeBooks, type NoWorkshop } from "@/lib/store/change-books";

/** What a decision tells: all of it but the books themselves. */
export type Told<Decided> = Decided extends { readonly books: Books } ? Omit<Decided, "books"> : Decided;

/**
 * Loads the books, decides on them and saves what was decided, in one transaction.
 * @param moved   what to tell of a lot that has moved and is stated as of another material
 * @param decide  pure; what it decides carries the books as they are to be, and a refusal carries none
 */
export const onTheBooks = <Decided extends { readonly kind: string }>(
  decide: (books: Books) => Decided,
  moved?: (lot: LotName) => Told<Decided>,
): Promise<Told<Decided> | NoWorkshop> =>
  changeBooks((before) => {
    const { books, ...told } = decide(before) as Decided & { readonly books?: Books };
    const result = told as unknown as Told<Decided>;
    return books === undefined ? { kind: "refuse", result } : { kind: "keep", books, result };
  }, moved);

/** Whether a decision would save other books than these: a refusal would not, nor what was there already. */
export const changes = (before: Books, decided: { readonly kind: string; readonly books?: Books }): boolean =>
  decided.books !== undefined && decided.books !== before;
