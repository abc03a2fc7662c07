/** Moving what is there: on hold and back, written off, sold and taken back. @rule LEDGER-14, LEDGER-15 */
import type { Day } from "@/lib/domain/calendar";
import { refusedFirst, settled, taken } from "./drawing";
import {
  at,
  batchOf,
  type Entry,
  homeOf,
  type LotName,
  lotKey,
  type Place,
  plusValue,
  type PostingKind,
  NO_VALUE,
  type Value,
} from "./posting";
import type { Decided, LotRecords, Refusal } from "./refusal";
import { isUsable } from "@/lib/domain/lots";
import type { Standing } from "./standing";

export interface StockMove {
  readonly key: string;
  readonly day: Day;
  readonly today: Day;
  readonly reason: string | null;
  readonly lines: readonly MoveLine[];
}

export interface MoveLine {
  readonly lot: LotName;
  /** µg, pieces or units. */
  readonly quantity: bigint;
}

export type StockMoveResult =
  Decided<{ readonly value: Value }> | { readonly kind: "not finished"; readonly lot: LotName };

/** Sets part or all of a lot aside: it is out of planning until it is released. @rule LEDGER-14 */
export const hold = (asked: StockMove, standing: Standing, records: LotRecords): StockMoveResult =>
  moved("held", asked, standing, records, (lot) => [homeOf(lot), at("hold")]);

/** Puts what is on hold back. @rule LEDGER-14 */
export const release = (asked: StockMove, standing: Standing, records: LotRecords): StockMoveResult =>
  moved("released", asked, standing, records, (lot) => [at("hold"), homeOf(lot)]);

export interface WriteOff extends StockMove {
  /** Out of date goes to `expired`, everything else (spilt, a sample, given away) to `lost`. */
  readonly as: "lost" | "expired";
  readonly from: "stock" | "hold";
}

/** Takes stock off with its value. */
export const writeOff = (asked: WriteOff, standing: Standing, records: LotRecords): StockMoveResult =>
  moved("written off", asked, standing, records, (lot) => [
    asked.from === "hold" ? at("hold") : homeOf(lot),
    at(asked.as),
  ]);

export interface Sale extends StockMove {
  readonly outOfDate: "refuse" | "sell";
}

export interface IntoBatch extends StockMove {
  readonly run: string;
  readonly outOfDate: "refuse" | "draw";
}

/** Moves what was weighed from the shelf into its batch, where it stays with its value. @rule BENCH-5, LEDGER-11 */
export function weighIn(asked: IntoBatch, standing: Standing, records: LotRecords): StockMoveResult {
  const outOfDate = asked.outOfDate === "refuse" ? firstOutOfDate(asked, records) : null;
  return outOfDate ?? moved("weighed", asked, standing, records, () => [at("shelf"), batchOf(asked.run)]);
}

function firstOutOfDate({ lines, day }: StockMove, records: LotRecords): Refusal | null {
  for (const { lot } of lines) {
    const expires = records(lot)?.expires ?? null;
    if (expires !== null && !isUsable({ expires }, day)) return { kind: "out of date", lot, expires, day };
  }
  return null;
}

/** Sells finished units by lot. @rule LEDGER-15 */
export function sellUnits(asked: Sale, standing: Standing, records: LotRecords): StockMoveResult {
  const outOfDate = asked.outOfDate === "refuse" ? firstOutOfDate(asked, records) : null;
  return (
    outOfDate ?? finishedAlone(asked) ?? moved("sold", asked, standing, records, (lot) => [homeOf(lot), at("sold")])
  );
}

/** Takes sold units back into stock, at what they were sold out of it for. @rule LEDGER-15 */
export const takeBack = (asked: StockMove, standing: Standing, records: LotRecords): StockMoveResult =>
  finishedAlone(asked) ?? moved("taken back", asked, standing, records, (lot) => [at("sold"), homeOf(lot)]);

function finishedAlone({ lines }: StockMove): StockMoveResult | null {
  const other = lines.find(({ lot }) => lot.of !== "finished");
  return other ? { kind: "not finished", lot: other.lot } : null;
}

function moved(
  kind: PostingKind,
  { key: id, day, today, reason, lines }: StockMove,
  standing: Standing,
  records: LotRecords,
  way: (lot: LotName) => readonly [Place, Place],
): StockMoveResult {
  const lots = lines.map(({ lot }) => lot);
  const refusal = refusedFirst({ day, today }, lots, records);
  if (refusal) return refusal;
  if (lots.length === 0) return { kind: "nothing to post", lot: null };
  const keys = lots.map(lotKey);
  const twice = lots.find((lot, index) => keys.indexOf(lotKey(lot)) !== index);
  if (twice) return { kind: "asked twice", lot: twice };
  const entries: Entry[] = [];
  let value = NO_VALUE;
  for (const { lot, quantity } of lines) {
    const [from, to] = way(lot);
    const taking = taken(standing, day, { lot, quantity, from, to });
    if (taking.kind !== "taken") return taking;
    entries.push(...taking.entries);
    value = plusValue(value, taking.value);
  }
  const decided = settled(standing, { id, kind, day, reason, reverses: null, entries });
  return decided.kind === "posted" ? { ...decided, value } : decided;
}
