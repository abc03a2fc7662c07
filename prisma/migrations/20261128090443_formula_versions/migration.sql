-- The versions of formulas with what was accepted in each, trials at the bench, and the versions that runs were made by.
-- Of formulas and runs that are there nobody has said any of it.

-- CreateTable
CREATE TABLE "closed_run_versions" (
    "run" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,

    PRIMARY KEY ("run", "position"),
    CONSTRAINT "closed_run_versions_run_fkey" FOREIGN KEY ("run") REFERENCES "closed_runs" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "closed_run_versions_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "closed_run_versions_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "closed_run_versions_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647)
);

-- CreateTable
CREATE TABLE "formula_versions" (
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "since" TEXT,
    "why" TEXT,
    "name" TEXT,
    "density" BIGINT,
    "market" TEXT,
    "use" TEXT,
    "phFrom" TEXT,
    "phTo" TEXT,
    "keepsDays" INTEGER,

    PRIMARY KEY ("formula", "number"),
    CONSTRAINT "formula_versions_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "formula_versions_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647),
    CONSTRAINT "formula_versions_since" CHECK ("since" IS NULL OR ("since" IS date("since") AND "since" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "formula_versions_why" CHECK ("why" IS NULL OR (typeof("why") = 'text' AND length("why") BETWEEN 1 AND 1000)),
    CONSTRAINT "formula_versions_name" CHECK ("name" IS NULL OR (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200)),
    CONSTRAINT "formula_versions_density" CHECK ("density" IS NULL OR (typeof("density") = 'integer' AND "density" BETWEEN 1 AND 9007199254740991)),
    CONSTRAINT "formula_versions_market" CHECK ("market" IN ('EU', 'GB', 'US', 'CA', 'AU')),
    CONSTRAINT "formula_versions_use" CHECK ("use" IN ('leave-on', 'rinse-off')),
    CONSTRAINT "formula_versions_phFrom" CHECK ("phFrom" IS NULL OR (length("phFrom") BETWEEN 1 AND 60 AND "phFrom" NOT GLOB '*[^0-9.]*' AND "phFrom" GLOB '[0-9]*' AND "phFrom" GLOB '*[0-9]' AND "phFrom" NOT GLOB '*.*.*' AND "phFrom" NOT GLOB '0[0-9]*' AND CAST("phFrom" AS REAL) <= 14)),
    CONSTRAINT "formula_versions_phTo" CHECK ("phTo" IS NULL OR (length("phTo") BETWEEN 1 AND 60 AND "phTo" NOT GLOB '*[^0-9.]*' AND "phTo" GLOB '[0-9]*' AND "phTo" GLOB '*[0-9]' AND "phTo" NOT GLOB '*.*.*' AND "phTo" NOT GLOB '0[0-9]*' AND CAST("phTo" AS REAL) <= 14)),
    CONSTRAINT "formula_versions_ph_range" CHECK (CAST("phFrom" AS REAL) <= CAST("phTo" AS REAL)),
    CONSTRAINT "formula_versions_keepsDays" CHECK ("keepsDays" IS NULL OR (typeof("keepsDays") = 'integer' AND "keepsDays" BETWEEN 0 AND 3660))
);

-- CreateTable
CREATE TABLE "version_phases" (
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "temperature" TEXT,

    PRIMARY KEY ("formula", "number", "position"),
    CONSTRAINT "version_phases_formula_number_fkey" FOREIGN KEY ("formula", "number") REFERENCES "formula_versions" ("formula", "number") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "version_phases_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647),
    CONSTRAINT "version_phases_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "version_phases_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "version_phases_temperature" CHECK ("temperature" IS NULL OR (length("temperature") BETWEEN 1 AND 60 AND "temperature" NOT GLOB '*[^0-9.]*' AND "temperature" GLOB '[0-9]*' AND "temperature" GLOB '*[0-9]' AND "temperature" NOT GLOB '*.*.*' AND "temperature" NOT GLOB '0[0-9]*' AND CAST("temperature" AS REAL) <= 150))
);

-- CreateTable
CREATE TABLE "version_steps" (
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "phase" TEXT,
    "text" TEXT NOT NULL,
    "temperature" TEXT,
    "minutes" TEXT,
    "caution" TEXT,

    PRIMARY KEY ("formula", "number", "position"),
    CONSTRAINT "version_steps_formula_number_fkey" FOREIGN KEY ("formula", "number") REFERENCES "formula_versions" ("formula", "number") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "version_steps_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647),
    CONSTRAINT "version_steps_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "version_steps_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200)),
    CONSTRAINT "version_steps_text" CHECK (typeof("text") = 'text' AND length("text") BETWEEN 1 AND 1000),
    CONSTRAINT "version_steps_temperature" CHECK ("temperature" IS NULL OR (length("temperature") BETWEEN 1 AND 60 AND "temperature" NOT GLOB '*[^0-9.]*' AND "temperature" GLOB '[0-9]*' AND "temperature" GLOB '*[0-9]' AND "temperature" NOT GLOB '*.*.*' AND "temperature" NOT GLOB '0[0-9]*' AND CAST("temperature" AS REAL) <= 150)),
    CONSTRAINT "version_steps_minutes" CHECK ("minutes" IS NULL OR (length("minutes") BETWEEN 1 AND 60 AND "minutes" NOT GLOB '*[^0-9.]*' AND "minutes" GLOB '[0-9]*' AND "minutes" GLOB '*[0-9]' AND "minutes" NOT GLOB '*.*.*' AND "minutes" NOT GLOB '0[0-9]*')),
    CONSTRAINT "version_steps_caution" CHECK ("caution" IS NULL OR (typeof("caution") = 'text' AND length("caution") BETWEEN 1 AND 200))
);

-- CreateTable
CREATE TABLE "version_lines" (
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT,
    "premix" TEXT,
    "percent" BIGINT,
    "phase" TEXT,

    PRIMARY KEY ("formula", "number", "position"),
    CONSTRAINT "version_lines_formula_number_fkey" FOREIGN KEY ("formula", "number") REFERENCES "formula_versions" ("formula", "number") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "version_lines_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "version_lines_premix_fkey" FOREIGN KEY ("premix") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "version_lines_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647),
    CONSTRAINT "version_lines_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "version_lines_of" CHECK (("material" IS NULL) <> ("premix" IS NULL)),
    CONSTRAINT "version_lines_percent" CHECK ("percent" IS NULL OR (typeof("percent") = 'integer' AND "percent" BETWEEN 1 AND 1000000)),
    CONSTRAINT "version_lines_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200))
);

-- CreateTable
CREATE TABLE "accepted_warnings" (
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "says" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "on" TEXT NOT NULL,

    PRIMARY KEY ("formula", "number", "position"),
    CONSTRAINT "accepted_warnings_formula_number_fkey" FOREIGN KEY ("formula", "number") REFERENCES "formula_versions" ("formula", "number") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "accepted_warnings_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647),
    CONSTRAINT "accepted_warnings_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "accepted_warnings_key" CHECK (typeof("key") = 'text' AND length("key") BETWEEN 1 AND 10000),
    CONSTRAINT "accepted_warnings_says" CHECK (typeof("says") = 'text' AND length("says") BETWEEN 1 AND 2000),
    CONSTRAINT "accepted_warnings_reason" CHECK (typeof("reason") = 'text' AND length("reason") BETWEEN 1 AND 1000),
    CONSTRAINT "accepted_warnings_on" CHECK ("on" IS date("on") AND "on" BETWEEN '1900-01-01' AND '2999-12-31')
);

-- CreateTable
CREATE TABLE "trials" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "formula" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "notes" TEXT,
    "posting" TEXT,
    CONSTRAINT "trials_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "trials_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "trials_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "trials_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "trials_day" CHECK ("day" IS date("day") AND "day" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "trials_notes" CHECK ("notes" IS NULL OR (typeof("notes") = 'text' AND length("notes") BETWEEN 1 AND 5000)),
    CONSTRAINT "trials_posting" CHECK ("posting" IS NULL OR (typeof("posting") = 'text' AND length("posting") BETWEEN 1 AND 300))
);

-- CreateTable
CREATE TABLE "trial_lines" (
    "trial" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT,
    "premix" TEXT,
    "weighed" BIGINT NOT NULL,
    "phase" TEXT,

    PRIMARY KEY ("trial", "position"),
    CONSTRAINT "trial_lines_trial_fkey" FOREIGN KEY ("trial") REFERENCES "trials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "trial_lines_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "trial_lines_premix_fkey" FOREIGN KEY ("premix") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "trial_lines_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "trial_lines_of" CHECK (("material" IS NULL) <> ("premix" IS NULL)),
    CONSTRAINT "trial_lines_weighed" CHECK (typeof("weighed") = 'integer' AND "weighed" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "trial_lines_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200))
);

-- CreateTable
CREATE TABLE "trial_readings" (
    "trial" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "afterMinutes" INTEGER NOT NULL,
    "ph" TEXT,
    "viscosity" TEXT,
    "appearance" TEXT,

    PRIMARY KEY ("trial", "position"),
    CONSTRAINT "trial_readings_trial_fkey" FOREIGN KEY ("trial") REFERENCES "trials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "trial_readings_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "trial_readings_afterMinutes" CHECK (typeof("afterMinutes") = 'integer' AND "afterMinutes" BETWEEN 0 AND 5270400),
    CONSTRAINT "trial_readings_ph" CHECK ("ph" IS NULL OR (length("ph") BETWEEN 1 AND 60 AND "ph" NOT GLOB '*[^0-9.]*' AND "ph" GLOB '[0-9]*' AND "ph" GLOB '*[0-9]' AND "ph" NOT GLOB '*.*.*' AND "ph" NOT GLOB '0[0-9]*' AND CAST("ph" AS REAL) <= 14)),
    CONSTRAINT "trial_readings_viscosity" CHECK ("viscosity" IS NULL OR (length("viscosity") BETWEEN 1 AND 60 AND "viscosity" NOT GLOB '*[^0-9.]*' AND "viscosity" GLOB '[0-9]*' AND "viscosity" GLOB '*[0-9]' AND "viscosity" NOT GLOB '*.*.*' AND "viscosity" NOT GLOB '0[0-9]*')),
    CONSTRAINT "trial_readings_appearance" CHECK ("appearance" IS NULL OR (typeof("appearance") = 'text' AND length("appearance") BETWEEN 1 AND 1000))
);

-- CreateIndex
CREATE INDEX "closed_run_versions_formula_idx" ON "closed_run_versions"("formula");

-- CreateIndex
CREATE INDEX "version_lines_material_idx" ON "version_lines"("material");

-- CreateIndex
CREATE INDEX "version_lines_premix_idx" ON "version_lines"("premix");

-- CreateIndex
CREATE UNIQUE INDEX "accepted_warnings_formula_number_key_key" ON "accepted_warnings"("formula", "number", "key");

-- CreateIndex
CREATE UNIQUE INDEX "trials_position_key" ON "trials"("position");

-- CreateIndex
CREATE INDEX "trials_formula_idx" ON "trials"("formula");

-- CreateIndex
CREATE INDEX "trial_lines_material_idx" ON "trial_lines"("material");

-- CreateIndex
CREATE INDEX "trial_lines_premix_idx" ON "trial_lines"("premix");
