/**
 * What stands where, at the end of any day: a fold over entries. The order within a day does not matter.
 * @rule LEDGER-4, LEDGER-5
 */
import type { Day } from "@/lib/domain/calendar";
import { LARGEST_FIGURE } from "@/lib/domain/quantity";
import {
  type Entry,
  isNothing,
  type LotName,
  lotKey,
  NO_VALUE,
  type Place,
  placeKey,
  type PlaceKind,
  plusValue,
  type Posting,
  type Value,
  VALUE_KINDS,
} from "./posting";

/** An entry, or the sum of several of one lot, place and day. */
export interface Move extends Entry {
  readonly day: Day;
}

export interface Balance {
  readonly quantity: bigint;
  readonly value: Value;
}

/** What stands at the end of a day on which something moved, until the next such day. */
export interface DayBalance extends Balance {
  readonly day: Day;
}

export const NOTHING: Balance = { quantity: 0n, value: NO_VALUE };

/** The balances of every lot in every place. */
export interface Standing {
  /** Ascending by day, one for each day on which something moved. */
  readonly daysOf: (lot: LotName, place: Place) => readonly DayBalance[];
  /** Where the lot is or has been. */
  readonly placesOf: (lot: LotName) => readonly Place[];
}

export const movesOf = (postings: readonly Posting[]): readonly Move[] =>
  postings.flatMap(({ day, entries }) => entries.map((entry) => ({ ...entry, day })));

/** Folds moves, given in any order, into what stands where. */
export function standingAfter(moves: readonly Move[]): Standing {
  const movesByCell = new Map<string, Move[]>();
  const placesByLot = new Map<string, Map<string, Place>>();
  for (const move of moves) {
    const [lot, place] = [lotKey(move.lot), placeKey(move.place)];
    const cell = `${lot}\u0000${place}`;
    const known = movesByCell.get(cell);
    if (known) known.push(move);
    else movesByCell.set(cell, [move]);
    const places = placesByLot.get(lot) ?? new Map<string, Place>();
    placesByLot.set(lot, places.set(place, move.place));
  }
  const days = new Map<string, readonly DayBalance[]>();
  return {
    daysOf: (lot, place) => {
      const cell = `${lotKey(lot)}\u0000${placeKey(place)}`;
      const known = days.get(cell) ?? runningBalances(movesByCell.get(cell) ?? []);
      days.set(cell, known);
      return known;
    },
    placesOf: (lot) => [...(placesByLot.get(lotKey(lot)) ?? new Map<string, Place>()).values()],
  };
}

function runningBalances(moves: readonly Move[]): readonly DayBalance[] {
  const balances: DayBalance[] = [];
  for (const move of moves.toSorted((a, b) => a.day - b.day)) {
    const before = balances.at(-1);
    const after = {
      day: move.day,
      quantity: (before?.quantity ?? 0n) + move.quantity,
      value: plusValue(before?.value ?? NO_VALUE, move.value),
    };
    if (before?.day === move.day) balances[balances.length - 1] = after;
    else balances.push(after);
  }
  return balances;
}

/** What stands there now, with everything that is posted. */
export const latest = (standing: Standing, lot: LotName, place: Place): Balance =>
  standing.daysOf(lot, place).at(-1) ?? NOTHING;

/** What stood there at the end of a day. */
export const balanceAt = (standing: Standing, lot: LotName, place: Place, day: Day): Balance =>
  standing.daysOf(lot, place).findLast((each) => each.day <= day) ?? NOTHING;

/**
 * The least that stands there at the end of any day from `day` on: no more than that can leave on that day. Of equals
 * the latest.
 */
export function leastFrom(standing: Standing, lot: LotName, place: Place, day: Day): DayBalance {
  let least: DayBalance = { ...balanceAt(standing, lot, place, day), day };
  for (const each of standing.daysOf(lot, place)) {
    if (each.day > day && each.quantity <= least.quantity) least = each;
  }
  return least;
}

/** Places that cannot give more than they hold. What a batch holds of finished units is what came out of it. */
const HOLDING: ReadonlySet<PlaceKind> = new Set<PlaceKind>(["shelf", "hold", "finished", "sold"]);

export interface Fault {
  readonly kind: "below zero" | "value without stock" | "out of range";
  readonly lot: LotName;
  readonly place: Place;
  /** The first day at whose end it would stand so. */
  readonly day: Day;
  /** What would stand there. */
  readonly balance: Balance;
}

/**
 * What would be wrong once the posting is there: on its day or any later one a place would hold less than nothing, or
 * value of nothing. @rule LEDGER-4, LEDGER-5
 */
export function faultOf(standing: Standing, { day, entries }: Pick<Posting, "day" | "entries">): Fault | null {
  const after = standingAfter(entries.map((entry) => ({ ...entry, day })));
  const seen = new Set<string>();
  for (const { lot, place } of entries) {
    const cell = `${lotKey(lot)}\u0000${placeKey(place)}`;
    if (seen.has(cell)) continue;
    seen.add(cell);
    const added = latest(after, lot, place);
    const later = standing.daysOf(lot, place).filter((each) => each.day > day);
    for (const each of [{ ...balanceAt(standing, lot, place, day), day }, ...later]) {
      const balance = { quantity: each.quantity + added.quantity, value: plusValue(each.value, added.value) };
      const kind = faultIn(lot, place, balance);
      if (kind) return { kind, lot, place, day: each.day, balance };
    }
  }
  return null;
}

/** What is wrong with a balance of a lot in a place, if anything. */
export function faultIn(lot: LotName, place: Place, { quantity, value }: Balance): Fault["kind"] | null {
  const figures = [quantity, ...VALUE_KINDS.map((kind) => value[kind])];
  if (figures.some((figure) => figure > LARGEST_FIGURE || figure < -LARGEST_FIGURE)) return "out of range";
  if (place.kind === "batch" && lot.of === "material" && quantity < 0n) return "below zero";
  if (!HOLDING.has(place.kind)) return null;
  if (figures.some((figure) => figure < 0n)) return "below zero";
  return quantity === 0n && !isNothing(value) ? "value without stock" : null;
}
