/** Receipts as rows: added with the posting that they belong to, and never changed. @rule ORDER-5 */
import type { Receipt } from "@/lib/domain/ledger/receipt";
import type { MicroUnits } from "@/lib/domain/money";
import { type Packs, quantity } from "@/lib/domain/quantity";
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

/** Those of an order whose delivery was not taken back. */
export const standingReceiptsOfOrder = (sql: Sql, order: string): Promise<readonly Receipt[]> =>
  receiptsWhere(sql, `"order" = ? AND ${STANDING}`, order);

/** Those of a material's lots whose delivery was not taken back, by the day on which they came. */
export const standingReceiptsOfMaterial = (sql: Sql, material: string): Promise<readonly Receipt[]> =>
  receiptsWhere(sql, `"lot" IN (SELECT "id" FROM "lots" WHERE "material" = ?) AND ${STANDING}`, material);

const STANDING = `NOT EXISTS (SELECT 1 FROM "postings" p WHERE p."reverses" = "receipts"."posting")`;

/** @param where  fixed here in the program */
async function receiptsWhere(sql: Sql, where: string, ...values: readonly string[]): Promise<readonly Receipt[]> {
  const rows = await sql.rows(
    `SELECT ${COLUMNS} FROM "receipts" WHERE ${where}
     ORDER BY (SELECT "sequence" FROM "postings" p WHERE p."id" = "receipts"."posting"), "lot"`,
    ...values,
  );
  return rows.map(([lot, posting, supplier, offer, order, line, packs, paid]) => ({
    lot: String(lot),
    posting: String(posting),
    supplier: textOrNull(supplier),
    offer: textOrNull(offer),
    order: typeof order === "string" ? { id: order, line: Number(line) - 1 } : null,
    packs: quantity<Packs>(BigInt(packs as number)),
    paid: quantity<MicroUnits>(BigInt(paid as number)),
  }));
}

const textOrNull = (cell: unknown): string | null => (typeof cell === "string" ? cell : null);
