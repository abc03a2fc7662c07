/** Weeks and their days as titles say them. */
import { type Day, daysAfter, isoDate } from "@/lib/domain/calendar";
import { monthShown, weekdayShown } from "./figures";
import { NO_BREAK } from "./shown-digits";
import { marks } from "./notation";

const dayAlone = (day: Day): string => String(Number(isoDate(day).slice(8)));
const dayAndMonth = (day: Day): string => {
  const [alone, month] = [dayAlone(day), monthShown(day)];
  return marks().monthFirst ? `${month}${NO_BREAK}${alone}` : `${alone}${NO_BREAK}${month}`;
};
const yearOf = (day: Day): string => isoDate(day).slice(0, 4);
const monthOf = (day: Day): string => isoDate(day).slice(0, 7);

/** A week: `5 to 11 October`, `28 September to 4 October`; the year where it is not today's, or where it changes. */
export function weekTitle(monday: Day, today: Day): string {
  const sunday = daysAfter(monday, 6);
  const changesYear = yearOf(monday) !== yearOf(sunday);
  const year = (day: Day): string => `${NO_BREAK}${yearOf(day)}`;
  // The month stands by the later day, or by the earlier where months come first.
  const isOneMonth = monthOf(monday) === monthOf(sunday);
  const { monthFirst } = marks();
  const from = isOneMonth && !monthFirst ? dayAlone(monday) : dayAndMonth(monday);
  const to = isOneMonth && monthFirst ? dayAlone(sunday) : dayAndMonth(sunday);
  const isThisYear = yearOf(sunday) === yearOf(today) && !changesYear;
  return `${from}${changesYear ? year(monday) : ""} to ${to}${isThisYear ? "" : year(sunday)}`;
}

/** A day within a week that is named above: `Mon 5`. */
export const dayInWeek = (day: Day): string => `${weekdayShown(day).slice(0, 3)}${NO_BREAK}${dayAlone(day)}`;
