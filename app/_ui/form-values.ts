/**
 * What stands in a form's fields, by the names under which they are sent, and what a button that only rearranges them
 * makes of it. The same functions run in the browser and, where it runs no scripts, on the server.
 */
export type FormValues = Readonly<Record<string, string>>;

/** So many empty rows are there under the written ones, of which one is seen. */
const SPARE_ROWS = 3;

/** `name`, or `lines.4.percent`: nothing else is sent by these forms. */
const FIELD_NAME = /^[A-Za-z]{1,40}(\.\d{1,6}\.[A-Za-z]{1,40})?$/;

export function valuesOfForm(form: FormData): FormValues {
  const values: Record<string, string> = {};
  for (const [name, value] of form) if (typeof value === "string" && FIELD_NAME.test(name)) values[name] = value;
  return values;
}

/** The rows of a list in their order, those in which nothing is written included. */
export function rowsOf(values: FormValues, list: string): readonly FormValues[] {
  const byNumber = new Map<number, Record<string, string>>();
  for (const [key, value] of Object.entries(values)) {
    if (!key.startsWith(`${list}.`)) continue;
    const [, number = "", field = ""] = key.split(".");
    const row = byNumber.get(Number(number)) ?? {};
    byNumber.set(Number(number), Object.assign(row, { [field]: value }));
  }
  return [...byNumber].sort(([a], [b]) => a - b).map(([, row]) => row);
}

export function withRows(values: FormValues, list: string, rows: readonly FormValues[]): FormValues {
  const others = Object.entries(values).filter(([key]) => !key.startsWith(`${list}.`));
  const named = rows.flatMap((row, at) =>
    Object.entries(row).map(([field, value]) => [`${list}.${String(at)}.${field}`, value] as const),
  );
  return Object.fromEntries([...others, ...named]);
}

export const isWritten = (row: FormValues): boolean => Object.values(row).some((value) => value.trim() !== "");

const writtenOf = (rows: readonly FormValues[]): number => rows.findLastIndex(isWritten) + 1;

/** How many rows of a list are drawn: those there are, and at the end some in which nothing is written. */
export function rowsDrawn(values: FormValues, list: string): number {
  const rows = rowsOf(values, list);
  return Math.max(rows.length, writtenOf(rows) + SPARE_ROWS);
}

/**
 * From which row on a row stands by only for when those before it are written in. One empty row is seen, and as many
 * more as were asked for; the style sheet shows the next as soon as something stands in the one before.
 */
export function firstSpare(values: FormValues, list: string): number {
  const drawn = rowsDrawn(values, list);
  return drawn - SPARE_ROWS + 1;
}

/** What a form is drawn with. */
export interface Drawn {
  readonly values: FormValues;
  /** A remark under a field, by the field's name. */
  readonly notes: Readonly<Record<string, string>>;
  /** The name of the field or button that is to have the focus. */
  readonly focus: string | null;
}

/** A button that rearranges a form: its first word, then what it is about. */
export type Rearrange = (values: FormValues, about: readonly string[]) => Drawn;

const drawn = (values: FormValues, focus: string): Drawn => ({ values, notes: {}, focus });

const moved =
  (by: -1 | 1): Rearrange =>
  (values, [list = "", at = ""]) => {
    const rows = [...rowsOf(values, list)];
    const [from, to] = [Number(at), Number(at) + by];
    const [row, other] = [rows[from], rows[to]];
    if (row !== undefined && other !== undefined) [rows[from], rows[to]] = [other, row];
    return drawn(withRows(values, list, rows), `${by < 0 ? "up" : "down"} ${list} ${String(to)}`);
  };

/** `rows lines`, `out lines 2`, `up lines 2`, `down lines 2`, `fill density 1.26`. */
export const REARRANGED: Readonly<Record<string, Rearrange>> = {
  rows: (values, [list = "", field = ""]) => {
    const rows = rowsOf(values, list);
    const seen = Math.min(rows.length, firstSpare(values, list));
    const all = rowsDrawn(values, list) + (seen > writtenOf(rows) ? 1 : 0);
    const empty = Array.from({ length: all - rows.length }, () => ({ [field]: "" }));
    return drawn(withRows(values, list, [...rows, ...empty]), `${list}.${String(seen)}.${field}`);
  },
  out: (values, [list = "", at = ""]) => {
    const rows = rowsOf(values, list).filter((_, number) => number !== Number(at));
    return drawn(withRows(values, list, rows), `out ${list} ${at}`);
  },
  up: moved(-1),
  down: moved(1),
  fill: (values, [field = "", ...words]) => drawn({ ...values, [field]: words.join(" ") }, field),
};

/** What a button makes of the fields, or null where it is one that sends them. */
export function rearranged(
  values: FormValues,
  deed: string,
  further: Readonly<Record<string, Rearrange>> = {},
): Drawn | null {
  const [word = "", ...about] = deed.split(" ");
  const known = Object.hasOwn(further, word)
    ? further[word]
    : Object.hasOwn(REARRANGED, word)
      ? REARRANGED[word]
      : null;
  return known?.(values, about) ?? null;
}
