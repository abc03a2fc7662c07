-- What becomes of an order: drafted, ordered, received in part or whole, given up. The orders that are there were ordered,
-- and nothing of what stands on them has come. What is known of a lot that came in a delivery is kept beside its posting.

-- AlterTable
ALTER TABLE "orders" ADD COLUMN "state" TEXT NOT NULL DEFAULT 'ordered'
  CONSTRAINT "orders_state" CHECK ("state" IN ('drafted', 'ordered', 'given up'));
ALTER TABLE "order_lines" ADD COLUMN "offer" TEXT
  CONSTRAINT "order_lines_offer" CHECK ("offer" IS NULL OR (typeof("offer") = 'text' AND length("offer") BETWEEN 1 AND 200));
ALTER TABLE "order_lines" ADD COLUMN "packs" BIGINT
  CONSTRAINT "order_lines_packs" CHECK ("packs" IS NULL OR (typeof("packs") = 'integer' AND "packs" BETWEEN 1 AND 9007199254740991));
ALTER TABLE "order_lines" ADD COLUMN "received" BIGINT NOT NULL DEFAULT 0
  CONSTRAINT "order_lines_received" CHECK (typeof("received") = 'integer' AND "received" BETWEEN 0 AND 9007199254740991);

-- CreateTable
CREATE TABLE "receipts" (
    "lot" TEXT NOT NULL PRIMARY KEY,
    "posting" TEXT NOT NULL,
    "supplier" TEXT,
    "offer" TEXT,
    "order" TEXT,
    "line" INTEGER,
    "packs" BIGINT NOT NULL,
    "paid" BIGINT NOT NULL,
    CONSTRAINT "receipts_posting_fkey" FOREIGN KEY ("posting") REFERENCES "postings" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "receipts_lot" CHECK (typeof("lot") = 'text' AND length("lot") BETWEEN 1 AND 200),
    CONSTRAINT "receipts_supplier" CHECK ("supplier" IS NULL OR (typeof("supplier") = 'text' AND length("supplier") BETWEEN 1 AND 200)),
    CONSTRAINT "receipts_offer" CHECK ("offer" IS NULL OR (typeof("offer") = 'text' AND length("offer") BETWEEN 1 AND 200)),
    CONSTRAINT "receipts_order" CHECK ("order" IS NULL OR (typeof("order") = 'text' AND length("order") BETWEEN 1 AND 200)),
    CONSTRAINT "receipts_line" CHECK (("line" IS NULL) = ("order" IS NULL) AND ("line" IS NULL OR (typeof("line") = 'integer' AND "line" BETWEEN 1 AND 1000000))),
    CONSTRAINT "receipts_packs" CHECK (typeof("packs") = 'integer' AND "packs" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "receipts_paid" CHECK (typeof("paid") = 'integer' AND "paid" BETWEEN 0 AND 9007199254740991)
);

-- CreateIndex
CREATE INDEX "receipts_posting_idx" ON "receipts"("posting");

-- CreateIndex
CREATE INDEX "receipts_order_idx" ON "receipts"("order");

-- What came, came: as a posting, a receipt is never changed.
CREATE TRIGGER "receipts_never_changed" BEFORE UPDATE ON "receipts"
BEGIN SELECT RAISE(ABORT, 'receipts_never_changed'); END;
CREATE TRIGGER "receipts_never_removed" BEFORE DELETE ON "receipts"
BEGIN SELECT RAISE(ABORT, 'receipts_never_changed'); END;
