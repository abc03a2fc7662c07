import { lotUnderOpenBatch } from "@/lib/domain/bench/codes";
import type { Books, ClosedRun } from "@/lib/domain/desk";
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Workshop } from "@/lib/domain/workshop";
import { usageOf } from "@/lib/domain/usage-of";
import { onTheBooks } from "./on-the-books";

/** What a form asks for, put together where forms are read. */
export interface RecordToKeep<Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }> {
  /** Puts the record into its place. What is decided carries the whole workshop, a refusal none. */
  readonly change: (workshop: Workshop) => Decided;
  /**
   * Why the form may not be saved: somebody has changed the record since it was drawn. Null where it may be, and for a
   * record that is new. Asked once the change is known to be good.
   */
  readonly stale: (workshop: Workshop, decided: Decided) => Stale | null;
}

/** The id of a run that was made stays its own. @rule CLOSE-1 */
export interface RunAlreadyMade {
  readonly kind: "already made";
  readonly closed: ClosedRun;
}

/** Something of the lot was drawn or sold: it stays of its material. @rule LEDGER-22 */
export interface LotHasMoved {
  readonly kind: "lot has moved";
  readonly lot: LotName;
}

/** A draft, an earlier version or a trial weighs what would be counted: its measure stays. @rule BOOK-4 */
export interface MeasureIsHeld {
  readonly kind: "measure is held";
  readonly by: readonly string[];
}

/** A lot, or a line on order, has the code of a batch that is open. @rule BENCH-10 */
export interface CodeOfABatch {
  readonly kind: "code of a batch";
  readonly lot: string;
}

/** What a change decides, without the workshop that it has made. */
export type Told<Decided> = Decided extends { readonly workshop: Workshop } ? Omit<Decided, "workshop"> : Decided;

/**
 * Keeps one record of the workshop, new or changed, or the settings, as a form has them. A formula that now adds up is
 * no draft any more.
 * @rule BOOK-1, BOOK-3
 */
export const keepRecord = <Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }>(
  asked: RecordToKeep<Decided, Stale>,
) =>
  onTheBooks(
    (books) => decideRecord(books, asked),
    (lot): LotHasMoved => ({ kind: "lot has moved", lot }),
  );

export function decideRecord<Decided extends { readonly kind: string }, Stale extends { readonly kind: "stale" }>(
  books: Books,
  { change, stale }: RecordToKeep<Decided, Stale>,
): Told<Decided> | Stale | RunAlreadyMade | LotHasMoved | MeasureIsHeld | CodeOfABatch {
  const decided = change(books.workshop);
  const { workshop, ...rest } = decided as Decided & { readonly workshop?: Workshop };
  const told = rest as unknown as Told<Decided>;
  if (workshop === undefined) return told;
  // What was sent before and is there already overwrites nothing.
  const refusal = workshop === books.workshop ? null : stale(books.workshop, decided);
  if (refusal) return refusal;
  const runs = new Set(workshop.runs.map(({ id }) => id));
  const closed = books.desk.closedRuns.find(({ run }) => runs.has(run.id));
  if (closed) return { kind: "already made", closed };
  const lot = lotUnderOpenBatch(books.workshop, workshop, books.desk);
  if (lot !== null) return { kind: "code of a batch", lot };
  const held = heldMeasure(books, workshop);
  if (held) return held;
  return { ...told, books: { workshop, desk: withoutFinishedDrafts(books, workshop) } };
}

/** What only the desk holds is judged here: the form judges a record by the workshop alone. */
function heldMeasure(books: Books, { materials }: Workshop): MeasureIsHeld | null {
  if (materials === books.workshop.materials) return null;
  const measureOf = new Map(books.workshop.materials.map(({ id, measure }) => [id, measure]));
  const changed = materials.filter(({ id, measure }) => measure === "count" && measureOf.get(id) === "mass");
  const by = changed.flatMap(({ id }) =>
    usageOf(books, "materials", id)
      .filter(({ list }) => list === "drafts" || list === "versions" || list === "trials")
      .flatMap(({ users }) => users.map(({ name }) => name ?? "")),
  );
  return by.length === 0 ? null : { kind: "measure is held", by };
}

/** @rule BOOK-3 */
function withoutFinishedDrafts({ desk }: Books, { formulas }: Workshop): Books["desk"] {
  const finished = new Set(formulas.map(({ id }) => id));
  return { ...desk, drafts: desk.drafts.filter(({ id }) => !finished.has(id)) };
}
