/** Fields that several forms of the bench have. @rule BENCH-4 */
import type { DecimalText } from "@/lib/domain/quantity";
import { name as aName, note as aNote, type Outcome } from "@/lib/edge/fields";
import type { ph as aPh } from "@/lib/edge/figure-fields";
import type { SentForm } from "./posting-forms";
import { withoutEnds } from "./typed-number";
import { textIn } from "./week-forms";

export function mayBe(form: SentForm, field: string): Outcome<string | null> {
  const typed = withoutEnds(textIn(form, field));
  return typed === "" ? { value: null } : outcomeOf(aName.safeParse(typed));
}

const found = aNote(5000);
export const readFound = (form: SentForm): Outcome<string> =>
  needed(form, "found", found, "write what was seen, as smooth and white");

export function needed(form: SentForm, field: string, schema: typeof aName, how: string): Outcome<string> {
  const typed = withoutEnds(textIn(form, field));
  return typed === "" ? { fault: `is needed; ${how}` } : outcomeOf(schema.safeParse(typed));
}

export function readFigure(
  form: SentForm,
  field: string,
  read: (typed: string) => Outcome<string>,
  schema: typeof aPh,
): Outcome<DecimalText> {
  const typed = withoutEnds(textIn(form, field));
  if (typed === "") return { fault: "is needed; write what the meter shows" };
  const number = read(typed);
  return "fault" in number ? number : outcomeOf(schema.safeParse(number.value));
}

type Parsed<T> =
  | { readonly success: true; readonly data: T }
  | { readonly success: false; readonly error: { readonly issues: readonly { readonly message: string }[] } };

const outcomeOf = <T>(parsed: Parsed<T>): Outcome<T> =>
  parsed.success ? { value: parsed.data } : { fault: parsed.error.issues[0]?.message ?? "cannot be read" };

/** Whoever writes something down says who she is. */
export function readWho(typed: string): Outcome<string> {
  const text = withoutEnds(typed);
  return text === "" ? { fault: "is needed: a record says who wrote it" } : outcomeOf(aName.safeParse(text));
}
