/** Postings and their entries as rows: each entry a list of cells, as the trigger that takes a posting apart reads them. */
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { Entry, LotName, Moved, Place, PlaceKind, Posted, Posting, Value } from "@/lib/domain/ledger/posting";
import type { Move } from "@/lib/domain/ledger/standing";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity } from "@/lib/domain/quantity";
import { type Cell, day } from "@/lib/store/columns";
import type { Sql } from "@/lib/store/connection";

/** Takes one JSON text: a list of postings. Each goes in with its entries, or the whole statement fails. */
const INSERT = `INSERT INTO "postings" ("id", "kind", "day", "reason", "reverses", "lines")
  SELECT "value" ->> 0, "value" ->> 1, "value" ->> 2, "value" ->> 3, "value" ->> 4, "value" -> 5
  FROM json_each(?) ORDER BY "key"`;

/** Posts, in their order. @throws where a posting is refused by the tables, and then none is there */
export const post = (sql: Sql, postings: readonly Posting[]): Promise<void> =>
  postings.length === 0 ? Promise.resolve() : sql.run(INSERT, JSON.stringify(postings.map(postingCells)));

const postingCells = ({ id, kind, day: on, reason, reverses, entries }: Posting): readonly unknown[] => [
  id,
  kind,
  isoDate(on),
  reason,
  reverses,
  entries.map(entryCells),
];

const entryCells = ({ lot, place, quantity: moved, value }: Entry): readonly Cell[] => [
  lot.of,
  lot.id,
  place.kind,
  place.kind === "batch" ? place.run : "",
  Number(moved),
  Number(value.materials),
  Number(value.labour),
  Number(value.overhead),
];

/** The columns of an entry in the order of its cells. */
export const ENTRY_CELLS = `"of", "lot", "place", "run", "quantity", "materials", "labour", "overhead"`;

/** The same, added up. */
export const ADDED_UP = `sum("quantity") AS "quantity", sum("materials") AS "materials", sum("labour") AS "labour",
  sum("overhead") AS "overhead"`;

export function entryOf(cells: readonly Cell[]): Entry {
  const [of, lot, place, run, ...figures] = cells;
  const [moved, ...value] = figures.map((figure) => BigInt(figure ?? 0));
  return {
    lot: { of: of as LotName["of"], id: String(lot) },
    place: placeOf(place as PlaceKind, String(run)),
    quantity: quantity<Moved>(moved ?? 0n),
    value: valueOf(value),
  };
}

export const placeOf = (kind: PlaceKind, run: string): Place => (kind === "batch" ? { kind, run } : { kind });

export const valueOf = ([materials, labour, overhead]: readonly bigint[]): Value => ({
  materials: quantity<MicroUnits>(materials ?? 0n),
  labour: quantity<MicroUnits>(labour ?? 0n),
  overhead: quantity<MicroUnits>(overhead ?? 0n),
});

/** Entries of one lot, place and day added up: the day first, then the cells of an entry. */
export const movesOfText = (text: string): readonly Move[] =>
  (JSON.parse(text) as Cell[][]).map(([on, ...cells]) => ({ ...entryOf(cells), day: dayIn(on) }));

/** A list of postings, each `[sequence, id, kind, day, reason, reverses, [entry, …]]`. */
export const postingsOfText = (text: string): readonly Posted[] =>
  (JSON.parse(text) as [number, string, Posted["kind"], string, string | null, string | null, Cell[][]][]).map(
    ([sequence, id, kind, on, reason, reverses, entries]) => ({
      sequence,
      id,
      kind,
      day: dayIn(on),
      reason,
      reverses,
      entries: entries.map(entryOf),
    }),
  );

const dayIn = (cell: Cell | undefined): Day => day.read(cell ?? null);
