/** What a form is made of, as data: screens draw it, and form-reading.ts reads what was typed by it. */

/** The lists of the workshop whose records have an id, named as in the file. */
export const RECORD_LISTS = [
  "suppliers",
  "materials",
  "offers",
  "lots",
  "orders",
  "formulas",
  "products",
  "runs",
  "finished",
  "labels",
  "papers",
] as const;
export type RecordList = (typeof RECORD_LISTS)[number];

/** How one of a record is called in a sentence. */
export const CALLED: Readonly<Record<RecordList, string>> = {
  suppliers: "supplier",
  materials: "material",
  offers: "offer",
  lots: "lot",
  orders: "order",
  formulas: "formula",
  products: "product",
  runs: "run",
  finished: "finished lot",
  labels: "label",
  papers: "label sheet",
};

export interface Option {
  /** As the file writes it. */
  readonly value: string;
  readonly label: string;
}

export type Control =
  /** Made when the form is drawn and sent back as it was. */
  | { readonly kind: "hidden" }
  /** Words; long ones are a few lines on the screen, and one line as kept. */
  | { readonly kind: "text"; readonly isLong?: true }
  /** A number and one of the units. */
  | { readonly kind: "amount" }
  | { readonly kind: "money" }
  | { readonly kind: "percent" }
  /** A percent, or `qs`. */
  | { readonly kind: "percent or rest" }
  /** A number without a unit of its own; the field's hint says which it is in. */
  | { readonly kind: "number"; readonly atMost?: number }
  /** °C, or another scale with its sign. */
  | { readonly kind: "temperature" }
  | { readonly kind: "whole number" }
  | { readonly kind: "day"; readonly monthAlone: "its last day" | "refused" }
  /** One date a line. */
  | { readonly kind: "days" }
  | { readonly kind: "choice"; readonly options: readonly Option[] }
  /** Sent as `yes`, or not at all. */
  | { readonly kind: "yes or no" }
  | { readonly kind: "reference"; readonly to: RecordList }
  /** Rows of fields, sent as `lines.0.percent`; rows in which nothing is written are left out. */
  | {
      readonly kind: "lines";
      readonly fields: readonly FormField[];
      readonly least: 0 | 1;
      /** What one row is called, where a form has several lists of rows. */
      readonly called?: string;
    };

export interface FormField {
  /** The key in the file. */
  readonly name: string;
  readonly label: string;
  readonly control: Control;
  /** The unit that stands beside the field, as `g/mL`. */
  readonly unit?: string;
  readonly hint?: string;
  /** What it is called where nothing is chosen. */
  readonly none?: string;
  readonly required: boolean;
}

type Words = Partial<Pick<FormField, "unit" | "hint" | "none">>;

export const needed = (name: string, label: string, control: Control, words: Words = {}): FormField => ({
  name,
  label,
  control,
  required: true,
  ...words,
});

export const optional = (name: string, label: string, control: Control, words: Words = {}): FormField => ({
  ...needed(name, label, control, words),
  required: false,
});

export const TEXT: Control = { kind: "text" };
export const LONG_TEXT: Control = { kind: "text", isLong: true };
export const AMOUNT: Control = { kind: "amount" };
export const MONEY: Control = { kind: "money" };
export const PERCENT: Control = { kind: "percent" };
export const NUMBER: Control = { kind: "number" };
/** Not more than a year of them: more was meant otherwise. */
export const MINUTES: Control = { kind: "number", atMost: 366 * 24 * 60 };
export const TEMPERATURE: Control = { kind: "temperature" };
export const WHOLE_NUMBER: Control = { kind: "whole number" };
export const DAY: Control = { kind: "day", monthAlone: "refused" };
/** The last day of use: a month on a pack means its last day. */
export const LAST_DAY_OF_USE: Control = { kind: "day", monthAlone: "its last day" };
export const DAYS: Control = { kind: "days" };
export const YES_OR_NO: Control = { kind: "yes or no" };

export const one = (to: RecordList): Control => ({ kind: "reference", to });
export const rows = (least: 0 | 1, ...fields: readonly FormField[]): Control => ({ kind: "lines", fields, least });
/** Rows that may be none, each called by a word of its own: `Step 1`. */
export const rowsCalled = (called: string, ...fields: readonly FormField[]): Control => ({
  kind: "lines",
  fields,
  least: 0,
  called,
});
export const choice = (labels: Readonly<Record<string, string>>): Control => ({
  kind: "choice",
  options: Object.entries(labels).map(([value, label]) => ({ value, label })),
});

/** Every record but the settings has one. */
export const ID: FormField = needed("id", "Id", { kind: "hidden" });
export const NAME: FormField = needed("name", "Name", TEXT);
