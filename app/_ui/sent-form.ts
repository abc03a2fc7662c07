/** A form as it was sent, and what is answered to it; what is decided on the way is decided where the books are. */
import type { Refused } from "@/lib/edge/forms/change-record";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import type { FormField } from "@/lib/edge/forms/form-fields";
import {
  type FieldFault,
  type FormReading,
  sentName,
  type SentForm,
  type TypedRecord,
} from "@/lib/edge/forms/form-reading";
import { type Stale, staleness } from "@/lib/edge/forms/staleness";
import { drawnName, parted } from "./either";
import type { FormAnswer, FormFault } from "./form-answer";
import { type FormValues, valuesOfForm } from "./form-values";

export interface Sent {
  readonly values: FormValues;
  readonly form: SentForm;
  readonly deed: string;
  readonly seen: string;
}

export function sentFrom(data: FormData): Sent {
  const values = valuesOfForm(data);
  const meant = parted(values);
  const form: SentForm = {
    get: (name) => (Object.hasOwn(meant, name) ? meant[name] : null),
    getAll: (name) => (Object.hasOwn(meant, name) ? [meant[name]] : []),
    keys: () => Object.keys(meant),
  };
  return { values, form, deed: values.deed ?? "", seen: values.seen ?? "" };
}

/** Faults at the fields as they were drawn; a record that is gone is told as what was done to it meanwhile. */
export function answerRefused({ values }: Sent, refused: Refused, reading: FormReading): FormAnswer {
  if (refused.isGone) return { kind: "changed meanwhile", values, seenNow: null, changes: [] };
  const faults = refused.faults.map((fault) => placed(fault, reading, values));
  return { kind: "refused", values, faults: inOrder(faults, values), breaks: refused.breaks };
}

/** In the order of the fields, what is about the whole first. */
export function inOrder(faults: readonly FormFault[], values: FormValues): readonly FormFault[] {
  const places = new Map(Object.keys(values).map((name, at) => [name, at]));
  const rowsOf = (list: string): number =>
    places.get(Object.keys(values).find((each) => each.startsWith(`${list}.`)) ?? "") ?? 0;
  const placeOf = ({ name }: FormFault): number => (name === null ? -1 : (places.get(name) ?? rowsOf(name)));
  return [...faults].sort((a, b) => placeOf(a) - placeOf(b));
}

const placed = ({ field, message }: FieldFault, reading: FormReading, values: FormValues): FormFault => ({
  name: field === null ? null : drawnName(sentName(reading, field), values),
  message,
});

/** Told in one sentence, about the form as a whole. */
export const answerSaid = ({ values }: Sent, message: string): FormAnswer => ({
  kind: "refused",
  values,
  faults: [{ name: null, message }],
  breaks: [],
});

export interface StaleForm extends Stale {
  readonly seenNow: string | null;
}

/** Whether what is kept has changed since the form was drawn, and the fingerprint of what it is now. */
export function staleForm(seen: string, stored: TypedRecord | null, typed: TypedRecord): StaleForm | null {
  const stale = staleness(seen, stored, typed);
  return stale && { ...stale, seenNow: stored && fingerprint(stored) };
}

export const answerStale = (
  { values }: Sent,
  { changes, seenNow }: StaleForm,
  fields: readonly FormField[],
): FormAnswer => ({
  kind: "changed meanwhile",
  values,
  seenNow,
  changes: changes.map(({ field, was, now }) => ({
    label: fields.find(({ name }) => name === field)?.label ?? field,
    here: was,
    there: now,
  })),
});
