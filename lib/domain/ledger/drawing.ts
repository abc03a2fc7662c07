/** Taking some of a lot out of a place, with its value. @rule LEDGER-5, LEDGER-7, CLOSE-3 */
import type { Day } from "@/lib/domain/calendar";
import { ratio, roundedHalfEven } from "@/lib/domain/fraction";
import {
  eachPart,
  type Entry,
  type LotName,
  lotKey,
  moving,
  type Place,
  placeKey,
  type Posting,
  type Value,
} from "./posting";
import { type Balance, balanceAt, faultOf, latest, leastFrom, type Standing } from "./standing";
import type { Decided, LotRecords, Refusal } from "./refusal";

/**
 * The value that goes with a part of what stands somewhere: each part of it in proportion, rounded half to even; all
 * of it with all that is there.
 */
export const valueOfPart = (there: Balance, part: bigint): Value =>
  eachPart((kind) =>
    part === there.quantity ? there.value[kind] : roundedHalfEven(ratio(there.value[kind] * part, there.quantity)),
  );

/** Some of a lot that is to go from one place to another. */
export interface Taking {
  readonly lot: LotName;
  readonly quantity: bigint;
  readonly from: Place;
  readonly to: Place;
}

export type Taken = { readonly kind: "taken"; readonly entries: readonly Entry[]; readonly value: Value } | Refusal;

/**
 * Takes some of a lot out of a place on a day, not more than stands there on that day and every later one. Its value
 * is that of the day on which least remains, which is the last for everything that is not dated back.
 */
export function taken(standing: Standing, day: Day, { lot, quantity, from, to }: Taking): Taken {
  if (quantity <= 0n) return { kind: "nothing to post", lot };
  const least = leastFrom(standing, lot, from, day);
  if (quantity > least.quantity) return notThere(standing, lot, from, day, quantity);
  const value = valueOfPart(least, quantity);
  return { kind: "taken", entries: moving(lot, quantity, value, from, to), value };
}

/** Why so much cannot leave: the first day on which it would be missing, and what has left from the posting's day on. */
export function notThere(standing: Standing, lot: LotName, from: Place, day: Day, asked: bigint): Refusal {
  const days = standing.daysOf(lot, from);
  const there = balanceAt(standing, lot, from, day);
  const missing = there.quantity < asked ? day : days.find((each) => each.day > day && each.quantity < asked)?.day;
  const least = leastFrom(standing, lot, from, day);
  return {
    kind: "not there",
    lot,
    place: from,
    asked,
    there: least.quantity,
    on: missing ?? day,
    onTheDay: there.quantity,
    now: latest(standing, lot, from).quantity,
    held: latest(standing, lot, { kind: "hold" }).quantity,
  };
}

/** What a posting may be refused for whatever it does: its day, and lots that there are not. */
export function refusedFirst(
  { day, today }: { readonly day: Day; readonly today: Day },
  lots: readonly LotName[],
  records: LotRecords,
): Refusal | null {
  if (day > today) return { kind: "future day", day, today };
  for (const lot of lots) {
    const record = records(lot);
    if (!record) return { kind: "no such lot", lot };
    if (day < record.since) return { kind: "before the lot", lot, day, since: record.since };
  }
  return null;
}

/** The posting, where every balance of its day and later stays as it must be. @rule LEDGER-4, LEDGER-5 */
export function settled(standing: Standing, posting: Posting): Decided {
  const fault = faultOf(standing, posting);
  if (!fault) return { kind: "posted", posting };
  const { lot, place, day } = fault;
  if (fault.kind === "out of range") return { kind: "out of range", lot };
  if (fault.kind === "value without stock" || fault.balance.quantity >= 0n) {
    return { kind: "cost came later", lot, place, on: day };
  }
  const asked = posting.entries
    .filter((entry) => entry.quantity < 0n && lotKey(entry.lot) === lotKey(lot))
    .filter((entry) => placeKey(entry.place) === placeKey(place))
    .reduce((sum, { quantity }) => sum - quantity, 0n);
  return notThere(standing, lot, place, posting.day, asked);
}
