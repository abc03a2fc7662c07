/** Recomputing everything: what the entries say against what is kept of them. @rule LEDGER-23 */
import { type Day, isoDate } from "@/lib/domain/calendar";
import { quantity } from "@/lib/domain/quantity";
import {
  balanced,
  isNothing,
  type LotName,
  lotKey,
  type Moved,
  negated,
  NO_VALUE,
  type Place,
  placeKey,
  type PlaceKind,
  plusValue,
  type Posted,
  type Value,
  VALUE_KINDS,
} from "./posting";
import type { LotRecords } from "./refusal";
import { type Balance, faultIn, latest, type Move, type Standing, standingAfter } from "./standing";

/** A balance as it is kept beside the entries. */
export interface KeptBalance extends Balance {
  readonly lot: LotName;
  readonly place: Place;
}

/** The value of a day's entries in a kind of place, as it is kept beside them. */
export interface KeptDayTotal {
  readonly of: LotName["of"];
  readonly place: PlaceKind;
  readonly day: Day;
  readonly value: Value;
}

/** What is kept beside the entries, and follows from them. */
export interface Kept {
  readonly balances: readonly KeptBalance[];
  readonly dayTotals: readonly KeptDayTotal[];
}

export interface Audit {
  /** One sentence for each disagreement. */
  readonly disagreements: readonly string[];
  readonly postings: number;
  readonly entries: number;
  readonly lots: number;
}

/** Takes postings in, in their order, and says in the end what does not agree. It changes; every audit makes its own. */
export interface Auditor {
  readonly take: (posting: Posted) => void;
  /** @param kept  null where nothing is kept beside the entries */
  readonly finish: (kept: Kept | null, closedRuns: readonly string[]) => Audit;
}

export function auditor(records: LotRecords): Auditor {
  const disagreements: string[] = [];
  const moves = new Map<string, Move>();
  const cells = new Map<string, { readonly lot: LotName; readonly place: Place }>();
  const postings = new Map<string, Posted>();
  const reversed = new Set<string>();
  let [last, entries] = [0, 0];

  function take(posting: Posted): void {
    disagreements.push(...faultsOf(posting, records, postings, reversed));
    if (posting.sequence <= last) disagreements.push(`${named(posting)} is out of order`);
    last = posting.sequence;
    postings.set(posting.id, posting);
    if (posting.reverses !== null) reversed.add(posting.reverses);
    entries += posting.entries.length;
    for (const entry of posting.entries) {
      const cell = `${lotKey(entry.lot)}\u0000${placeKey(entry.place)}`;
      const key = `${cell}\u0000${String(posting.day)}`;
      const before = moves.get(key);
      cells.set(cell, entry);
      moves.set(key, {
        ...entry,
        day: posting.day,
        quantity: quantity<Moved>((before?.quantity ?? 0n) + entry.quantity),
        value: plusValue(before?.value ?? NO_VALUE, entry.value),
      });
    }
  }

  function finish(kept: Kept | null, closedRuns: readonly string[]): Audit {
    const standing = standingAfter([...moves.values()]);
    const lots = new Set([...cells.values()].map(({ lot }) => lotKey(lot)));
    if (kept !== null) {
      disagreements.push(...keptOtherwise(standing, cells, kept.balances));
      disagreements.push(...totalsOtherwise([...moves.values()], kept.dayTotals));
    }
    disagreements.push(...everBelowZero(standing, cells));
    disagreements.push(...valueLeftIn(closedRuns, standing, cells));
    return { disagreements, postings: postings.size, entries, lots: lots.size };
  }
  return { take, finish };
}

const named = ({ sequence, id }: Posted): string => `posting ${String(sequence)} (${id})`;
const cellNamed = (lot: LotName, place: Place): string =>
  `${lot.of} lot ${lot.id} in ${place.kind === "batch" ? `the batch of ${place.run}` : place.kind}`;
const figures = ({ quantity, value }: Balance): string =>
  `${quantity.toString()} worth ${VALUE_KINDS.map((kind) => value[kind].toString()).join(" + ")}`;

function faultsOf(
  posting: Posted,
  records: LotRecords,
  before: ReadonlyMap<string, Posted>,
  reversed: ReadonlySet<string>,
): readonly string[] {
  const faults: string[] = [];
  if (!balanced(posting)) faults.push(`${named(posting)} does not balance`);
  if (before.has(posting.id)) faults.push(`${named(posting)} has a key that was posted before`);
  const unknown = posting.entries.find(({ lot }) => records(lot) === null);
  if (unknown) faults.push(`${named(posting)} names ${unknown.lot.of} lot ${unknown.lot.id}, which there is not`);
  if ((posting.kind === "reversal") !== (posting.reverses !== null)) {
    faults.push(`${named(posting)} is a reversal of nothing, or reverses without being one`);
  }
  if (posting.reverses === null) return faults;
  const original = before.get(posting.reverses);
  if (!original) faults.push(`${named(posting)} reverses ${posting.reverses}, which was not posted before`);
  else if (original.kind === "reversal" || !isOpposite(posting, original)) {
    faults.push(`${named(posting)} does not say the opposite of ${named(original)}`);
  }
  if (reversed.has(posting.reverses)) faults.push(`${named(posting)} reverses ${posting.reverses} a second time`);
  return faults;
}

function isOpposite(posting: Posted, original: Posted): boolean {
  const left = new Map<string, { readonly quantity: bigint; readonly value: Value }>();
  for (const { lot, place, quantity, value } of [...posting.entries, ...original.entries]) {
    const cell = `${lotKey(lot)}\u0000${placeKey(place)}`;
    const before = left.get(cell) ?? { quantity: 0n, value: NO_VALUE };
    left.set(cell, { quantity: before.quantity + quantity, value: plusValue(before.value, value) });
  }
  return posting.day >= original.day && [...left.values()].every(isZero);
}

const isZero = ({ quantity, value }: Balance): boolean => quantity === 0n && isNothing(value);

type Cells = ReadonlyMap<string, { readonly lot: LotName; readonly place: Place }>;

function keptOtherwise(standing: Standing, cells: Cells, kept: readonly KeptBalance[]): readonly string[] {
  const faults: string[] = [];
  const seen = new Set<string>();
  for (const { lot, place, ...balance } of kept) {
    seen.add(`${lotKey(lot)}\u0000${placeKey(place)}`);
    const said = latest(standing, lot, place);
    if (said.quantity !== balance.quantity || !isNothing(plusValue(said.value, negated(balance.value)))) {
      faults.push(`${cellNamed(lot, place)}: kept ${figures(balance)}, the entries say ${figures(said)}`);
    }
  }
  for (const [cell, { lot, place }] of cells) {
    if (!seen.has(cell)) faults.push(`${cellNamed(lot, place)}: no balance is kept`);
  }
  return faults;
}

function totalsOtherwise(moves: readonly Move[], kept: readonly KeptDayTotal[]): readonly string[] {
  const left = new Map<string, Value>();
  const add = (of: LotName["of"], place: PlaceKind, day: Day, value: Value): void => {
    const key = `${of} lots in ${place} on ${isoDate(day)}`;
    left.set(key, plusValue(left.get(key) ?? NO_VALUE, value));
  };
  for (const { lot, place, day, value } of moves) add(lot.of, place.kind, day, value);
  for (const { of, place, day, value } of kept) add(of, place, day, negated(value));
  return [...left].flatMap(([key, value]) =>
    isNothing(value) ? [] : [`the total of ${key} is not what the entries come to`],
  );
}

/** The first day of each place on which it held less than nothing, or value of nothing. */
function everBelowZero(standing: Standing, cells: Cells): readonly string[] {
  return [...cells.values()].flatMap(({ lot, place }) => {
    const day = standing.daysOf(lot, place).find((balance) => faultIn(lot, place, balance) !== null);
    return day ? [`${cellNamed(lot, place)}: ${figures(day)} at the end of ${isoDate(day.day)}`] : [];
  });
}

/** A batch that is closed has given all its value away. */
function valueLeftIn(closedRuns: readonly string[], standing: Standing, cells: Cells): readonly string[] {
  const valueByRun = new Map<string, Value>();
  for (const { lot, place } of cells.values()) {
    if (place.kind !== "batch") continue;
    const value = latest(standing, lot, place).value;
    valueByRun.set(place.run, plusValue(valueByRun.get(place.run) ?? NO_VALUE, value));
  }
  return closedRuns
    .filter((run) => !isNothing(valueByRun.get(run) ?? NO_VALUE))
    .map((run) => `the batch of run ${run} is closed and holds value`);
}
