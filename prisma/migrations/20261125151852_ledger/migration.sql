-- CreateTable
CREATE TABLE "postings" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "reason" TEXT,
    "reverses" TEXT,
    "lines" TEXT,
    CONSTRAINT "postings_reverses_fkey" FOREIGN KEY ("reverses") REFERENCES "postings" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "entries" (
    "posting" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "day" TEXT NOT NULL,
    "of" TEXT NOT NULL,
    "lot" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "run" TEXT NOT NULL,
    "quantity" BIGINT NOT NULL,
    "materials" BIGINT NOT NULL,
    "labour" BIGINT NOT NULL,
    "overhead" BIGINT NOT NULL,

    PRIMARY KEY ("posting", "position"),
    CONSTRAINT "entries_posting_fkey" FOREIGN KEY ("posting") REFERENCES "postings" ("sequence") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "balances" (
    "of" TEXT NOT NULL,
    "lot" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "run" TEXT NOT NULL,
    "quantity" BIGINT NOT NULL,
    "materials" BIGINT NOT NULL,
    "labour" BIGINT NOT NULL,
    "overhead" BIGINT NOT NULL,

    PRIMARY KEY ("of", "lot", "place", "run")
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_finished_lots" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER,
    "product" TEXT NOT NULL,
    "made" TEXT NOT NULL,
    "bestBefore" TEXT,
    CONSTRAINT "finished_lots_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_finished_lots" ("bestBefore", "id", "made", "position", "product") SELECT "bestBefore", "id", "made", "position", "product" FROM "finished_lots";
DROP TABLE "finished_lots";
ALTER TABLE "new_finished_lots" RENAME TO "finished_lots";
CREATE UNIQUE INDEX "finished_lots_position_key" ON "finished_lots"("position");
CREATE INDEX "finished_lots_product_idx" ON "finished_lots"("product");
CREATE TABLE "new_lots" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER,
    "material" TEXT NOT NULL,
    "received" TEXT NOT NULL,
    "expires" TEXT,
    CONSTRAINT "lots_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_lots" ("expires", "id", "material", "position", "received") SELECT "expires", "id", "material", "position", "received" FROM "lots";
DROP TABLE "lots";
ALTER TABLE "new_lots" RENAME TO "lots";
CREATE UNIQUE INDEX "lots_position_key" ON "lots"("position");
CREATE INDEX "lots_material_idx" ON "lots"("material");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "postings_id_key" ON "postings"("id");

-- CreateIndex
CREATE UNIQUE INDEX "postings_reverses_key" ON "postings"("reverses");

-- CreateIndex
CREATE INDEX "postings_day_idx" ON "postings"("day");

-- CreateIndex
CREATE INDEX "entries_of_lot_place_run_day_idx" ON "entries"("of", "lot", "place", "run", "day");

-- CreateIndex
CREATE INDEX "entries_place_day_of_materials_labour_overhead_idx" ON "entries"("place", "day", "of", "materials", "labour", "overhead");

-- CreateIndex
CREATE INDEX "balances_place_idx" ON "balances"("place");
