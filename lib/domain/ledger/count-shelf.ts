/** Counting: what the scale says takes the place of what was written down. One count is one posting. @rule LEDGER-13 */
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
  type Value,
} from "./posting";
import type { Decided, LotRecords } from "./refusal";
import { balanceAt, type Balance, leastFrom, type Standing } from "./standing";

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
  | { readonly kind: "stale count"; readonly lot: LotName; readonly expected: bigint; readonly now: bigint };

/**
 * Decides on a count. What is missing goes with its part of the value. What is over comes in at the value of what is
 * there, and where nothing is there at what the lot cost when it came.
 * @param standing  of every lot that was counted
 */
export function countShelf(count: Count, standing: Standing, records: LotRecords): CountResult {
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
  const differences = count.lines.map((line) => differenceOf(standing, count.day, line));
  const entries = differences.flatMap(entriesOf);
  const { key: id, day, reason } = count;
  const decided = settled(standing, { id, kind: "counted", day, reason, reverses: null, entries });
  return decided.kind === "posted" ? { ...decided, differences } : decided;
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
  const from = lot.of === "material" ? [at("supplier")] : standing.placesOf(lot).filter(isSource);
  const came = from.map((place) => standing.daysOf(lot, place).at(-1)).filter((each) => each !== undefined);
  const quantity = came.reduce((sum, each) => sum - each.quantity, 0n);
  const value = came.reduce<Value>((sum, each) => minusValue(sum, each.value), NO_VALUE);
  return quantity > 0n ? { quantity, value } : { quantity: 0n, value: NO_VALUE };
}

const isSource = ({ kind }: { readonly kind: string }): boolean => kind === "batch" || kind === "supplier";

/** A lot that is as it was written down is posted as well: that it was counted is worth knowing. @rule LEDGER-25 */
const entriesOf = ({ lot, quantity, value }: Difference): readonly Entry[] =>
  moving(lot, quantity, value, at("counted"), homeOf(lot));
