/**
 * How a value of the domain lies in a column of a table, and how a whole table is written and read in one statement:
 * as one JSON text, which SQLite takes apart and puts together. A whole number is not above 2^53 − 1, so that a number
 * of JSON carries it exactly; one that would be rounded comes out above that, and its column's CHECK refuses it.
 * @rule QTY-6
 */
import { type Day, dayOf, isoDate } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
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
  write: Number,
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
  /** Takes rows off. Takes one JSON text: a list of rows, of which only what orders them is looked at. */
  readonly remove: string;
  /** Run once everything is inserted and what was decided is posted. */
  readonly tidy: readonly string[];
  /** Takes one JSON text: a list of rows, each a list of cells. */
  readonly insert: string;
  /** Gives the rows as such a text, in the order of the list. */
  readonly select: string;
  /** The text that `insert` takes: for rows that are kept already the very text that `select` gives. */
  readonly textOf: (rows: readonly Row[]) => string;
  readonly rowsOf: (text: string) => readonly Row[];
}

/** The table of a kind of lot: the ledger names them by their ids, and each names what it is a lot of. */
export interface KeptFor {
  readonly lots: "material" | "finished";
  readonly column: string;
  readonly items: string;
}

/**
 * A table by its name, its columns and the columns that order it. The columns' names are fixed here in the program:
 * nothing that a person typed ever becomes part of a statement.
 * @param keptFor  for the lots that the ledger names: a row that is taken off is struck off the list, and goes only
 *                 where nothing was posted of it
 */
export function table<Row extends object>(
  name: string,
  columns: { readonly [Key in keyof Row]: Column<Row[Key]> },
  orderedBy: readonly (keyof Row & string)[],
  keptFor: KeptFor | null = null,
): Table<Row> {
  const known = Object.entries(columns) as unknown as readonly [keyof Row & string, Column<unknown>][];
  const names = known.map(([column]) => `"${column}"`).join(", ");
  const values = known.map(([, { affinity }], index) => {
    const cell = `value ->> ${String(index)}`;
    return affinity === "INTEGER" ? `CAST(${cell} AS INTEGER)` : cell;
  });
  const inOrder = (a: Row, b: Row): number =>
    orderedBy.reduce((so, column) => so || compareKeys(a[column], b[column]), 0);
  const order = orderedBy.map((column) => `"${column}"`).join(", ");
  // What orders the rows tells each from the others.
  const orderCells = orderedBy.map((column) => `"value" ->> ${String(known.findIndex(([key]) => key === column))}`);
  const insert = `INSERT INTO "${name}" (${names}) SELECT ${values.join(", ")} FROM json_each(?)`;
  const again = known.map(([column]) => `"${column}" = excluded."${column}"`).join(", ");
  return {
    name,
    remove: `${keptFor === null ? `DELETE FROM "${name}"` : `UPDATE "${name}" SET "position" = NULL`}
      WHERE (${order}) IN (SELECT ${orderCells.join(", ")} FROM json_each(?))`,
    insert: keptFor === null ? insert : `${insert} WHERE true ON CONFLICT ("id") DO UPDATE SET ${again}`,
    tidy: keptFor === null ? [] : tidied(name, keptFor),
    select: `SELECT json_group_array(json_array(${names})) FROM
      (SELECT ${names} FROM "${name}" ${keptFor === null ? "" : 'WHERE "position" IS NOT NULL'} ORDER BY ${order})`,
    textOf: (rows) =>
      JSON.stringify(rows.toSorted(inOrder).map((row) => known.map(([column, { write }]) => write(row[column])))),
    rowsOf: rowsOnce((cells) => {
      const row: Partial<Record<keyof Row, unknown>> = {};
      known.forEach(([column, { read }], index) => (row[column] = read(cells[index] ?? null)));
      return row as Row;
    }),
  };
}

/** Reads the rows of a text. One that reads as the row did that stood in its place before is that very row. */
function rowsOnce<Row>(rowOf: (cells: readonly Cell[]) => Row): (text: string) => readonly Row[] {
  let last: { readonly cells: readonly (readonly Cell[])[]; readonly rows: readonly Row[] } = { cells: [], rows: [] };
  return (text) => {
    const cells = JSON.parse(text) as Cell[][];
    const rows = cells.map((own, at) => {
      const known = last.rows[at];
      return known !== undefined && areAlike(own, last.cells[at]) ? known : rowOf(own);
    });
    last = { cells, rows };
    return rows;
  };
}

/** Whether two rows of a table have the same cells. */
export const areAlike = (one: readonly Cell[] | undefined, other: readonly Cell[] | undefined): boolean =>
  one !== undefined && other !== undefined && one.every((cell, at) => cell === other[at]);

/** Of the lots struck off, those of which nothing was posted go; the others forget a material that was removed. */
const tidied = (name: string, { lots, column, items }: KeptFor): readonly string[] => [
  `DELETE FROM "${name}" WHERE "position" IS NULL AND NOT EXISTS
     (SELECT 1 FROM "balances" b WHERE b."of" = '${lots}' AND b."lot" = "${name}"."id")`,
  `UPDATE "${name}" SET "${column}" = NULL WHERE "position" IS NULL AND "${column}" IS NOT NULL
     AND NOT EXISTS (SELECT 1 FROM "${items}" i WHERE i."id" = "${name}"."${column}")`,
];

/** As SQLite orders them: numbers by size, texts by code point. */
const compareKeys = (a: unknown, b: unknown): number =>
  typeof a === "number" && typeof b === "number" ? a - b : byCodePoint(String(a), String(b));
