import { type Day, isoDate } from "@/lib/domain/calendar";
import type { KeptBalance, KeptDayTotal } from "@/lib/domain/ledger/audit";
import type { LotName, PlaceKind } from "@/lib/domain/ledger/posting";
import { day } from "@/lib/store/columns";
import type { Sql } from "@/lib/store/connection";
import { placeOf, valueOf } from "./posting-rows";

/** What the trigger keeps of what stands in these places. By (place). */
export async function balancesIn(sql: Sql, places: readonly PlaceKind[]): Promise<readonly KeptBalance[]> {
  const rows = await sql.rows(
    `SELECT "of", "lot", "place", "run", "quantity", "materials", "labour", "overhead" FROM "balances"
     WHERE "place" IN (SELECT "value" FROM json_each(?))`,
    JSON.stringify(places),
  );
  return rows.map(([of, lot, place, run, ...figures]) => {
    const [quantity, ...value] = figures.map((figure) => BigInt(String(figure)));
    return {
      lot: { of: of as LotName["of"], id: String(lot) },
      place: placeOf(place as PlaceKind, String(run)),
      quantity: quantity ?? 0n,
      value: valueOf(value),
    };
  });
}

/** A batch that is closed holds no value (LEDGER-23): one that held some on a day holds some still, or something moved in it since. */
const OPEN_THEN = `"run" IN (SELECT "run" FROM "balances" WHERE "place" = 'batch' GROUP BY "run"
    HAVING sum("materials") <> 0 OR sum("labour") <> 0 OR sum("overhead") <> 0)
  OR "run" IN (SELECT e."run" FROM "postings" p JOIN "entries" e ON e."posting" = p."sequence"
    WHERE p."day" > ? AND e."place" = 'batch')`;

/**
 * What stood in these places at the end of a day: what stands now less what moved later. Of batches only those that
 * were open then are looked at. By (place), and for the later entries of each by (of, lot, place, run, day).
 */
export async function stoodOn(sql: Sql, places: readonly PlaceKind[], on: Day): Promise<readonly KeptBalance[]> {
  const rows = await sql.rows(
    `SELECT "of", "lot", "place", "run", "quantity", "materials", "labour", "overhead",
       (SELECT format('%d %d %d %d', sum(e."quantity"), sum(e."materials"), sum(e."labour"), sum(e."overhead"))
        FROM "entries" e WHERE e."of" = b."of" AND e."lot" = b."lot" AND e."place" = b."place" AND e."run" = b."run"
          AND e."day" > ?)
     FROM "balances" b
     WHERE "place" IN (SELECT "value" FROM json_each(?)) AND ("place" <> 'batch' OR ${OPEN_THEN})`,
    isoDate(on),
    JSON.stringify(places),
    isoDate(on),
  );
  return rows.map(([of, lot, place, run, ...figures]) => {
    const later = String(figures.pop()).split(" ").map(BigInt);
    const [quantity, ...value] = figures.map((figure, at) => BigInt(String(figure)) - (later[at] ?? 0n));
    return {
      lot: { of: of as LotName["of"], id: String(lot) },
      place: placeOf(place as PlaceKind, String(run)),
      quantity: quantity ?? 0n,
      value: valueOf(value),
    };
  });
}

/** What the trigger keeps of the value that moved in each kind of place on each day. */
export async function dayTotalsIn(sql: Sql): Promise<readonly KeptDayTotal[]> {
  const rows = await sql.rows(`SELECT "of", "place", "day", "materials", "labour", "overhead" FROM "day_totals"`);
  return rows.map(([of, place, on, ...figures]) => ({
    of: of as LotName["of"],
    place: place as PlaceKind,
    day: day.read(String(on)),
    value: valueOf(figures.map((figure) => BigInt(String(figure)))),
  }));
}
