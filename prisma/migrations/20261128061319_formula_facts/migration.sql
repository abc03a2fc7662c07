-- What the checks of a formula need to know of materials and formulas. Nobody has said any of it of what is there.

-- AlterTable
ALTER TABLE "drafts" ADD COLUMN "keepsDays" INTEGER
  CONSTRAINT "drafts_keepsDays" CHECK ("keepsDays" IS NULL OR (typeof("keepsDays") = 'integer' AND "keepsDays" BETWEEN 0 AND 3660));
ALTER TABLE "drafts" ADD COLUMN "market" TEXT
  CONSTRAINT "drafts_market" CHECK ("market" IN ('EU', 'GB', 'US', 'CA', 'AU'));
ALTER TABLE "drafts" ADD COLUMN "phFrom" TEXT
  CONSTRAINT "drafts_phFrom" CHECK ("phFrom" IS NULL OR (length("phFrom") BETWEEN 1 AND 60 AND "phFrom" NOT GLOB '*[^0-9.]*' AND "phFrom" GLOB '[0-9]*' AND "phFrom" GLOB '*[0-9]' AND "phFrom" NOT GLOB '*.*.*' AND "phFrom" NOT GLOB '0[0-9]*' AND CAST("phFrom" AS REAL) <= 14));
ALTER TABLE "drafts" ADD COLUMN "phTo" TEXT
  CONSTRAINT "drafts_phTo" CHECK ("phTo" IS NULL OR (length("phTo") BETWEEN 1 AND 60 AND "phTo" NOT GLOB '*[^0-9.]*' AND "phTo" GLOB '[0-9]*' AND "phTo" GLOB '*[0-9]' AND "phTo" NOT GLOB '*.*.*' AND "phTo" NOT GLOB '0[0-9]*' AND CAST("phTo" AS REAL) <= 14))
  CONSTRAINT "drafts_ph_range" CHECK (CAST("phFrom" AS REAL) <= CAST("phTo" AS REAL));
ALTER TABLE "drafts" ADD COLUMN "use" TEXT
  CONSTRAINT "drafts_use" CHECK ("use" IN ('leave-on', 'rinse-off'));

-- AlterTable
ALTER TABLE "formulas" ADD COLUMN "keepsDays" INTEGER
  CONSTRAINT "formulas_keepsDays" CHECK ("keepsDays" IS NULL OR (typeof("keepsDays") = 'integer' AND "keepsDays" BETWEEN 0 AND 3660));
ALTER TABLE "formulas" ADD COLUMN "market" TEXT
  CONSTRAINT "formulas_market" CHECK ("market" IN ('EU', 'GB', 'US', 'CA', 'AU'));
ALTER TABLE "formulas" ADD COLUMN "phFrom" TEXT
  CONSTRAINT "formulas_phFrom" CHECK ("phFrom" IS NULL OR (length("phFrom") BETWEEN 1 AND 60 AND "phFrom" NOT GLOB '*[^0-9.]*' AND "phFrom" GLOB '[0-9]*' AND "phFrom" GLOB '*[0-9]' AND "phFrom" NOT GLOB '*.*.*' AND "phFrom" NOT GLOB '0[0-9]*' AND CAST("phFrom" AS REAL) <= 14));
ALTER TABLE "formulas" ADD COLUMN "phTo" TEXT
  CONSTRAINT "formulas_phTo" CHECK ("phTo" IS NULL OR (length("phTo") BETWEEN 1 AND 60 AND "phTo" NOT GLOB '*[^0-9.]*' AND "phTo" GLOB '[0-9]*' AND "phTo" GLOB '*[0-9]' AND "phTo" NOT GLOB '*.*.*' AND "phTo" NOT GLOB '0[0-9]*' AND CAST("phTo" AS REAL) <= 14))
  CONSTRAINT "formulas_ph_range" CHECK (CAST("phFrom" AS REAL) <= CAST("phTo" AS REAL));
ALTER TABLE "formulas" ADD COLUMN "use" TEXT
  CONSTRAINT "formulas_use" CHECK ("use" IN ('leave-on', 'rinse-off'));

-- AlterTable. A column is added and the table not rebuilt, which would lose its CHECKs.
ALTER TABLE "materials" ADD COLUMN "role" TEXT
  CONSTRAINT "materials_role" CHECK ("role" IN ('water', 'preservative', 'neither'));
ALTER TABLE "materials" ADD COLUMN "phFrom" TEXT
  CONSTRAINT "materials_phFrom" CHECK ("phFrom" IS NULL OR (length("phFrom") BETWEEN 1 AND 60 AND "phFrom" NOT GLOB '*[^0-9.]*' AND "phFrom" GLOB '[0-9]*' AND "phFrom" GLOB '*[0-9]' AND "phFrom" NOT GLOB '*.*.*' AND "phFrom" NOT GLOB '0[0-9]*' AND CAST("phFrom" AS REAL) <= 14));
ALTER TABLE "materials" ADD COLUMN "phTo" TEXT
  CONSTRAINT "materials_phTo" CHECK ("phTo" IS NULL OR (length("phTo") BETWEEN 1 AND 60 AND "phTo" NOT GLOB '*[^0-9.]*' AND "phTo" GLOB '[0-9]*' AND "phTo" GLOB '*[0-9]' AND "phTo" NOT GLOB '*.*.*' AND "phTo" NOT GLOB '0[0-9]*' AND CAST("phTo" AS REAL) <= 14))
  CONSTRAINT "materials_ph_range" CHECK (CAST("phFrom" AS REAL) <= CAST("phTo" AS REAL));
ALTER TABLE "materials" ADD COLUMN "flammable" BOOLEAN NOT NULL DEFAULT false
  CONSTRAINT "materials_flammable" CHECK (typeof("flammable") = 'integer' AND "flammable" IN (0, 1));
ALTER TABLE "materials" ADD COLUMN "allergen" BOOLEAN NOT NULL DEFAULT false
  CONSTRAINT "materials_allergen" CHECK (typeof("allergen") = 'integer' AND "allergen" IN (0, 1));
ALTER TABLE "materials" ADD COLUMN "eyeHazard" BOOLEAN NOT NULL DEFAULT false
  CONSTRAINT "materials_eyeHazard" CHECK (typeof("eyeHazard") = 'integer' AND "eyeHazard" IN (0, 1));

-- CreateTable
CREATE TABLE "material_components" (
    "material" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "inci" TEXT NOT NULL,
    "share" BIGINT NOT NULL,

    PRIMARY KEY ("material", "position"),
    CONSTRAINT "material_components_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "material_components_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "material_components_inci" CHECK (typeof("inci") = 'text' AND length("inci") BETWEEN 1 AND 200),
    CONSTRAINT "material_components_share" CHECK (typeof("share") = 'integer' AND "share" BETWEEN 1 AND 1000000)
);

-- CreateTable
CREATE TABLE "material_limits" (
    "material" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "market" TEXT NOT NULL,
    "use" TEXT,
    "substance" TEXT NOT NULL,
    "maximum" BIGINT NOT NULL,
    "countsAs" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "copied" TEXT NOT NULL,

    PRIMARY KEY ("material", "position"),
    CONSTRAINT "material_limits_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "material_limits_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "material_limits_market" CHECK ("market" IN ('EU', 'GB', 'US', 'CA', 'AU')),
    CONSTRAINT "material_limits_use" CHECK ("use" IN ('leave-on', 'rinse-off')),
    CONSTRAINT "material_limits_substance" CHECK (typeof("substance") = 'text' AND length("substance") BETWEEN 1 AND 200),
    CONSTRAINT "material_limits_maximum" CHECK (typeof("maximum") = 'integer' AND "maximum" BETWEEN 1 AND 1000000),
    CONSTRAINT "material_limits_countsAs" CHECK (length("countsAs") BETWEEN 1 AND 60 AND "countsAs" NOT GLOB '*[^0-9.]*' AND "countsAs" GLOB '[0-9]*' AND "countsAs" GLOB '*[0-9]' AND "countsAs" NOT GLOB '*.*.*' AND "countsAs" NOT GLOB '0[0-9]*' AND CAST("countsAs" AS REAL) <= 3),
    CONSTRAINT "material_limits_source" CHECK (typeof("source") = 'text' AND length("source") BETWEEN 1 AND 200),
    CONSTRAINT "material_limits_copied" CHECK ("copied" IS date("copied") AND "copied" BETWEEN '1900-01-01' AND '2999-12-31')
);

-- CreateTable
CREATE TABLE "material_sheets" (
    "material" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "reference" TEXT NOT NULL,
    "reviewBy" TEXT,

    PRIMARY KEY ("material", "position"),
    CONSTRAINT "material_sheets_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "material_sheets_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "material_sheets_kind" CHECK ("kind" IN ('safety', 'analysis')),
    CONSTRAINT "material_sheets_reference" CHECK (typeof("reference") = 'text' AND length("reference") BETWEEN 1 AND 200),
    CONSTRAINT "material_sheets_reviewBy" CHECK ("reviewBy" IS NULL OR ("reviewBy" IS date("reviewBy") AND "reviewBy" BETWEEN '1900-01-01' AND '2999-12-31'))
);

-- CreateTable
CREATE TABLE "formula_phases" (
    "formula" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "temperature" TEXT,

    PRIMARY KEY ("formula", "position"),
    CONSTRAINT "formula_phases_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "formula_phases_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "formula_phases_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "formula_phases_temperature" CHECK ("temperature" IS NULL OR (length("temperature") BETWEEN 1 AND 60 AND "temperature" NOT GLOB '*[^0-9.]*' AND "temperature" GLOB '[0-9]*' AND "temperature" GLOB '*[0-9]' AND "temperature" NOT GLOB '*.*.*' AND "temperature" NOT GLOB '0[0-9]*' AND CAST("temperature" AS REAL) <= 150))
);

-- CreateTable
CREATE TABLE "formula_steps" (
    "formula" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "phase" TEXT,
    "text" TEXT NOT NULL,
    "temperature" TEXT,
    "minutes" TEXT,
    "caution" TEXT,

    PRIMARY KEY ("formula", "position"),
    CONSTRAINT "formula_steps_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "formula_steps_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "formula_steps_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200)),
    CONSTRAINT "formula_steps_text" CHECK (typeof("text") = 'text' AND length("text") BETWEEN 1 AND 1000),
    CONSTRAINT "formula_steps_temperature" CHECK ("temperature" IS NULL OR (length("temperature") BETWEEN 1 AND 60 AND "temperature" NOT GLOB '*[^0-9.]*' AND "temperature" GLOB '[0-9]*' AND "temperature" GLOB '*[0-9]' AND "temperature" NOT GLOB '*.*.*' AND "temperature" NOT GLOB '0[0-9]*' AND CAST("temperature" AS REAL) <= 150)),
    CONSTRAINT "formula_steps_minutes" CHECK ("minutes" IS NULL OR (length("minutes") BETWEEN 1 AND 60 AND "minutes" NOT GLOB '*[^0-9.]*' AND "minutes" GLOB '[0-9]*' AND "minutes" GLOB '*[0-9]' AND "minutes" NOT GLOB '*.*.*' AND "minutes" NOT GLOB '0[0-9]*')),
    CONSTRAINT "formula_steps_caution" CHECK ("caution" IS NULL OR (typeof("caution") = 'text' AND length("caution") BETWEEN 1 AND 200))
);

-- CreateTable
CREATE TABLE "draft_phases" (
    "draft" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "temperature" TEXT,

    PRIMARY KEY ("draft", "position"),
    CONSTRAINT "draft_phases_draft_fkey" FOREIGN KEY ("draft") REFERENCES "drafts" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "draft_phases_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "draft_phases_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "draft_phases_temperature" CHECK ("temperature" IS NULL OR (length("temperature") BETWEEN 1 AND 60 AND "temperature" NOT GLOB '*[^0-9.]*' AND "temperature" GLOB '[0-9]*' AND "temperature" GLOB '*[0-9]' AND "temperature" NOT GLOB '*.*.*' AND "temperature" NOT GLOB '0[0-9]*' AND CAST("temperature" AS REAL) <= 150))
);

-- CreateTable
CREATE TABLE "draft_steps" (
    "draft" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "phase" TEXT,
    "text" TEXT NOT NULL,
    "temperature" TEXT,
    "minutes" TEXT,
    "caution" TEXT,

    PRIMARY KEY ("draft", "position"),
    CONSTRAINT "draft_steps_draft_fkey" FOREIGN KEY ("draft") REFERENCES "drafts" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "draft_steps_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "draft_steps_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200)),
    CONSTRAINT "draft_steps_text" CHECK (typeof("text") = 'text' AND length("text") BETWEEN 1 AND 1000),
    CONSTRAINT "draft_steps_temperature" CHECK ("temperature" IS NULL OR (length("temperature") BETWEEN 1 AND 60 AND "temperature" NOT GLOB '*[^0-9.]*' AND "temperature" GLOB '[0-9]*' AND "temperature" GLOB '*[0-9]' AND "temperature" NOT GLOB '*.*.*' AND "temperature" NOT GLOB '0[0-9]*' AND CAST("temperature" AS REAL) <= 150)),
    CONSTRAINT "draft_steps_minutes" CHECK ("minutes" IS NULL OR (length("minutes") BETWEEN 1 AND 60 AND "minutes" NOT GLOB '*[^0-9.]*' AND "minutes" GLOB '[0-9]*' AND "minutes" GLOB '*[0-9]' AND "minutes" NOT GLOB '*.*.*' AND "minutes" NOT GLOB '0[0-9]*')),
    CONSTRAINT "draft_steps_caution" CHECK ("caution" IS NULL OR (typeof("caution") = 'text' AND length("caution") BETWEEN 1 AND 200))
);

-- CreateIndex
CREATE UNIQUE INDEX "formula_phases_formula_name_key" ON "formula_phases"("formula", "name");

-- CreateIndex
CREATE UNIQUE INDEX "draft_phases_draft_name_key" ON "draft_phases"("draft", "name");
