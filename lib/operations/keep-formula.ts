import type { Day } from "@/lib/domain/calendar";
import type { Books, Desk } from "@/lib/domain/desk";
import {
  contentKey,
  deskAfterChange,
  isFrozen,
  standingVersion,
  type VersionTold,
} from "@/lib/domain/formula-book/versions";
import type { Workshop } from "@/lib/domain/workshop";
import { decideRecord, type LotHasMoved, type RecordToKeep } from "./keep-record";
import { onTheBooks } from "./on-the-books";
import { todayIn } from "./on-the-ledger";

/** A change of a formula that is there, and why. */
export interface FormulaChange extends Omit<VersionTold, "today"> {
  readonly formula: string;
  readonly realToday: Day;
}

/** What is changed in a frozen version becomes the next, and that one has to say why. @rule VERSION-2 */
export interface WhyIsNeeded {
  readonly kind: "why is needed";
  /** Of the version that is frozen. */
  readonly number: number;
}

/** Keeps a formula as its form has it, and its version where that is frozen. @rule VERSION-2, VERSION-3 */
export const keepFormula = <Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }>(
  asked: RecordToKeep<Decided, Stale>,
  change: FormulaChange,
) =>
  onTheBooks(
    (before) => {
      const decided = decideRecord(before, asked);
      const { books } = decided as { readonly books?: Books };
      if (books === undefined) return decided;
      const desk = deskAfter({ workshop: before.workshop, desk: books.desk }, books.workshop, change);
      return "kind" in desk ? desk : { ...decided, books: { ...books, desk } };
    },
    (lot): LotHasMoved => ({ kind: "lot has moved", lot }),
  );

function deskAfter(before: Books, after: Workshop, change: FormulaChange): Desk | WhyIsNeeded {
  const [was, is] = [before.workshop, after].map(({ formulas }) => formulas.find(({ id }) => id === change.formula));
  if (!was || !is) return before.desk;
  const standing = standingVersion(before.desk, was);
  if (change.why === null && isFrozen(standing) && contentKey(was) !== contentKey(is))
    return { kind: "why is needed", number: standing.number };
  return deskAfterChange(before.desk, was, is, { ...change, today: todayIn(before, change.realToday) });
}
