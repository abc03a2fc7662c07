/** What the ledger answers, one statement a question. Every question names the index that answers it. */
import { type Day, dayOf, isoDate } from "@/lib/domain/calendar";
import type { SinceCounted } from "@/lib/domain/ledger/counts-due";
import type { LotName, PlaceKind, Posted } from "@/lib/domain/ledger/posting";
import { type Standing, standingAfter } from "@/lib/domain/ledger/standing";
import type { PlaceTotal } from "@/lib/domain/ledger/valuation";
import type { Sql } from "@/lib/store/connection";
import { ADDED_UP, ENTRY_CELLS, movesOfText, postingsOfText, valueOf } from "./posting-rows";

/** A question whose answer is one text. */
async function asked(sql: Sql, question: string, ...values: readonly string[]): Promise<string> {
  const [[answer] = []] = await sql.rows(question, ...values);
  return String(answer);
}

const lotCells = (lots: readonly LotName[]): string => JSON.stringify(lots.map(({ of, id }) => [of, id]));

/** What stands of these lots, at the end of every day. By (of, lot, place, run, day). */
export async function standingOf(sql: Sql, lots: readonly LotName[]): Promise<Standing> {
  const text = await asked(
    sql,
    `SELECT json_group_array(json_array("day", ${ENTRY_CELLS})) FROM (
       SELECT e."day", e."of", e."lot", e."place", e."run", ${ADDED_UP.replaceAll('sum("', 'sum(e."')}
       FROM json_each(?) named CROSS JOIN "entries" e ON e."of" = named."value" ->> 0 AND e."lot" = named."value" ->> 1
       GROUP BY e."of", e."lot", e."place", e."run", e."day")`,
    lotCells(lots),
  );
  return standingAfter(movesOfText(text));
}

/** Postings with all their entries, in the order of posting. `chosen` selects their numbers. */
async function postingsWhere(sql: Sql, chosen: string, ...values: readonly string[]): Promise<readonly Posted[]> {
  const text = await asked(
    sql,
    `SELECT json_group_array(json_array("sequence", "id", "kind", "day", "reason", "reverses", json("entries"))) FROM (
       SELECT p.*, (SELECT json_group_array(json_array(${ENTRY_CELLS})) FROM
         (SELECT ${ENTRY_CELLS} FROM "entries" e WHERE e."posting" = p."sequence" ORDER BY e."position")) AS "entries"
       FROM "postings" p WHERE p."sequence" IN (${chosen}) ORDER BY p."sequence")`,
    ...values,
  );
  return postingsOfText(text);
}

/** Every posting that touches one of these lots. By (of, lot, place, run, day). */
export const postingsOfLots = (sql: Sql, lots: readonly LotName[]): Promise<readonly Posted[]> =>
  postingsWhere(
    sql,
    `SELECT e."posting" FROM json_each(?) named CROSS JOIN "entries" e
       ON e."of" = named."value" ->> 0 AND e."lot" = named."value" ->> 1`,
    lotCells(lots),
  );

/** Every posting that touches one of these batches. By (run, posting). */
export const postingsOfRuns = (sql: Sql, runs: readonly string[]): Promise<readonly Posted[]> =>
  postingsWhere(
    sql,
    `SELECT e."posting" FROM json_each(?) named CROSS JOIN "entries" e ON e."run" = named."value" AND e."run" <> ''`,
    JSON.stringify(runs),
  );

/** The postings of a day. By (day). */
export const postingsOfDay = (sql: Sql, day: Day): Promise<readonly Posted[]> =>
  postingsWhere(sql, `SELECT "sequence" FROM "postings" WHERE "day" = ?`, isoDate(day));

export const allPostings = (sql: Sql): Promise<readonly Posted[]> =>
  postingsWhere(sql, `SELECT "sequence" FROM "postings"`);

/** The posting with this key, or null. By its id. */
export async function postingNamed(sql: Sql, id: string): Promise<Posted | null> {
  const [posting] = await postingsWhere(sql, `SELECT "sequence" FROM "postings" WHERE "id" = ?`, id);
  return posting ?? null;
}

/** The posting that takes this one back, or null. By what it reverses. */
export async function reversalOf(sql: Sql, id: string): Promise<Posted | null> {
  const [posting] = await postingsWhere(sql, `SELECT "sequence" FROM "postings" WHERE "reverses" = ?`, id);
  return posting ?? null;
}

/** The runs whose batches took of these lots or gave them. By (of, lot, place, run, day). */
export async function runsOfLots(sql: Sql, lots: readonly LotName[]): Promise<readonly string[]> {
  const text = await asked(
    sql,
    `SELECT json_group_array("run") FROM (SELECT DISTINCT e."run" FROM json_each(?) named CROSS JOIN "entries" e
       ON e."of" = named."value" ->> 0 AND e."lot" = named."value" ->> 1 AND e."place" = 'batch')`,
    lotCells(lots),
  );
  return JSON.parse(text) as readonly string[];
}

/** What the entries of each kind of place come to, on the days from one to another. By (of, place, day) of the day's totals. */
export async function placeTotalsBetween(
  sql: Sql,
  places: readonly PlaceKind[],
  from: Day | null,
  to: Day,
): Promise<readonly PlaceTotal[]> {
  const rows = await sql.rows(
    `SELECT "of", "place", sum("materials"), sum("labour"), sum("overhead") FROM "day_totals"
     WHERE "of" IN ('material', 'finished') AND "place" IN (SELECT "value" FROM json_each(?)) AND "day" BETWEEN ? AND ?
     GROUP BY "of", "place"`,
    JSON.stringify(places),
    from === null ? "" : isoDate(from),
    isoDate(to),
  );
  return rows.map(([of, place, ...figures]) => ({
    of: of as LotName["of"],
    place: place as PlaceKind,
    value: valueOf(figures.map((figure) => BigInt(String(figure)))),
  }));
}

/** So many postings after one, in the order of posting. */
export const postingsFrom = (sql: Sql, after: number, most: number): Promise<readonly Posted[]> =>
  postingsWhere(
    sql,
    `SELECT "sequence" FROM (SELECT "sequence" FROM "postings" WHERE "sequence" > CAST(? AS INTEGER)
       ORDER BY "sequence" LIMIT CAST(? AS INTEGER))`,
    String(after),
    String(most),
  );

/** The lots of a material, those struck off the list with them. By (material). */
export async function lotsOfMaterial(sql: Sql, material: string): Promise<readonly string[]> {
  const rows = await sql.rows(`SELECT "id" FROM "lots" WHERE "material" = ?`, material);
  return rows.map(([id]) => String(id));
}

const ISO_LENGTH = "2026-11-25".length;

/** Where a posting stands in the order of days, and of posting within a day, as text that sorts so. */
const TURN = `p."day" || printf('%016d', p."sequence")`;
const STANDS = `NOT EXISTS (SELECT 1 FROM "postings" r WHERE r."reverses" = p."id")`;
const OF_ITS_LOTS = `FROM "lots" l CROSS JOIN "entries" e ON e."of" = 'material' AND e."lot" = l."id"`;

/**
 * What there is to know of these materials since each was last counted; of one that the ledger never met, nothing.
 * By (material) of the lots and (of, lot, place, run, day). @rule LEDGER-25
 */
export async function sinceCounted(sql: Sql, materials: readonly string[]): Promise<ReadonlyMap<string, SinceCounted>> {
  const rows = await sql.rows(
    `SELECT "material", "counted", "first",
       (SELECT count(DISTINCT p."sequence") ${OF_ITS_LOTS} AND e."place" = 'batch' AND e."quantity" > 0
          JOIN "postings" p ON p."sequence" = e."posting"
        WHERE l."material" = "named"."material" AND p."kind" = 'made' AND ${STANDS} AND ${TURN} > coalesce("counted", ''))
     FROM (
       SELECT "value" AS "material",
         (SELECT max(${TURN}) ${OF_ITS_LOTS} AND e."place" = 'counted'
            JOIN "postings" p ON p."sequence" = e."posting"
          WHERE l."material" = "value" AND p."kind" = 'counted' AND ${STANDS}) AS "counted",
         (SELECT min(e."day") ${OF_ITS_LOTS} WHERE l."material" = "value") AS "first"
       FROM json_each(?)) "named"`,
    JSON.stringify(materials),
  );
  return new Map(
    rows.map(([material, counted, first, draws]) => {
      const countedOn = typeof counted === "string" ? dayOf(counted.slice(0, ISO_LENGTH)) : null;
      const since = countedOn ?? (typeof first === "string" ? dayOf(first) : null);
      return [String(material), { countedOn, since, draws: Number(draws) }];
    }),
  );
}
