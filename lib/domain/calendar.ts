/**
 * Plain calendar days, never instants: a day is the count of days since 1 January 1970.
 * @rule DAY-1 to DAY-4
 */
declare const isDay: unique symbol;

export type Day = number & { readonly [isDay]: true };

const MILLISECONDS_A_DAY = 86_400_000;

export const FIRST_YEAR = 1900;
export const LAST_YEAR = 2999;

export const daysAfter = (day: Day, days: number): Day => (day + days) as Day;
export const daysBetween = (from: Day, to: Day): number => to - from;
export const later = (a: Day, b: Day): Day => (a > b ? a : b);
export const earlier = (a: Day, b: Day): Day => (a < b ? a : b);

/** The day of an ISO 8601 calendar date (YYYY-MM-DD) in the years 1900 to 2999, or null where there is no such day. */
export function dayOf(date: string): Day | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!parts) return null;
  const [year, month, dayOfMonth] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (year < FIRST_YEAR || year > LAST_YEAR) return null;
  const day = (Date.UTC(year, month - 1, dayOfMonth) / MILLISECONDS_A_DAY) as Day;
  return isoDate(day) === date ? day : null;
}

// A year that begins on 1 March has its leap day last, and its months begin after 0, 31, 61, 92, … days: 153 for each five.
const FIRST_OF_MARCH_0 = -719_468;
const DAYS_IN_400_YEARS = 146_097;
const DAYS_IN_100_YEARS = 36_524;
const DAYS_IN_4_YEARS = 1_461;

/** A day as an ISO 8601 calendar date. By arithmetic, which takes a third of the time of a Date: a page says thousands. */
export function isoDate(day: Day): string {
  const since = day - FIRST_OF_MARCH_0;
  const cycles = Math.floor(since / DAYS_IN_400_YEARS);
  const ofCycle = since - cycles * DAYS_IN_400_YEARS;
  // The last day of the cycle is the leap day of a fourth century that would else be a fifth.
  const centuries = Math.min(Math.floor(ofCycle / DAYS_IN_100_YEARS), 3);
  const ofCentury = ofCycle - centuries * DAYS_IN_100_YEARS;
  const fours = Math.floor(ofCentury / DAYS_IN_4_YEARS);
  const ofFour = ofCentury - fours * DAYS_IN_4_YEARS;
  const years = Math.min(Math.floor(ofFour / 365), 3);
  const ofYear = ofFour - years * 365;
  const monthsFromMarch = Math.floor((5 * ofYear + 2) / 153);
  const dayOfMonth = ofYear - Math.floor((153 * monthsFromMarch + 2) / 5) + 1;
  const isNextYear = monthsFromMarch >= 10;
  const month = monthsFromMarch + (isNextYear ? -9 : 3);
  const year = cycles * 400 + centuries * 100 + fours * 4 + years + (isNextYear ? 1 : 0);
  return `${inDigits(year, 4)}-${inDigits(month, 2)}-${inDigits(dayOfMonth, 2)}`;
}

const inDigits = (number: number, digits: number): string => String(number).padStart(digits, "0");

/** 1 for Monday to 7 for Sunday, as ISO 8601 numbers them. */
export const weekday = (day: Day): number => ((((day + 3) % 7) + 7) % 7) + 1;

/** The Monday of the day's ISO 8601 week. */
export const mondayOf = (day: Day): Day => daysAfter(day, 1 - weekday(day));

/**
 * A working calendar: Monday to Friday without the closed days. Working days carry running numbers, so that
 * "the fifth working day after" is an addition and not a walk.
 */
export interface WorkingCalendar {
  /** Closed days that fall on Monday to Friday, ascending, each once. */
  readonly closedWeekdays: readonly Day[];
}

/** The working calendar with these closed days; give the days of both for a calendar of both. @rule DAY-2 */
export function workingCalendar(closedDays: readonly Day[]): WorkingCalendar {
  const closedWeekdays = [...new Set(closedDays)].filter((day) => weekday(day) <= 5).sort((a, b) => a - b);
  return { closedWeekdays };
}

/** The first working day not before `day`. */
export const workingDayFrom = (calendar: WorkingCalendar, day: Day): Day =>
  dayNumbered(calendar, numberOf(calendar, daysAfter(day, -1)) + 1);

/** The last working day not after `day`. */
export const workingDayUpTo = (calendar: WorkingCalendar, day: Day): Day =>
  dayNumbered(calendar, numberOf(calendar, day));

/** The `count`-th working day after `day`; `day` itself for 0. */
export const workingDaysAfter = (calendar: WorkingCalendar, day: Day, count: number): Day =>
  count === 0 ? day : dayNumbered(calendar, numberOf(calendar, day) + count);

/** The latest day from which the `count`-th working day after is not past `day`; `day` itself for 0. */
export const latestStartForWorkingDays = (calendar: WorkingCalendar, day: Day, count: number): Day =>
  count === 0 ? day : daysAfter(dayNumbered(calendar, numberOf(calendar, day) - count + 1), -1);

/** How many working days have begun up to and including `day`, from a fixed start. */
const numberOf = (calendar: WorkingCalendar, day: Day): number =>
  weekdayNumber(day) - countUpTo(calendar.closedWeekdays, day);

/** The working day with that running number. Each pass adds the closed days it has stepped over. */
function dayNumbered(calendar: WorkingCalendar, number: number): Day {
  let closed = 0;
  for (;;) {
    const day = weekdayWithNumber(number + closed);
    const closedBefore = countUpTo(calendar.closedWeekdays, day);
    if (closedBefore === closed) return day;
    closed = closedBefore;
  }
}

// Day 0 is a Thursday; day 4 is the Monday that numbering starts from.
const FIRST_MONDAY = 4;

function weekdayNumber(day: Day): number {
  const since = day - FIRST_MONDAY;
  const week = Math.floor(since / 7);
  return week * 5 + Math.min(since - week * 7 + 1, 5);
}

function weekdayWithNumber(number: number): Day {
  const week = Math.floor((number - 1) / 5);
  return (FIRST_MONDAY + week * 7 + (number - 1 - week * 5)) as Day;
}

function countUpTo(ascending: readonly Day[], day: Day): number {
  let [low, high] = [0, ascending.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ascending[middle] ?? Infinity) <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}
