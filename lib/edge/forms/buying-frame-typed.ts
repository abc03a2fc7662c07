/** What is typed into the frame of a purchase, read or told what is wrong with it. @rule BUY-10, BUY-17, BUY-18 */
import type { BuyingFrame } from "@/lib/domain/buying/buying-frame";
import { type Day, dayOf } from "@/lib/domain/calendar";
import { type CurrencyCode, type MicroUnits } from "@/lib/domain/money";
import { LARGEST_FIGURE, type PartsPerMillion, quantity, WHOLE } from "@/lib/domain/quantity";
import { daysShown } from "@/lib/edge/figures";
import { quoted } from "@/lib/edge/shown-value";
import { readTypedMoney, readTypedPercent, readTypedWholeNumber } from "./typed-amount";
import { readTypedDay } from "./typed-day";

/** How the days to cover are chosen. */
export const COVERS = ["as set", "week", "four weeks", "horizon", "days"] as const;
export type Cover = (typeof COVERS)[number];

/** What counts, and why what was typed does not. */
export interface Read<T> {
  readonly value: T;
  readonly fault: string | null;
}

const counts = <T>(value: T): Read<T> => ({ value, fault: null });

type DaysToCover = BuyingFrame["cover"];

export function readCover(
  { cover, days }: { readonly cover: Cover; readonly days: string },
  horizonDays: number,
): Read<DaysToCover> {
  switch (cover) {
    case "as set":
      return counts({ kind: "workshop" });
    case "week":
      return counts({ kind: "days", days: 7 });
    case "four weeks":
      return counts({ kind: "days", days: 28 });
    case "horizon":
      return counts({ kind: "horizon" });
    case "days":
      return readDays(days, horizonDays);
  }
}

function readDays(typed: string, horizonDays: number): Read<DaysToCover> {
  const refused = (fault: string): Read<DaysToCover> => ({ value: { kind: "workshop" }, fault });
  const read = readTypedWholeNumber(typed);
  if ("fault" in read) return refused(read.fault);
  const days = read.value;
  if (days < 1) return refused("must be at least one day");
  if (days > horizonDays)
    return refused(`is more than the ${daysShown(horizonDays)} that the plan looks ahead; write at most that`);
  return counts({ kind: "days", days });
}

export function readOrderBy(typed: string): Read<Day | null> {
  if (typed.trim() === "") return counts(null);
  const read = readTypedDay(typed, "refused");
  if ("fault" in read) return { value: null, fault: read.fault };
  const day = dayOf(read.value);
  return day === null ? { value: null, fault: `there is no such day as ${quoted(typed)}` } : counts(day);
}

export function readCap(typed: string, currency: CurrencyCode): Read<MicroUnits | null> {
  if (typed.trim() === "") return counts(null);
  const read = readTypedMoney(typed, currency);
  if ("fault" in read) return { value: null, fault: read.fault };
  const amount = millionthsOf(read.value);
  if (amount === null) return { value: null, fault: "has more than six decimals, or is no amount" };
  if (amount > LARGEST_FIGURE) return { value: null, fault: "is more than any figure here can be" };
  return counts(quantity<MicroUnits>(amount));
}

export function readShare(typed: string): Read<PartsPerMillion> {
  const nothing = quantity<PartsPerMillion>(0n);
  if (typed.trim() === "") return counts(nothing);
  const read = readTypedPercent(typed);
  if ("fault" in read) return { value: nothing, fault: read.fault };
  const percents = millionthsOf(read.value);
  if (percents === null || percents % 100n !== 0n) return { value: nothing, fault: "has more than four decimals" };
  const share = percents / 100n;
  if (share > WHOLE)
    return {
      value: nothing,
      fault: `must be from 0 to 100 %, not ${quoted(typed)}: leftovers are worth no more than they cost`,
    };
  return counts(quantity<PartsPerMillion>(share));
}

/** A plain decimal in millionths; null below zero or where it is finer than that. */
function millionthsOf(decimal: string): bigint | null {
  const [, whole, decimals = ""] = /^(\d+)(?:\.(\d{1,6}))?$/.exec(decimal) ?? [];
  return whole === undefined ? null : BigInt(whole) * 1_000_000n + BigInt(decimals.padEnd(6, "0"));
}
