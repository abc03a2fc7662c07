/** Receipts as rows: added with the posting that they belong to, and never changed. @rule ORDER-5 */
import type { LotReceived, Receipt } from "@/lib/domain/ledger/receipt";
import type { MicroUnits } from "@/lib/domain/money";
import { type Packs, quantity, type Stock } from "@/lib/domain/quantity";
import { day } from "@/lib/store/columns";
import type { Sql } from "@/lib/store/connection";

const COLUMNS = `"lot", "posting", "supplier", "offer", "order", "line", "packs", "paid"`;
const INSERT = `INSERT INTO "receipts" (${COLUMNS})
  SELECT "value" ->> 0, "value" ->> 1, "value" ->> 2, "value" ->> 3, "value" ->> 4, "value" ->> 5, "value" ->> 6, "value" ->> 7
  FROM json_each(?)`;

export const keepReceipts = (sql: Sql, receipts: readonly Receipt[]): Promise<void> =>
  receipts.length === 0 ? Promise.resolve() : sql.run(INSERT, JSON.stringify(receipts.map(receiptCells)));

const receiptCells = ({ lot, posting, supplier, offer, order, packs, paid }: Receipt) => [
  lot,
  posting,
  supplier,
  offer,
  order?.id ?? null,
  order === null ? null : order.line + 1,
  Number(packs),
  Number(paid),
];

/** Every receipt, in the order of the postings. */
export const allReceipts = (sql: Sql): Promise<readonly Receipt[]> => receiptsWhere(sql, "true");

export const receiptsOfPosting = (sql: Sql, posting: string): Promise<readonly Receipt[]> =>
  receiptsWhere(sql, `"posting" = ?`, posting);

/** Those of an order whose delivery was not taken back, with what came. */
export const lotsReceivedFor = (sql: Sql, order: string): Promise<readonly LotReceived[]> =>
  lotsReceivedWhere(sql, `r."order" = ?`, order);

/** Those of some materials, likewise. */
export const lotsReceivedOf = (sql: Sql, materials: readonly string[]): Promise<readonly LotReceived[]> =>
  lotsReceivedWhere(
    sql,
    `r."lot" IN (SELECT "id" FROM "lots" WHERE "material" IN (SELECT "value" FROM json_each(?)))`,
    JSON.stringify(materials),
  );

async function lotsReceivedWhere(sql: Sql, where: string, value: string): Promise<readonly LotReceived[]> {
  const rows = await sql.rows(
    `SELECT ${COLUMNS.split(", ")
      .map((name) => `r.${name}`)
      .join(", ")}, l."material", e."day", e."quantity", e."materials"
     FROM "receipts" r
     JOIN "lots" l ON l."id" = r."lot"
     JOIN "postings" p ON p."id" = r."posting"
     JOIN "entries" e ON e."posting" = p."sequence" AND e."of" = 'material' AND e."lot" = r."lot" AND e."place" = 'shelf'
     WHERE ${where} AND NOT EXISTS (SELECT 1 FROM "postings" back WHERE back."reverses" = p."id")
     ORDER BY e."day", p."sequence", r."lot"`,
    value,
  );
  return rows.map((row) => ({
    ...receiptOf(row),
    material: typeof row[8] === "string" ? row[8] : null,
    day: day.read(String(row[9])),
    quantity: quantity<Stock>(BigInt(row[10] as number)),
    landed: quantity<MicroUnits>(BigInt(row[11] as number)),
  }));
}

/** @param where  fixed here in the program */
async function receiptsWhere(sql: Sql, where: string, ...values: readonly string[]): Promise<readonly Receipt[]> {
  const rows = await sql.rows(
    `SELECT ${COLUMNS} FROM "receipts" WHERE ${where}
     ORDER BY (SELECT "sequence" FROM "postings" p WHERE p."id" = "receipts"."posting"), "lot"`,
    ...values,
  );
  return rows.map(receiptOf);
}

const receiptOf = ([lot, posting, supplier, offer, order, line, packs, paid]: readonly unknown[]): Receipt => ({
  lot: String(lot),
  posting: String(posting),
  supplier: textOrNull(supplier),
  offer: textOrNull(offer),
  order: typeof order === "string" ? { id: order, line: Number(line) - 1 } : null,
  packs: quantity<Packs>(BigInt(packs as number)),
  paid: quantity<MicroUnits>(BigInt(paid as number)),
});

const textOrNull = (cell: unknown): string | null => (typeof cell === "string" ? cell : null);
