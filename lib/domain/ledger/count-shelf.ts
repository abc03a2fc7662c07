/**
 * Counting: what the balance shows takes the place of what was written down. One count is one posting.
 * @rule LEDGER-13, LEDGER-26
 */
import type { Day } from "@/lib/domain/calendar";
import { refusedFirst, settled, valueOfPart } from "./drawing";
import {
  at,
  type Entry,
  homeOf,
  type LotName,
  lotKey,
  minusValue,
  moving,
  negated,
  NO_VALUE,
  type Posted,
  type Value,
} from "./posting";
import type { Decided, LotRecords } from "./refusal";
import { balanceAt, type Balance, leastFrom, type Standing } from "./standing";
import { standingPostings } from "./standing-postings";

export interface Count {
  readonly key: string;
  readonly day: Day;
  readonly today: Day;
  readonly reason: string;
  readonly lines: readonly CountLine[];
}

export interface CountLine {
  readonly lot: LotName;
  /** Net of the vessel, at the end of the day. */
  readonly counted: bigint;
  /** What the books said when the form was drawn: a count against another figure is stale. */
  readonly expected: bigint;
}

/** What a count changes of one lot, shown before it is posted. */
export interface Difference {
  readonly lot: LotName;
  readonly expected: bigint;
  readonly counted: bigint;
  /** Below zero for what is missing. */
  readonly quantity: bigint;
  readonly value: Value;
}

export type CountResult =
  | Decided<{ readonly differences: readonly Difference[] }>
  | { readonly kind: "stale count"; readonly lot: LotName; readonly expected: bigint; readonly now: bigint }
  /** What was counted on that later day would not be what stands any more. */
  | { readonly kind: "counted since"; readonly lot: LotName; readonly on: Day };

/**
 * Decides on a count. What is missing goes with its part of the value. What is over comes in at the value of what is
 * there, and where nothing is there at what the lot cost when it came.
 * @param standing  of every lot that was counted
 * @param past  the postings of those that were counted for a later day as well
 */
export function countShelf(
  count: Count,
  standing: Standing,
  records: LotRecords,
  past: readonly Posted[] = [],
): CountResult {
  const lots = count.lines.map(({ lot }) => lot);
  const refusal = refusedFirst(count, lots, records);
  if (refusal) return refusal;
  if (lots.length === 0) return { kind: "nothing to post", lot: null };
  const keys = lots.map(lotKey);
  const twice = lots.find((lot, index) => keys.indexOf(lotKey(lot)) !== index);
  if (twice) return { kind: "asked twice", lot: twice };
  const stale = count.lines.find(({ lot, expected }) => onTheDay(standing, lot, count.day).quantity !== expected);
  if (stale) {
    const now = onTheDay(standing, stale.lot, count.day).quantity;
    return { kind: "stale count", lot: stale.lot, expected: stale.expected, now };
  }
  const counted = countedSince(past, lots, count.day);
  if (counted) return counted;
  const differences = count.lines.map((line) => differenceOf(standing, count.day, line));
  const entries = differences.flatMap(entriesOf);
  const { key: id, day, reason } = count;
  const decided = settled(standing, { id, kind: "counted", day, reason, reverses: null, entries });
  return decided.kind === "posted" ? { ...decided, differences } : decided;
}

/** The lots whose counts of a later day may stand in the way of one for this day. */
export const movedByCountsAfter = (standing: Standing, lots: readonly LotName[], day: Day): readonly LotName[] =>
  lots.filter((lot) => standing.daysOf(lot, at("counted")).some((each) => each.day > day));

/** The first count of one of the lots that stands and is of a later day. @rule LEDGER-26 */
function countedSince(past: readonly Posted[], lots: readonly LotName[], day: Day) {
  const later = standingPostings(past)
    .filter((posting) => posting.kind === "counted" && posting.day > day)
    .toSorted((a, b) => a.day - b.day);
  for (const posting of later) {
    const touched = new Set(posting.entries.map(({ lot }) => lotKey(lot)));
    const lot = lots.find((each) => touched.has(lotKey(each)));
    if (lot) return { kind: "counted since", lot, on: posting.day } as const;
  }
  return null;
}

const onTheDay = (standing: Standing, lot: LotName, day: Day): Balance => balanceAt(standing, lot, homeOf(lot), day);

/** What a count of one lot would change. */
export function differenceOf(standing: Standing, day: Day, { lot, counted, expected }: CountLine): Difference {
  const moved = counted - expected;
  return {
    lot,
    expected,
    counted,
    quantity: moved,
    value: moved === 0n ? NO_VALUE : worthOf(standing, day, lot, moved),
  };
}

function worthOf(standing: Standing, day: Day, lot: LotName, moved: bigint): Value {
  const least = leastFrom(standing, lot, homeOf(lot), day);
  if (moved < 0n) return negated(valueOfPart(least, least.quantity < -moved ? least.quantity : -moved));
  const there = least.quantity > 0n ? least : asItCame(standing, lot);
  return there.quantity === 0n ? NO_VALUE : valueOfPart(there, moved);
}

/** What came of a lot, and what it cost with everything that was posted to it since. */
function asItCame(standing: Standing, lot: LotName): Balance {
  const from = standing.placesOf(lot).filter(isSource);
  const ends = from.map((place) => ({ place, end: standing.daysOf(lot, place).at(-1) }));
  // Of a material, what a batch holds was drawn into it; one that the lot came out of gave it value alone.
  const came = ends.flatMap(({ place, end }) =>
    end === undefined || (lot.of === "material" && place.kind === "batch" && end.quantity !== 0n) ? [] : [end],
  );
  const quantity = came.reduce((sum, each) => sum - each.quantity, 0n);
  const value = came.reduce<Value>((sum, each) => minusValue(sum, each.value), NO_VALUE);
  return quantity > 0n ? { quantity, value } : { quantity: 0n, value: NO_VALUE };
}

const isSource = ({ kind }: { readonly kind: string }): boolean => kind === "batch" || kind === "supplier";

/** A lot that is as it was written down is posted as well: that it was counted is worth knowing. @rule LEDGER-25 */
const entriesOf = ({ lot, quantity, value }: Difference): readonly Entry[] =>
  moving(lot, quantity, value, at("counted"), homeOf(lot));
