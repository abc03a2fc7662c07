/** What the forms that post have in common: a key, a day, a reason, and how much of each lot. @rule LEDGER-3, LEDGER-8 */
import type { Day } from "@/lib/domain/calendar";
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Measure } from "@/lib/domain/quantity";
import { type Outcome, note } from "@/lib/edge/fields";
import { countShown, stockInFull } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import type { RefusalWords } from "./refusal-words";
import { readTypedStock } from "./typed-stock";
import { withoutEnds } from "./typed-number";
import { readDayTyped, textIn } from "./week-forms";

/** A form as it was sent. */
export type SentForm = Pick<FormData, "get" | "keys">;

export type Faults = Readonly<Partial<Record<string, string>>>;

/** What was read, or what is wrong with which field. */
export type Read<T> = { readonly asked: T } | { readonly faults: Faults };

const TAKES = "takes ";
const SPILT = "spilt ";
const MEASURE = "measure ";

/** The field of what a lot gives, and what the form carries beside it. An id may hold any character; so may a name. */
export const takesField = (lot: string): string => `${TAKES}${lot}`;
export const spiltField = (lot: string): string => `${SPILT}${lot}`;
export const measureField = (lot: string): string => `${MEASURE}${lot}`;

export interface Takes {
  readonly lot: string;
  readonly quantity: bigint;
}

/**
 * How much each lot gives; a field left empty gives nothing and is left out.
 * @param fieldOf  the field in which it stands: what is taken, or what was spilt beside it
 */
export function readTakes(form: SentForm, fieldOf: typeof takesField = takesField): Read<readonly Takes[]> {
  const read = lotsIn(form).map((lot) => ({
    lot,
    outcome: readTypedStock(textIn(form, fieldOf(lot)), measureIn(form, lot)),
  }));
  const faults = faultsOf(Object.fromEntries(read.map(({ lot, outcome }) => [fieldOf(lot), outcome])));
  if (Object.keys(faults).length > 0) return { faults };
  const asked = read.flatMap(({ lot, outcome }) =>
    "value" in outcome && outcome.value !== null && outcome.value > 0n ? [{ lot, quantity: outcome.value }] : [],
  );
  return { asked };
}

const lotsIn = (form: SentForm): readonly string[] =>
  [...form.keys()].filter((name) => name.startsWith(TAKES)).map((name) => name.slice(TAKES.length));

const measureIn = (form: SentForm, lot: string): Measure =>
  textIn(form, measureField(lot)) === "count" ? "count" : "mass";

/** So much of a lot of the form, with its unit, in full: it is what somebody has to put right. */
export const shownIn =
  (form: SentForm) =>
  (lot: LotName, quantity: bigint): string =>
    lot.of === "finished" ? unitsInWords(quantity) : stockInFull(quantity, measureIn(form, lot.id));

export const unitsInWords = (units: bigint): string =>
  `${countShown(units)}${NO_BREAK}${units === 1n ? "unit" : "units"}`;

/** All that was typed, by the names of the fields, so that nothing of it is lost. */
export const typedIn = (form: SentForm, names: readonly string[]): Readonly<Record<string, string>> =>
  Object.fromEntries(
    [...names, ...lotsIn(form).flatMap((lot) => [takesField(lot), spiltField(lot)])].map((name) => [
      name,
      textIn(form, name),
    ]),
  );

/** The faults among what was read, by field. */
export const faultsOf = (read: Readonly<Record<string, Outcome<unknown>>>): Faults =>
  Object.fromEntries(
    Object.entries(read).flatMap(([name, outcome]) => ("fault" in outcome ? [[name, outcome.fault] as const] : [])),
  );

const MOST_OF_A_REASON = 500;
const reason = note(MOST_OF_A_REASON);

/** A note that may be left out. */
export function readNoteTyped(typed: string): Outcome<string | null> {
  if (withoutEnds(typed) === "") return { value: null };
  const read = reason.safeParse(withoutEnds(typed));
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a text" };
}

/** A reason that is needed. */
export function readReasonTyped(typed: string): Outcome<string> {
  const read = readNoteTyped(typed);
  if ("fault" in read) return read;
  return read.value === null ? { fault: "is needed; say why, in a few words" } : { value: read.value };
}

export const readDayOfPosting = (form: SentForm): Outcome<Day> => readDayTyped(textIn(form, "day"));

/** Where a form says a refusal: at its field, or above. @param fieldOf  the field of a lot, where it has one */
export function placedRefusal(
  { at, lot, words }: RefusalWords,
  fieldOf: (lot: LotName) => string | null,
): { readonly faults: Faults; readonly says: string | null } {
  const field = at === "day" ? "day" : at === "lot" && lot !== null ? fieldOf(lot) : null;
  if (field !== null) return { faults: { [field]: words }, says: null };
  const [first = "", ...rest] = words;
  return { faults: {}, says: at === "form" ? words : `${first.toUpperCase()}${rest.join("")}.` };
}
