import type { Books, RetirableList } from "@/lib/domain/desk";
import { onTheBooks } from "./on-the-books";

type Retired =
  | { readonly kind: "retired" | "brought back"; readonly books: Books }
  /** It was so already: nothing is changed. */
  | { readonly kind: "already retired" | "not retired" }
  | { readonly kind: "no such record" };

/** Hides a record from new work; the other one takes it back. @rule BOOK-2 */
export const retireRecord = (list: RetirableList, id: string) =>
  onTheBooks((books): Retired => {
    const hidden = books.desk.retired[list];
    if (hidden.includes(id)) return { kind: "already retired" };
    if (!isThere(books, list, id)) return { kind: "no such record" };
    return { kind: "retired", books: withRetired(books, list, [...hidden, id]) };
  });

/** Offers a retired record for new work again. @rule BOOK-2 */
export const bringBackRecord = (list: RetirableList, id: string) =>
  onTheBooks((books): Retired => {
    const hidden = books.desk.retired[list];
    if (!isThere(books, list, id)) return { kind: "no such record" };
    if (!hidden.includes(id)) return { kind: "not retired" };
    return {
      kind: "brought back",
      books: withRetired(
        books,
        list,
        hidden.filter((each) => each !== id),
      ),
    };
  });

const isThere = ({ workshop }: Books, list: RetirableList, id: string): boolean =>
  workshop[list].some((record) => record.id === id);

const withRetired = ({ workshop, desk }: Books, list: RetirableList, ids: readonly string[]): Books => ({
  workshop,
  desk: { ...desk, retired: { ...desk.retired, [list]: ids } },
});
