import type { KeptBalance } from "@/lib/domain/ledger/audit";
import type { LotName, PlaceKind } from "@/lib/domain/ledger/posting";
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
