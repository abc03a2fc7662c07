import { type Day, dayOf } from "@/lib/domain/calendar";

/** The calendar day it is now, in the computer's own time zone. */
export function realToday(): Day {
  const now = new Date();
  const parts = [now.getFullYear(), now.getMonth() + 1, now.getDate()];
  const date = parts.map((part, at) => String(part).padStart(at === 0 ? 4 : 2, "0")).join("-");
  const day = dayOf(date);
  if (day === null) throw new Error(`the computer's clock says ${date}, which is no day from 1900 to 2999`);
  return day;
}
