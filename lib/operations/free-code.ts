/** Codes that nothing has, neither on a list nor struck off one. @rule BENCH-2, BENCH-10 */
import { codeAfter, nextCode } from "@/lib/domain/bench/batch-code";
import { codesUsed } from "@/lib/domain/bench/codes";
import type { Day } from "@/lib/domain/calendar";
import { finishedLot, materialLot } from "@/lib/domain/ledger/posting";
import type { Ledger } from "@/lib/store/post-to-books";

export const isCodeFree = ({ books, records }: Pick<Ledger, "books" | "records">, code: string): boolean =>
  !codesUsed(books).includes(code) && records(finishedLot(code)) === null && records(materialLot(code)) === null;

/** The next of the maker's scheme; without a scheme the next after the one that is taken, or null where none was given. */
export function nextFreeCode(
  ledger: Pick<Ledger, "books" | "records">,
  today: Day,
  taken: string | null,
): string | null {
  const { batchCodeScheme: scheme } = ledger.books.desk;
  const used = [...codesUsed(ledger.books)];
  let code = scheme === null ? taken : nextCode(scheme, today, used);
  while (code !== null && !isCodeFree(ledger, code)) {
    used.push(code);
    code = scheme === null ? codeAfter(code) : nextCode(scheme, today, used);
  }
  return code;
}
