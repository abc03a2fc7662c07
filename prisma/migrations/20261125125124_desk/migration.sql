-- What only the app keeps beside the workshop, as lib/domain/desk.ts has it. The CHECKs and the triggers are written by
-- hand. What is retired goes with its record; whatever else is named here keeps its record from being removed. The
-- percents of a draft may come to anything, and several of its lines may take what is left.

-- CreateTable
CREATE TABLE "retired_suppliers" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    CONSTRAINT "retired_suppliers_id_fkey" FOREIGN KEY ("id") REFERENCES "suppliers" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "retired_suppliers_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)
);

-- CreateTable
CREATE TABLE "retired_materials" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    CONSTRAINT "retired_materials_id_fkey" FOREIGN KEY ("id") REFERENCES "materials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "retired_materials_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)
);

-- CreateTable
CREATE TABLE "retired_offers" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    CONSTRAINT "retired_offers_id_fkey" FOREIGN KEY ("id") REFERENCES "offers" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "retired_offers_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)
);

-- CreateTable
CREATE TABLE "retired_formulas" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    CONSTRAINT "retired_formulas_id_fkey" FOREIGN KEY ("id") REFERENCES "formulas" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "retired_formulas_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)
);

-- CreateTable
CREATE TABLE "retired_products" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    CONSTRAINT "retired_products_id_fkey" FOREIGN KEY ("id") REFERENCES "products" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "retired_products_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)
);

-- CreateTable
CREATE TABLE "drafts" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "density" BIGINT,
    CONSTRAINT "drafts_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "drafts_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "drafts_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "drafts_density" CHECK ("density" IS NULL OR (typeof("density") = 'integer' AND "density" BETWEEN 1 AND 9007199254740991))
);

-- CreateTable
CREATE TABLE "draft_lines" (
    "draft" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT,
    "premix" TEXT,
    "percent" BIGINT,
    "phase" TEXT,

    PRIMARY KEY ("draft", "position"),
    CONSTRAINT "draft_lines_draft_fkey" FOREIGN KEY ("draft") REFERENCES "drafts" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "draft_lines_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "draft_lines_premix_fkey" FOREIGN KEY ("premix") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "draft_lines_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "draft_lines_material_or_premix" CHECK (("material" IS NULL) <> ("premix" IS NULL)),
    CONSTRAINT "draft_lines_percent" CHECK ("percent" IS NULL OR (typeof("percent") = 'integer' AND "percent" BETWEEN 1 AND 1000000)),
    CONSTRAINT "draft_lines_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200))
);

-- CreateTable
CREATE TABLE "bench_week" (
    "id" INTEGER NOT NULL PRIMARY KEY,
    "monday" INTEGER NOT NULL,
    "tuesday" INTEGER NOT NULL,
    "wednesday" INTEGER NOT NULL,
    "thursday" INTEGER NOT NULL,
    "friday" INTEGER NOT NULL,
    "saturday" INTEGER NOT NULL,
    "sunday" INTEGER NOT NULL,
    CONSTRAINT "bench_week_one_row" CHECK ("id" = 1),
    CONSTRAINT "bench_week_monday" CHECK (typeof("monday") = 'integer' AND "monday" BETWEEN 0 AND 1440),
    CONSTRAINT "bench_week_tuesday" CHECK (typeof("tuesday") = 'integer' AND "tuesday" BETWEEN 0 AND 1440),
    CONSTRAINT "bench_week_wednesday" CHECK (typeof("wednesday") = 'integer' AND "wednesday" BETWEEN 0 AND 1440),
    CONSTRAINT "bench_week_thursday" CHECK (typeof("thursday") = 'integer' AND "thursday" BETWEEN 0 AND 1440),
    CONSTRAINT "bench_week_friday" CHECK (typeof("friday") = 'integer' AND "friday" BETWEEN 0 AND 1440),
    CONSTRAINT "bench_week_saturday" CHECK (typeof("saturday") = 'integer' AND "saturday" BETWEEN 0 AND 1440),
    CONSTRAINT "bench_week_sunday" CHECK (typeof("sunday") = 'integer' AND "sunday" BETWEEN 0 AND 1440)
);

-- CreateTable
CREATE TABLE "closed_runs" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "product" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "units" BIGINT NOT NULL,
    "madeOn" TEXT NOT NULL,
    "unitsMade" BIGINT NOT NULL,
    CONSTRAINT "closed_runs_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "closed_runs_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "closed_runs_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "closed_runs_date" CHECK ("date" IS date("date") AND "date" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "closed_runs_sequence" CHECK (typeof("sequence") = 'integer' AND "sequence" BETWEEN 0 AND 1000000),
    CONSTRAINT "closed_runs_units" CHECK (typeof("units") = 'integer' AND "units" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "closed_runs_madeOn" CHECK ("madeOn" IS date("madeOn") AND "madeOn" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "closed_runs_unitsMade" CHECK (typeof("unitsMade") = 'integer' AND "unitsMade" BETWEEN 0 AND 9007199254740991)
);

-- CreateIndex
CREATE UNIQUE INDEX "retired_suppliers_position_key" ON "retired_suppliers"("position");

-- CreateIndex
CREATE UNIQUE INDEX "retired_materials_position_key" ON "retired_materials"("position");

-- CreateIndex
CREATE UNIQUE INDEX "retired_offers_position_key" ON "retired_offers"("position");

-- CreateIndex
CREATE UNIQUE INDEX "retired_formulas_position_key" ON "retired_formulas"("position");

-- CreateIndex
CREATE UNIQUE INDEX "retired_products_position_key" ON "retired_products"("position");

-- CreateIndex
CREATE UNIQUE INDEX "drafts_position_key" ON "drafts"("position");

-- CreateIndex
CREATE INDEX "draft_lines_material_idx" ON "draft_lines"("material");

-- CreateIndex
CREATE INDEX "draft_lines_premix_idx" ON "draft_lines"("premix");

-- CreateIndex
CREATE UNIQUE INDEX "closed_runs_position_key" ON "closed_runs"("position");

-- CreateIndex
CREATE INDEX "closed_runs_product_idx" ON "closed_runs"("product");

-- Written by hand from here: what Prisma's schema cannot say.

-- A run is planned or made, never both.
CREATE TRIGGER "runs_planned_or_made_added" BEFORE INSERT ON "runs"
WHEN EXISTS (SELECT 1 FROM "closed_runs" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'runs_planned_or_made'); END;
CREATE TRIGGER "runs_planned_or_made_renamed" BEFORE UPDATE OF "id" ON "runs"
WHEN EXISTS (SELECT 1 FROM "closed_runs" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'runs_planned_or_made'); END;
CREATE TRIGGER "closed_runs_planned_or_made_added" BEFORE INSERT ON "closed_runs"
WHEN EXISTS (SELECT 1 FROM "runs" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'closed_runs_planned_or_made'); END;
CREATE TRIGGER "closed_runs_planned_or_made_renamed" BEFORE UPDATE OF "id" ON "closed_runs"
WHEN EXISTS (SELECT 1 FROM "runs" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'closed_runs_planned_or_made'); END;

-- A formula is a draft until it adds up, never both.
CREATE TRIGGER "drafts_draft_or_formula_added" BEFORE INSERT ON "drafts"
WHEN EXISTS (SELECT 1 FROM "formulas" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'drafts_draft_or_formula'); END;
CREATE TRIGGER "drafts_draft_or_formula_renamed" BEFORE UPDATE OF "id" ON "drafts"
WHEN EXISTS (SELECT 1 FROM "formulas" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'drafts_draft_or_formula'); END;
CREATE TRIGGER "formulas_draft_or_formula_added" BEFORE INSERT ON "formulas"
WHEN EXISTS (SELECT 1 FROM "drafts" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'formulas_draft_or_formula'); END;
CREATE TRIGGER "formulas_draft_or_formula_renamed" BEFORE UPDATE OF "id" ON "formulas"
WHEN EXISTS (SELECT 1 FROM "drafts" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'formulas_draft_or_formula'); END;
