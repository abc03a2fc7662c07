/**
 * The days named above ribbons, and the hairlines through them. Weeks begin on Monday; where weeks would crowd,
 * months are named, and where months would, years. @rule DAY-4
 */
import { type Day, daysAfter, daysBetween, isoDate, mondayOf } from "@/lib/domain/calendar";
import { dayShown } from "./figures";
import { spanOf, tickOf } from "./ribbon-time";

export interface AxisMark {
  readonly at: number;
  readonly text: string;
}

export interface RibbonAxis {
  readonly span: number;
  readonly today: string;
  /** Hairlines. */
  readonly lines: readonly number[];
  /** Names for a wide axis, and fewer for a narrow one. */
  readonly wide: readonly AxisMark[];
  readonly narrow: readonly AxisMark[];
}

/** What an axis is divided into: `lines` gets a hairline, `names` may be named. */
interface Division {
  readonly upToDays: number;
  readonly lines: (from: Day, to: Day) => readonly Day[];
  readonly names: (from: Day, to: Day) => readonly Day[];
  readonly name: (day: Day, before: Day, today: Day) => string;
  /** How wide its names are, in tenths of a plain one. */
  readonly tenths: number;
}

/** Room that a name needs, in percent of the axis: the first after today's, the others, and at the right end. */
const WIDE = { afterToday: 10, between: 12, atEnd: 7 };
const NARROW = { afterToday: 22, between: 24, atEnd: 22 };

export function ribbonAxis(today: Day, lastDay: Day): RibbonAxis {
  const days = daysBetween(today, lastDay);
  const division = DIVISIONS.find(({ upToDays }) => days <= upToDays) ?? YEARS;
  const span = spanOf(today, lastDay);
  const from = daysAfter(today, 1);
  const named = (room: typeof WIDE): readonly AxisMark[] => marks(division, { from, lastDay, today, span }, room);
  return {
    span,
    today: dayShown(today, today, { weekday: false }),
    lines: division.lines(from, lastDay).map((day) => tickOf(day, today)),
    wide: named(WIDE),
    narrow: named(NARROW),
  };
}

function marks(
  division: Division,
  { from, lastDay, today, span }: { from: Day; lastDay: Day; today: Day; span: number },
  room: typeof WIDE,
): readonly AxisMark[] {
  const chosen: AxisMark[] = [];
  let [free, before] = [room.afterToday, today];
  for (const day of division.names(from, lastDay)) {
    const percent = (tickOf(day, today) / span) * 100;
    if (percent < free || percent > 100 - room.atEnd) continue;
    chosen.push({ at: tickOf(day, today), text: division.name(day, before, today) });
    [free, before] = [percent + (room.between * division.tenths) / 10, day];
  }
  return chosen;
}

const monthOf = (day: Day): string => isoDate(day).slice(0, 7);
const yearOf = (day: Day): string => isoDate(day).slice(0, 4);
const isFirstOfMonth = (day: Day): boolean => isoDate(day).endsWith("-01");
const isFirstOfQuarter = (day: Day): boolean => /-(01|04|07|10)-01$/.test(isoDate(day));
const isFirstOfYear = (day: Day): boolean => isoDate(day).endsWith("-01-01");

const daysFrom = (from: Day, to: Day): readonly Day[] =>
  Array.from({ length: Math.max(0, daysBetween(from, to) + 1) }, (_, days) => daysAfter(from, days));

const mondays = (from: Day, to: Day): readonly Day[] => daysFrom(from, to).filter((day) => mondayOf(day) === day);

/** The day alone; with its month where that is another than the last one named. */
const mondayName = (day: Day, before: Day, today: Day): string =>
  monthOf(day) === monthOf(before)
    ? String(Number(isoDate(day).slice(8)))
    : dayShown(day, today, { weekday: false, year: false });

const monthName = (day: Day, before: Day, today: Day): string =>
  dayShown(day, today, { weekday: false, year: yearOf(day) !== yearOf(before) }).replace(/^1\s/, "");

const YEARS: Division = {
  upToDays: Infinity,
  lines: (from, to) => daysFrom(from, to).filter(isFirstOfQuarter),
  names: (from, to) => daysFrom(from, to).filter(isFirstOfYear),
  name: (day) => yearOf(day),
  tenths: 10,
};

const DIVISIONS: readonly Division[] = [
  { upToDays: 150, lines: mondays, names: mondays, name: mondayName, tenths: 10 },
  {
    upToDays: 900,
    lines: (from, to) => daysFrom(from, to).filter(isFirstOfMonth),
    names: (from, to) => daysFrom(from, to).filter(isFirstOfMonth),
    name: monthName,
    tenths: 13,
  },
];
