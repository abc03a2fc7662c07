/**
 * What was typed into a form as a record in the file's shape, and a record as the values of its form. Nothing typed is
 * lost: what cannot be understood stays in the record as it was typed, where the file's reader refuses it, and the
 * sentence for it is given beside it.
 */
import type { CurrencyCode } from "@/lib/domain/money";
import type { Outcome } from "@/lib/edge/fields";
import { countShown } from "@/lib/edge/figures";
import { decimalTyped } from "@/lib/edge/notation";
import type { Control, FormField } from "./form-fields";
import { type FormKind, RECORD_FORMS } from "./record-forms";
import {
  readTypedAmount,
  readTypedMoney,
  readTypedPercent,
  readTypedPercentOrRest,
  readTypedWholeNumber,
} from "./typed-amount";
import { readTypedDay } from "./typed-day";
import { readTypedNumber, withoutEnds } from "./typed-number";
import { readTypedTemperature } from "./typed-temperature";

/** A record in the file's shape, as it was typed: not checked yet. */
export type TypedRecord = Readonly<Record<string, unknown>>;

export interface FieldFault {
  /** The path inside the record, as `name` or `lines[2].percent`; null where it is about the record as a whole. */
  readonly field: string | null;
  readonly message: string;
}

/** The part of FormData that is needed here. */
export interface SentForm {
  readonly get: (name: string) => unknown;
  readonly getAll: (name: string) => readonly unknown[];
  readonly keys: () => Iterable<string>;
}

export interface FormReading {
  readonly record: TypedRecord;
  /** What could not be understood, or is needed and missing. */
  readonly faults: readonly FieldFault[];
  /** For each list of lines, the numbers under which its rows were sent, in order: empty rows were left out. */
  readonly rows: Readonly<Record<string, readonly number[]>>;
}

/** @param currency  of the workshop, so that money in another is refused */
export const readForm = (kind: FormKind, form: SentForm, currency?: CurrencyCode): FormReading =>
  readFormOf(RECORD_FORMS[kind], form, currency);

/** The same for a form whose fields are no record of the file. */
export function readFormOf(fields: readonly FormField[], form: SentForm, currency?: CurrencyCode): FormReading {
  const rows: Record<string, readonly number[]> = {};
  const faults: FieldFault[] = [];
  const record = readFields(fields, "", "", { form, currency, rows, faults, numbers: rowNumbers(form) });
  return { record, faults, rows };
}

/** The record alone, for those who tell no faults of their own. */
export const recordFromForm = (kind: FormKind, form: SentForm): TypedRecord => readForm(kind, form).record;

/** The name under which the field at a path of the record was sent: `lines[2].percent` may be `lines.4.percent`. */
export function sentName({ rows }: FormReading, field: string): string {
  const [, list = "", at = "", rest = ""] = /^(\w+)\[(\d+)\](.*)$/s.exec(field) ?? [];
  if (list === "") return field;
  // A list of dates is one field.
  return rows[list] === undefined ? list : `${list}.${String(rows[list][Number(at)] ?? at)}${rest}`;
}

interface Sent {
  readonly form: SentForm;
  readonly currency: CurrencyCode | undefined;
  readonly rows: Record<string, readonly number[]>;
  readonly faults: FieldFault[];
  readonly numbers: ReadonlyMap<string, readonly number[]>;
}

/** The numbers of the rows that were sent, by list. */
function rowNumbers(form: SentForm): ReadonlyMap<string, readonly number[]> {
  const byList = new Map<string, Set<number>>();
  for (const key of form.keys()) {
    const [, list = "", number = ""] = /^(\w{1,40})\.(\d{1,9})\.\w/.exec(key) ?? [];
    if (list === "") continue;
    const numbers = byList.get(list) ?? new Set();
    byList.set(list, numbers.add(Number(number)));
  }
  return new Map([...byList].map(([list, numbers]) => [list, [...numbers].sort((a, b) => a - b)]));
}

/** @param at  the path of the fields in the record, and `sentAt` in the form, each with its point, or empty */
function readFields(fields: readonly FormField[], at: string, sentAt: string, sent: Sent): Record<string, unknown> {
  const record: Record<string, unknown> = {};
  for (const field of fields) {
    const value = readField(field, at, sentAt, sent);
    if (value !== undefined) record[field.name] = value;
  }
  return record;
}

function readField({ name, control, required, hint }: FormField, at: string, sentAt: string, sent: Sent): unknown {
  const typed = textOf(sent.form.get(sentAt + name));
  if (control.kind === "hidden") return typed;
  if (control.kind === "lines") return readRows(name, control, sent);
  if (control.kind === "days") return readDays(sent.form.getAll(sentAt + name));
  if (isBlank(control, typed)) {
    if (required) sent.faults.push({ field: at + name, message: missing(control.kind, hint) });
    return undefined;
  }
  const outcome = readControl(control, typed, sent.currency);
  if ("value" in outcome) return outcome.value;
  sent.faults.push({ field: at + name, message: outcome.fault });
  return typed;
}

/** An id may be made of spaces; nothing else that is typed can. */
const isBlank = ({ kind }: Control, typed: string): boolean =>
  (kind === "reference" || kind === "choice" ? typed : withoutEnds(typed)) === "";

const textOf = (value: unknown): string => (typeof value === "string" ? value : "");

type Plain = Exclude<Control["kind"], "hidden" | "lines" | "days">;

const MISSING: Readonly<Record<Plain, string>> = {
  text: "is needed; write it here",
  amount: "is needed; write a number and a unit, as 250 g",
  money: "is needed; write an amount of money, as 8.40",
  percent: "is needed; write a percent, as 2.5",
  "percent or rest": "is needed; write a percent, as 2.5, or qs for what is left",
  number: "is needed; write a number, as 12.5",
  temperature: "is needed; write a temperature in °C, as 70",
  "whole number": "is needed; write a whole number, as 24",
  day: "is needed; write a date, as 2026-11-25",
  choice: "is needed; choose one",
  "yes or no": "is needed; choose one",
  reference: "is needed; choose one",
};

/** Where the field has an example of its own beside it, a second would only raise the question which is meant. */
function missing(kind: Plain, hint: string | undefined): string {
  const hasExample = hint !== undefined && /\bas \d/i.test(hint);
  return decimalTyped(hasExample ? MISSING[kind].replace(/, as [^,]*$/, "") : MISSING[kind]);
}

function readControl(
  control: Extract<Control, { readonly kind: Plain }>,
  typed: string,
  currency: CurrencyCode | undefined,
): Outcome<unknown> {
  switch (control.kind) {
    case "text":
      return { value: withoutEnds(control.isLong ? typed.replace(/\s*[\r\n]+\s*/gu, " ") : typed) };
    case "amount":
      return readTypedAmount(typed);
    case "money":
      return readTypedMoney(typed, currency);
    case "percent":
      return readTypedPercent(typed);
    case "percent or rest":
      return readTypedPercentOrRest(typed);
    case "number":
      return readTypedNumberUpTo(typed, control.atMost ?? Infinity);
    case "temperature":
      return readTypedTemperature(typed);
    case "whole number":
      return readTypedWholeNumber(typed);
    case "day":
      return readTypedDay(typed, control.monthAlone);
    case "yes or no":
      return { value: typed === "yes" || typed === "on" ? true : typed };
    case "choice":
      return control.options.some((option) => option.value === typed)
        ? { value: typed }
        : { fault: "is none of the choices; choose one of them" };
    // Chosen from what the page offers: an id keeps every space of its own.
    case "reference":
      return { value: typed };
  }
}

function readTypedNumberUpTo(typed: string, most: number): Outcome<string> {
  const number = readTypedNumber(typed);
  return "value" in number && Number(number.value) > most ? { fault: `must be at most ${countShown(most)}` } : number;
}

/** Dates apart by lines, commas or semicolons, or by spaces where the next begins with its year. */
function readDays(values: readonly unknown[]): readonly string[] | undefined {
  const days = values
    .flatMap((value) => textOf(value).split(/[\n\r,;]+|[^\S\n\r]+(?=\d{4}-\d)/))
    .map(withoutEnds)
    .filter((day) => day !== "")
    .map((day) => {
      const outcome = readTypedDay(day, "refused");
      return "value" in outcome ? outcome.value : day;
    });
  return days.length === 0 ? undefined : days;
}

function readRows(list: string, control: Extract<Control, { readonly kind: "lines" }>, sent: Sent): unknown {
  const { fields, least } = control;
  const written = (sent.numbers.get(list) ?? []).filter((number) =>
    fields.some(({ name, control }) => !isBlank(control, textOf(sent.form.get(`${list}.${String(number)}.${name}`)))),
  );
  sent.rows[list] = written;
  if (written.length === 0) return least === 0 ? undefined : [];
  return written.map((number, at) => readFields(fields, `${list}[${String(at)}].`, `${list}.${String(number)}.`, sent));
}

/** The values of a record's form, by the names under which they are sent; what the record leaves out is empty. */
export const formFromRecord = (kind: FormKind, record: TypedRecord): Readonly<Record<string, string>> =>
  valuesOf(RECORD_FORMS[kind], record, "");

function valuesOf(fields: readonly FormField[], record: TypedRecord, at: string): Record<string, string> {
  const values: Record<string, string> = {};
  for (const { name, control } of fields) {
    const value = record[name];
    if (control.kind !== "lines") {
      values[at + name] = WITH_DECIMALS.has(control.kind) ? decimalTyped(shownValue(value)) : shownValue(value);
      continue;
    }
    const rows: readonly unknown[] = Array.isArray(value) ? value : [];
    rows.forEach((row, number) => {
      const fields = typeof row === "object" && row !== null ? (row as TypedRecord) : {};
      Object.assign(values, valuesOf(control.fields, fields, `${name}.${String(number)}.`));
    });
  }
  return values;
}

/** Fields of numbers, which are read back by the notation's decimal mark. @rule SHOW-1 */
const WITH_DECIMALS: ReadonlySet<Control["kind"]> = new Set([
  "amount",
  "money",
  "percent",
  "percent or rest",
  "number",
  "temperature",
]);

function shownValue(value: unknown): string {
  if (value === true) return "yes";
  if (typeof value === "number" || typeof value === "string") return String(value);
  return Array.isArray(value) ? value.map(shownValue).join("\n") : "";
}
