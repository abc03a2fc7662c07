/**
 * How a value of the domain lies in a column of a table, and how a whole table is written and read in one statement:
 * as one JSON text, which SQLite takes apart and puts together. Whole numbers go in as text and are cast, so that
 * nothing on the way rounds them; none is above 2^53 − 1, so that they come out exactly. @rule QTY-6
 */
import { type Day, dayOf, isoDate } from "@/lib/domain/calendar";
import type { Amount, Measured, Stock, Unit } from "@/lib/domain/quantity";

/** What JSON carries of one cell. */
export type Cell = string | number | null;

export interface Column<T> {
  readonly affinity: "TEXT" | "INTEGER";
  readonly write: (value: T) => Cell;
  readonly read: (cell: Cell) => T;
}

/** A text that needs no reading: an id, a name, a word of a few, a decimal as typed. */
export const text = <T extends string>(): Column<T> => ({
  affinity: "TEXT",
  write: (value) => value,
  read: (cell) => cell as T,
});

/** A small whole number: days, a sequence, a place in a list. */
export const small: Column<number> = { affinity: "INTEGER", write: (value) => value, read: (cell) => cell as number };

/** A whole number of a unit. */
export const whole = <Q extends bigint>(): Column<Q> => ({
  affinity: "INTEGER",
  write: (value) => value.toString(),
  read: (cell) => BigInt(cell as number) as Q,
});

export const flag: Column<boolean> = {
  affinity: "INTEGER",
  write: (value) => (value ? 1 : 0),
  read: (cell) => cell === 1,
};

export const day: Column<Day> = {
  affinity: "TEXT",
  write: isoDate,
  read: (cell) => {
    const value = dayOf(cell as string);
    if (value === null) throw new Error(`the store holds "${String(cell)}" where a day belongs`);
    return value;
  },
};

export const orNull = <T>(column: Column<T>): Column<T | null> => ({
  affinity: column.affinity,
  write: (value) => (value === null ? null : column.write(value)),
  read: (cell) => (cell === null ? null : column.read(cell)),
});

/** The three columns of a measured amount: what it comes to, and what was typed. */
export interface MeasuredCells<Q extends Stock> {
  readonly quantity: Q;
  readonly number: Amount["number"];
  readonly unit: Unit;
}

export const measuredOf = <Q extends Stock>({ quantity, number, unit }: MeasuredCells<Q>): Measured<Q> => ({
  typed: { number, unit },
  quantity,
});

/** A measured amount that may be absent: all three cells are null, or none (a CHECK holds it). */
export const measuredOrNull = <Q extends Stock>(
  quantity: Q | null,
  number: Amount["number"] | null,
  unit: Unit | null,
): Measured<Q> | null =>
  quantity === null || number === null || unit === null ? null : measuredOf({ quantity, number, unit });

export interface Table<Row> {
  readonly name: string;
  /** Takes one JSON text, a list of rows, each a list of cells. */
  readonly insert: string;
  /** Gives the rows as one JSON text, in the order of the list. */
  readonly select: string;
  readonly cellsOf: (row: Row) => readonly Cell[];
  readonly rowOf: (cells: readonly Cell[]) => Row;
}

/**
 * A table by its name, its columns and the columns that order it. The columns' names are fixed here in the program:
 * nothing that a person typed ever becomes part of a statement.
 */
export function table<Row extends object>(
  name: string,
  columns: { readonly [Key in keyof Row]: Column<Row[Key]> },
  orderedBy: readonly (keyof Row & string)[],
): Table<Row> {
  const known = Object.entries(columns) as unknown as readonly [keyof Row & string, Column<unknown>][];
  const names = known.map(([column]) => `"${column}"`).join(", ");
  const values = known.map(([, { affinity }], index) => {
    const cell = `value ->> ${String(index)}`;
    return affinity === "INTEGER" ? `CAST(${cell} AS INTEGER)` : cell;
  });
  const order = orderedBy.map((column) => `"${column}"`).join(", ");
  return {
    name,
    insert: `INSERT INTO "${name}" (${names}) SELECT ${values.join(", ")} FROM json_each(?)`,
    select: `SELECT json_group_array(json_array(${names})) FROM (SELECT ${names} FROM "${name}" ORDER BY ${order})`,
    cellsOf: (row) => known.map(([column, { write }]) => write(row[column])),
    rowOf: (cells) =>
      Object.fromEntries(known.map(([column, { read }], index) => [column, read(cells[index] ?? null)])) as Row,
  };
}
