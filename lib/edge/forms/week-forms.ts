/** What the forms of the week send: days and units that are typed, and runs as they were shown. */
import type { BenchMinutes } from "@/lib/domain/bench-hours";
import type { Day } from "@/lib/domain/calendar";
import type { Units } from "@/lib/domain/quantity";
import { day, id, type Outcome, units } from "@/lib/edge/fields";
import { readTypedWholeNumber } from "./typed-amount";
import { readTypedDay } from "./typed-day";
import { hoursAsTyped, readTypedHours } from "./typed-hours";
import { withoutEnds } from "./typed-number";

interface Sent {
  readonly get: (name: string) => unknown;
}

export const textIn = (form: Sent, name: string): string => {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
};

/** A day that is needed. */
export function readDayTyped(typed: string): Outcome<Day> {
  if (withoutEnds(typed) === "") return { fault: "is needed; write a date, as 2026-11-25" };
  const written = readTypedDay(typed, "refused");
  return "fault" in written ? written : dayIn(written.value);
}

/** The last day of use, where there is one. */
export function readLastDayTyped(typed: string): Outcome<Day | null> {
  if (withoutEnds(typed) === "") return { value: null };
  const written = readTypedDay(typed, "its last day");
  return "fault" in written ? written : dayIn(written.value);
}

function dayIn(text: string): Outcome<Day> {
  const read = day.safeParse(text);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a date" };
}

const countOfUnits = units(0);

/** Units that came out: none where the batch failed. */
export function readUnitsMade(typed: string): Outcome<Units> {
  if (withoutEnds(typed) === "") return { fault: "is needed; write how many came out, 0 where none did" };
  const count = readTypedWholeNumber(typed);
  if ("fault" in count) return count;
  const read = countOfUnits.safeParse(count.value);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a whole number" };
}

/** A run as it was shown, which a form carries. */
export interface SeenRun {
  readonly id: string;
  readonly product: string;
  readonly date: Day;
  readonly units: Units;
}

/** The run that the form was drawn for; null where the form says none. */
export function seenRunIn(form: Sent): SeenRun | null {
  const [runId, product] = [id.safeParse(textIn(form, "run")), textIn(form, "product")];
  const date = dayIn(textIn(form, "from"));
  const count = /^[1-9]\d{0,15}$/.test(textIn(form, "units"))
    ? units(1).safeParse(Number(textIn(form, "units")))
    : null;
  if (!runId.success || product === "" || !("value" in date) || !count?.success) return null;
  return { id: runId.data, product, date: date.value, units: count.data };
}

/** A day that a form carries, or null. */
export function carriedDay(form: Sent, name: string): Day | null {
  const read = dayIn(textIn(form, name));
  return "value" in read ? read.value : null;
}

export const readNewId = (form: Sent, name: string): string | null => {
  const read = id.safeParse(textIn(form, name));
  return read.success ? read.data : null;
};

/** The names of the fields of the maker's hours, Monday first. */
export const HOUR_FIELDS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
export type HourField = (typeof HOUR_FIELDS)[number];

/** Hours typed for each day; a day left empty has none, and all left empty is not said. @rule BOOK-6 */
export function readHoursTyped(
  typed: Readonly<Record<HourField, string>>,
): { readonly minutes: BenchMinutes | null } | { readonly faults: Partial<Record<HourField, string>> } {
  const days = HOUR_FIELDS.map((field) => ({ field, outcome: readTypedHours(typed[field]) }));
  const faults = days.flatMap(({ field, outcome }) => ("fault" in outcome ? [[field, outcome.fault] as const] : []));
  if (faults.length > 0) return { faults: Object.fromEntries(faults) };
  if (HOUR_FIELDS.every((field) => withoutEnds(typed[field]) === "")) return { minutes: null };
  return { minutes: asWeek(days.map(({ outcome }) => ("value" in outcome ? outcome.value : 0))) };
}

const asWeek = ([mon = 0, tue = 0, wed = 0, thu = 0, fri = 0, sat = 0, sun = 0]: readonly number[]): BenchMinutes => [
  mon,
  tue,
  wed,
  thu,
  fri,
  sat,
  sun,
];

/** Hours as their form shows them; a day without any reads 0 once something was said. */
export const hoursShownAsTyped = (minutes: BenchMinutes | null): readonly string[] =>
  HOUR_FIELDS.map((_, at) => (minutes === null ? "" : hoursAsTyped(minutes[at] ?? 0) || "0"));

/** Minutes of a week in one text, as forms and addresses carry them; `none` where they are not said. */
export const hoursCarried = (minutes: BenchMinutes | null): string => minutes?.join(" ") ?? "none";

/** @returns undefined where the text carries none */
export function carriedHours(text: string): BenchMinutes | null | undefined {
  if (text === "none") return null;
  if (!/^\d{1,4}( \d{1,4}){6}$/.test(text)) return undefined;
  const minutes = text.split(" ").map(Number);
  return minutes.every((each) => each <= 24 * 60) ? asWeek(minutes) : undefined;
}
