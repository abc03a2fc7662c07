/** The states and notes of a batch as the screens and its record say them. @rule BENCH-4, BENCH-8 */
import type { BatchState, NoteKind } from "@/lib/domain/bench/batch";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";
import { NO_BREAK } from "./shown-digits";

export const STATE_WORDS: Readonly<Record<BatchState, string>> = {
  open: "Open",
  held: "Closed, waits for a second look",
  released: "Released",
  rejected: "Rejected",
  "given up": "Given up",
};

export const NOTE_WORDS: Readonly<Record<NoteKind, string>> = {
  weighed: "Weighed",
  added: "Added beside the formula",
  struck: "Struck",
  temperature: "Temperature",
  acidity: "pH",
  seen: "Seen",
  checked: "Checked",
  recoded: "Given another code",
  closed: "Closed",
  released: "Released",
  rejected: "Rejected",
  annexed: "Added later",
};

/** What is taken care of whatever is weighed: common practice, no source. */
export const ALWAYS_CARE =
  "Gloves and goggles with preservatives; hot vessels burn; clean, dry containers; taste nothing. (Common practice; local rules and the safety sheets come first.)";

/** What a check asks, as whoever looks reads it: `from 8000 to 14000 mPa·s`, `smooth and white`. @rule BENCH-11 */
export function askedInWords({ from, to, unit, looks }: FormulaCheck): string {
  const limits = [from !== null && `from ${from}`, to !== null && `up to ${to}`].filter((each) => each !== false);
  const between = from !== null && to !== null ? `from ${from} to ${to}` : limits.join(" ");
  const figure = between === "" || unit === null ? between : `${between}${NO_BREAK}${unit}`;
  return [figure, looks ?? ""].filter((words) => words !== "").join(", ");
}

/** How hot and how long, as `75 °C, 10 min`; null where a step says neither. */
export function heatOf({
  celsius,
  minutes,
}: {
  readonly celsius: string | null;
  readonly minutes: number | null;
}): string | null {
  const heat = [
    ...(celsius === null ? [] : [`${celsius}${NO_BREAK}°C`]),
    ...(minutes === null ? [] : [`${String(minutes)}${NO_BREAK}min`]),
  ];
  return heat.length === 0 ? null : heat.join(", ");
}
