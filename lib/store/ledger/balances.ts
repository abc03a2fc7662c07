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

export type StoodThere = Pick<KeptBalance, "lot" | "place" | "quantity">;

/**
 * What stood in these places at the end of a day: what stands now less what moved later. By (place), and for the later
 * entries of each by (of, lot, place, run, day).
 */
export async function stoodOn(sql: Sql, places: readonly PlaceKind[], on: Day): Promise<readonly StoodThere[]> {
  const rows = await sql.rows(
    `SELECT "of", "lot", "place", "run", "quantity" - coalesce(
       (SELECT sum(e."quantity") FROM "entries" e WHERE e."of" = b."of" AND e."lot" = b."lot" AND e."place" = b."place"
          AND e."run" = b."run" AND e."day" > ?), 0)
     FROM "balances" b WHERE "place" IN (SELECT "value" FROM json_each(?))`,
    isoDate(on),
    JSON.stringify(places),
  );
  return rows.map(([of, lot, place, run, quantity]) => ({
    lot: { of: of as LotName["of"], id: String(lot) },
    place: placeOf(place as PlaceKind, String(run)),
    quantity: BigInt(String(quantity)),
  }));
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
