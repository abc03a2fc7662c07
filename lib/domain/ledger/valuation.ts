/** What stock was worth on a day, and what was sold cost. @rule LEDGER-17, LEDGER-18 */
import type { Day } from "@/lib/domain/calendar";
import { type Fraction, minus, plus, ratio, times, whole, ZERO } from "@/lib/domain/fraction";
import { type LotName, NO_VALUE, type PlaceKind, plusValue, type Posted, type Value, wholeValue } from "./posting";

/** The value of all entries of a kind of lot in a kind of place, up to some day. */
export interface PlaceTotal {
  readonly of: LotName["of"];
  readonly place: PlaceKind;
  readonly value: Value;
}

export interface StockValue {
  /** Of lots on the shelf and on hold. */
  readonly materials: Value;
  /** Of batches that are not closed. */
  readonly workInProgress: Value;
  /** Of finished units in stock and on hold; labour and overhead stand apart. */
  readonly finished: Value;
  readonly total: Value;
  /** The part of the total that is on hold. */
  readonly onHold: Value;
}

/** @param totals  of the entries up to the end of a day */
export function stockValue(totals: readonly PlaceTotal[]): StockValue {
  const of = (counts: (total: PlaceTotal) => boolean): Value =>
    totals
      .filter(counts)
      .map(({ value }) => value)
      .reduce(plusValue, NO_VALUE);
  const materials = of((each) => each.of === "material" && (each.place === "shelf" || each.place === "hold"));
  const workInProgress = of(({ place }) => place === "batch");
  const finished = of((each) => each.of === "finished" && (each.place === "finished" || each.place === "hold"));
  return {
    materials,
    workInProgress,
    finished,
    total: [materials, workInProgress, finished].reduce(plusValue, NO_VALUE),
    onHold: of(({ place }) => place === "hold"),
  };
}

/** Each place's total of the postings that fall on these days. */
export function placeTotals(postings: readonly Posted[], counts: (day: Day) => boolean): readonly PlaceTotal[] {
  const totals = new Map<string, PlaceTotal>();
  for (const { day, entries } of postings) {
    if (!counts(day)) continue;
    for (const { lot, place, value } of entries) {
      const key = `${lot.of} ${place.kind}`;
      const before = totals.get(key)?.value ?? NO_VALUE;
      totals.set(key, { of: lot.of, place: place.kind, value: plusValue(before, value) });
    }
  }
  return [...totals.values()];
}

/** The value of stock at the end of a day. */
export const stockValueOn = (postings: readonly Posted[], day: Day): StockValue =>
  stockValue(placeTotals(postings, (each) => each <= day));

/** What was sold cost, less what was taken back. @param totals  of the entries of those days */
export const costOfSales = (totals: readonly PlaceTotal[]): Value =>
  totals
    .filter(({ place }) => place === "sold")
    .map(({ value }) => value)
    .reduce(plusValue, NO_VALUE);

/** What was sold between two days cost, both included. */
export const costOfSalesBetween = (postings: readonly Posted[], from: Day, to: Day): Value =>
  costOfSales(placeTotals(postings, (day) => day >= from && day <= to));

/** What came in or went out with one posting, in and out of the house: shelf and hold together. */
export interface InOrOut {
  readonly quantity: bigint;
  readonly value: Value;
}

/** The same entries valued in two ways. Exact; in micro-units. */
export interface Valued {
  readonly left: Fraction;
  readonly used: Fraction;
  readonly quantity: bigint;
}

/** As they were drawn: each lot at its own cost, first expired first where nobody chose otherwise. @rule LEDGER-18 */
export function asDrawn(moves: readonly InOrOut[]): Valued {
  const sum = (counts: (move: InOrOut) => boolean): Value =>
    moves
      .filter(counts)
      .map(({ value }) => value)
      .reduce(plusValue, NO_VALUE);
  return {
    left: whole(wholeValue(sum(() => true))),
    used: whole(-wholeValue(sum((move) => move.quantity < 0n))),
    quantity: moves.reduce((all, move) => all + move.quantity, 0n),
  };
}

/** At the moving average: what goes out goes at the average of what is there. @rule LEDGER-18 */
export function atMovingAverage(moves: readonly InOrOut[]): Valued {
  let [left, used, quantity] = [ZERO, ZERO, 0n];
  for (const move of moves) {
    if (move.quantity < 0n) {
      const going = quantity === 0n ? ZERO : times(left, ratio(-move.quantity, quantity));
      [left, used] = [minus(left, going), plus(used, going)];
    } else left = plus(left, whole(wholeValue(move.value)));
    quantity += move.quantity;
  }
  return { left, used, quantity };
}

/** What each posting, in the order of days, brought into the house of some lots or took out of it. */
export function inAndOut(postings: readonly Posted[], counts: (lot: LotName) => boolean): readonly InOrOut[] {
  return postings
    .toSorted((a, b) => a.day - b.day || a.sequence - b.sequence)
    .map(({ entries }) =>
      entries
        .filter(({ lot, place }) => isInHouse(place.kind) && counts(lot))
        .reduce<InOrOut>(
          (sum, entry) => ({ quantity: sum.quantity + entry.quantity, value: plusValue(sum.value, entry.value) }),
          { quantity: 0n, value: NO_VALUE },
        ),
    )
    .filter(({ quantity, value }) => quantity !== 0n || wholeValue(value) !== 0n);
}

/** Stock of the workshop that can be counted: in no batch, and not gone. */
export const isInHouse = (place: PlaceKind): boolean => place === "shelf" || place === "hold" || place === "finished";
