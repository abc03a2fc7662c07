/**
 * How the books open, and how what was entered in the Book is put right: a workshop says of each lot what is there, and
 * the ledger is brought to say the same. @rule LEDGER-21, LEDGER-22
 */
import { type Day, later } from "@/lib/domain/calendar";
import { quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import {
  at,
  finishedLot,
  homeOf,
  isNothing,
  type LotName,
  lotKey,
  materialLot,
  minusValue,
  type Moved,
  moving,
  negated,
  NO_VALUE,
  ofMaterials,
  type Posted,
  type Posting,
  type Value,
} from "./posting";
import type { Balance } from "./standing";
import { standingPostings } from "./standing-postings";

/** What a workshop says of a lot in its place on the shelf, or of finished units in stock. */
export interface Stated {
  readonly lot: LotName;
  readonly since: Day;
  /** The material, or the product. */
  readonly item: string;
  readonly quantity: bigint;
  /** Null where the workshop does not say: of finished units it carries no cost. */
  readonly value: Value | null;
}

export const statedIn = ({ lots, finished }: Pick<Workshop, "lots" | "finished">): readonly Stated[] => [
  ...lots.map((lot) => ({
    lot: materialLot(lot.id),
    since: lot.received,
    item: lot.material,
    quantity: lot.remaining,
    value: ofMaterials(lot.value),
  })),
  ...finished.map((lot) => ({
    lot: finishedLot(lot.id),
    since: lot.made,
    item: lot.product,
    quantity: lot.units,
    value: null,
  })),
];

/** The posting that opens the books with a lot. @rule LEDGER-21 */
export const opening = ({ lot, since, quantity: there, value }: Stated, id = openingId(lot)): Posting => ({
  id,
  kind: "opening",
  day: since,
  reason: null,
  reverses: null,
  entries: moving(lot, there, value ?? NO_VALUE, at("supplier"), homeOf(lot)),
});

export const openingId = ({ of, id }: LotName): string => `opening ${of === "material" ? "lot" : "finished"} ${id}`;

/** The postings that open the books with a workshop: one for each lot that is there. */
export const openings = (workshop: Pick<Workshop, "lots" | "finished">): readonly Posting[] =>
  statedIn(workshop)
    .filter(({ quantity: there }) => there > 0n)
    .map((stated) => opening(stated));

/** Whether a ledger is nothing but these openings, so that the workshop alone says all of it. */
export const isOpeningsOf = (workshop: Pick<Workshop, "lots" | "finished">, postings: readonly Posting[]): boolean => {
  const asOpened = openings(workshop);
  return (
    postings.length === asOpened.length && postings.every((posting, at) => isSame(posting, asOpened[at] ?? posting))
  );
};

const isSame = (a: Posting, b: Posting): boolean =>
  a.id === b.id &&
  a.kind === b.kind &&
  a.day === b.day &&
  a.entries.length === b.entries.length &&
  a.entries.every((entry, at) => {
    const other = b.entries[at];
    return (
      other !== undefined &&
      lotKey(entry.lot) === lotKey(other.lot) &&
      entry.place.kind === other.place.kind &&
      entry.quantity === other.quantity &&
      isNothing(minusValue(entry.value, other.value))
    );
  });

/** A lot that the Book now states otherwise. `now` is null for one that was taken out of it. */
export interface Restated {
  readonly lot: LotName;
  readonly was: Stated | null;
  readonly now: Stated | null;
}

/** The lots of which two workshops state something else. */
export function restated(
  before: Pick<Workshop, "lots" | "finished">,
  after: Pick<Workshop, "lots" | "finished">,
): readonly Restated[] {
  if (before.lots === after.lots && before.finished === after.finished) return [];
  const were = new Map(statedIn(before).map((stated) => [lotKey(stated.lot), stated]));
  const changed = statedIn(after).flatMap((now): readonly Restated[] => {
    const was = were.get(lotKey(now.lot)) ?? null;
    were.delete(lotKey(now.lot));
    return was !== null && statesTheSame(was, now) ? [] : [{ lot: now.lot, was, now }];
  });
  return [...changed, ...[...were.values()].map((was) => ({ lot: was.lot, was, now: null }))];
}

const statesTheSame = (was: Stated, now: Stated): boolean =>
  was.quantity === now.quantity &&
  was.since === now.since &&
  was.item === now.item &&
  isNothing(minusValue(was.value ?? NO_VALUE, now.value ?? NO_VALUE));

export type Corrections =
  | { readonly kind: "corrected"; readonly postings: readonly Posting[] }
  /** It stands in batches or counts as something else already: its material stays what it is. */
  | { readonly kind: "lot has moved"; readonly lot: LotName };

/**
 * What brings the ledger to state what the Book states. A lot of which nothing has happened since it was opened is
 * taken back and opened anew, as if it had been entered so at once; any other is put right by a posting of the
 * difference, on the last day on which something of it moved.
 * @param touching  every posting that touches the lot
 * @param there     what stands of it now, on the shelf or in stock
 * @param next      the number of the next posting, which makes the keys of these new
 * @rule LEDGER-22
 */
export function corrections(
  { lot, was, now }: Restated,
  touching: readonly Posted[],
  there: Balance,
  next: number,
): Corrections {
  const counting = standingPostings(touching);
  if (counting.every(({ kind }) => kind === "opening")) {
    const takenBack = counting.map((posting) => takenBackAs(posting, `correction ${String(next)} of ${posting.id}`));
    const anew = now !== null && now.quantity > 0n ? [opening(now, openingIdAfter(lot, touching, next))] : [];
    return { kind: "corrected", postings: [...takenBack, ...anew] };
  }
  if (was !== null && now !== null && was.item !== now.item) return { kind: "lot has moved", lot };
  const moved = (now?.quantity ?? 0n) - there.quantity;
  const value = minusValue(valueToBe(now, there), there.value);
  if (moved === 0n && isNothing(value)) return { kind: "corrected", postings: [] };
  const last = touching.map(({ day }) => day).reduce(later);
  const posting: Posting = {
    id: `correction ${String(next)} of ${openingId(lot)}`,
    kind: "correction",
    day: last,
    reason: null,
    reverses: null,
    entries: moving(lot, moved, value, at("supplier"), homeOf(lot)),
  };
  return { kind: "corrected", postings: [posting] };
}

/**
 * The Book says nothing of what finished units cost, nor of labour and overhead in a lot that a run made: they keep
 * what stands, unless none is left.
 */
const valueToBe = (now: Stated | null, there: Balance): Value =>
  now === null || now.quantity === 0n
    ? NO_VALUE
    : { ...there.value, ...(now.value && { materials: now.value.materials }) };

const openingIdAfter = (lot: LotName, touching: readonly Posted[], next: number): string =>
  touching.some(({ id }) => id === openingId(lot)) ? `${openingId(lot)}, ${String(next)}` : openingId(lot);

/** The posting that says the opposite of another, on its own day. */
const takenBackAs = (posting: Posted, id: string): Posting => ({
  id,
  kind: "reversal",
  day: posting.day,
  reason: "corrected in the book",
  reverses: posting.id,
  entries: posting.entries.map((entry) => ({
    ...entry,
    quantity: quantity<Moved>(-entry.quantity),
    value: negated(entry.value),
  })),
});
