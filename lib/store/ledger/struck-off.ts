/** Lots that the postings name and no list shows: they have no position. */
import type { StruckOffLot } from "@/lib/domain/ledger/past";
import { day } from "@/lib/store/columns";
import type { Sql } from "@/lib/store/connection";

export async function struckOffIn(sql: Sql): Promise<readonly StruckOffLot[]> {
  const rows = await sql.rows(
    `SELECT 'material' AS "of", "id", "received", "expires", "material" FROM "lots" WHERE "position" IS NULL
     UNION ALL SELECT 'finished', "id", "made", "bestBefore", "product" FROM "finished_lots" WHERE "position" IS NULL
     ORDER BY "of" DESC, "id"`,
  );
  return rows.map(([of, id, since, expires, item]) => ({
    lot: { of: of === "material" ? "material" : "finished", id: String(id) },
    item: typeof item === "string" ? item : null,
    since: day.read(String(since)),
    expires: typeof expires === "string" ? day.read(expires) : null,
  }));
}

/** Puts lots that no list shows into the store, so that postings may name them. */
export async function keepStruckOff(sql: Sql, lots: readonly StruckOffLot[]): Promise<void> {
  for (const { of, insert } of STRUCK_OFF) {
    const own = lots.filter(({ lot }) => lot.of === of);
    if (own.length > 0) await sql.run(insert, JSON.stringify(own.map(struckOffCells)));
  }
}

const STRUCK_OFF = [
  { of: "material", columns: `"lots" ("id", "position", "material", "received", "expires")` },
  { of: "finished", columns: `"finished_lots" ("id", "position", "product", "made", "bestBefore")` },
].map(({ of, columns }) => ({
  of,
  insert: `INSERT INTO ${columns} SELECT "value" ->> 0, NULL, "value" ->> 1, "value" ->> 2, "value" ->> 3 FROM json_each(?)`,
}));

const struckOffCells = ({ lot, item, since, expires }: StruckOffLot) => [
  lot.id,
  item,
  day.write(since),
  expires === null ? null : day.write(expires),
];
