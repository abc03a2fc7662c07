/** Weeks and their days as titles say them. */
import { type Day, daysAfter, isoDate } from "@/lib/domain/calendar";
import { NO_BREAK, weekdayShown } from "./figures";
import { LOCALE } from "./shown-digits";

const monthsLong = new Intl.DateTimeFormat(LOCALE, { day: "numeric", month: "long", timeZone: "UTC" });
const dayAlone = (day: Day): string => String(Number(isoDate(day).slice(8)));
const dayAndMonth = (day: Day): string => monthsLong.format(new Date(`${isoDate(day)}T00:00Z`)).replace(" ", NO_BREAK);
const yearOf = (day: Day): string => isoDate(day).slice(0, 4);
const monthOf = (day: Day): string => isoDate(day).slice(0, 7);

/** A week: `5 to 11 October`, `28 September to 4 October`; the year where it is not today's, or where it changes. */
export function weekTitle(monday: Day, today: Day): string {
  const sunday = daysAfter(monday, 6);
  const changesYear = yearOf(monday) !== yearOf(sunday);
  const year = (day: Day): string => `${NO_BREAK}${yearOf(day)}`;
  const from = monthOf(monday) === monthOf(sunday) ? dayAlone(monday) : dayAndMonth(monday);
  const isThisYear = yearOf(sunday) === yearOf(today) && !changesYear;
  return `${from}${changesYear ? year(monday) : ""} to ${dayAndMonth(sunday)}${isThisYear ? "" : year(sunday)}`;
}

/** A day within a week that is named above: `Mon 5`. */
export const dayInWeek = (day: Day): string => `${weekdayShown(day).slice(0, 3)}${NO_BREAK}${dayAlone(day)}`;
