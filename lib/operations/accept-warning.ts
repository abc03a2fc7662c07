import { acceptWarning as accepted, type WarningToAccept } from "@/lib/domain/formula-book/accepted-warnings";
import type { Books } from "@/lib/domain/desk";
import type { Checked } from "@/lib/domain/formula-book/checks";
import { onTheBooks } from "./on-the-books";

interface Looking extends Pick<WarningToAccept, "wordsOf"> {
  readonly checked: Checked;
}

/** Accepts one warning of a formula as it stands, with a reason. @param lookAt  what its checks are made of and told by */
export const acceptWarning = (asked: Omit<WarningToAccept, "wordsOf">, lookAt: (books: Books) => Looking) =>
  onTheBooks((books) => {
    const { checked, wordsOf } = lookAt(books);
    return accepted(books, { ...asked, wordsOf }, checked);
  });
