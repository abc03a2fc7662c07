import { acceptWarning as accepted, type WarningToAccept } from "@/lib/domain/formula-book/accepted-warnings";
import type { Books } from "@/lib/domain/desk";
import type { Checked } from "@/lib/domain/formula-book/checks";
import { onTheBooks } from "./on-the-books";

/** Accepts one warning of a formula as it stands, with a reason. @param checkedIn  what its checks are made of */
export const acceptWarning = (asked: WarningToAccept, checkedIn: (books: Books) => Checked) =>
  onTheBooks((books) => accepted(books, asked, checkedIn(books)));
