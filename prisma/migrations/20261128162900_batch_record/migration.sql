-- What a batch was started as and how its labels were when it was released, so that no later change of the Book changes a
-- record; what a formula asks to be looked at, and what was found; a code given in the place of one that is taken; and a
-- reason for each thing that a closing asks about. CHECKs and triggers are written by hand. The table of notes is made
-- again, since its kinds stand in a CHECK.

-- AlterTable
ALTER TABLE "batch_versions" ADD COLUMN "called" TEXT CONSTRAINT "batch_versions_called" CHECK ("called" IS NULL OR (typeof("called") = 'text' AND length("called") BETWEEN 1 AND 200));

-- AlterTable
ALTER TABLE "batches" ADD COLUMN "workshopCalled" TEXT CONSTRAINT "batches_workshopCalled" CHECK ("workshopCalled" IS NULL OR (typeof("workshopCalled") = 'text' AND length("workshopCalled") BETWEEN 1 AND 200));
ALTER TABLE "batches" ADD COLUMN "productCalled" TEXT CONSTRAINT "batches_productCalled" CHECK ("productCalled" IS NULL OR (typeof("productCalled") = 'text' AND length("productCalled") BETWEEN 1 AND 200));
ALTER TABLE "batches" ADD COLUMN "fill" BIGINT CONSTRAINT "batches_fill" CHECK ("fill" IS NULL OR (typeof("fill") = 'integer' AND "fill" BETWEEN 1 AND 9007199254740991));
ALTER TABLE "batches" ADD COLUMN "fillNumber" TEXT CONSTRAINT "batches_fillNumber" CHECK ("fillNumber" IS NULL OR (length("fillNumber") BETWEEN 1 AND 60 AND "fillNumber" NOT GLOB '*[^0-9.]*' AND "fillNumber" GLOB '[0-9]*' AND "fillNumber" GLOB '*[0-9]' AND "fillNumber" NOT GLOB '*.*.*' AND "fillNumber" NOT GLOB '0[0-9]*'));
ALTER TABLE "batches" ADD COLUMN "fillUnit" TEXT CONSTRAINT "batches_fillUnit" CHECK ("fillUnit" IS NULL OR ("fillUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk')));
ALTER TABLE "batches" ADD COLUMN "bulk" BIGINT CONSTRAINT "batches_bulk" CHECK ("bulk" IS NULL OR (typeof("bulk") = 'integer' AND "bulk" BETWEEN 1 AND 9007199254740991));
ALTER TABLE "batches" ADD COLUMN "step" BIGINT CONSTRAINT "batches_step" CHECK ("step" IS NULL OR (typeof("step") = 'integer' AND "step" BETWEEN 1 AND 9007199254740991))
  CONSTRAINT "batches_as" CHECK (("workshopCalled" IS NULL) + ("productCalled" IS NULL) + ("fill" IS NULL) + ("fillNumber" IS NULL) + ("fillUnit" IS NULL) + ("bulk" IS NULL) + ("step" IS NULL) IN (0, 7));

-- CreateTable
CREATE TABLE "formula_checks" (
    "formula" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "from" TEXT,
    "to" TEXT,
    "unit" TEXT,
    "looks" TEXT,
    PRIMARY KEY ("formula", "position"),
    CONSTRAINT "formula_checks_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "formula_checks_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "formula_checks_what" CHECK (typeof("what") = 'text' AND length("what") BETWEEN 1 AND 200),
    CONSTRAINT "formula_checks_from" CHECK ("from" IS NULL OR (length("from") BETWEEN 1 AND 60 AND "from" NOT GLOB '*[^0-9.]*' AND "from" GLOB '[0-9]*' AND "from" GLOB '*[0-9]' AND "from" NOT GLOB '*.*.*' AND "from" NOT GLOB '0[0-9]*')),
    CONSTRAINT "formula_checks_to" CHECK ("to" IS NULL OR (length("to") BETWEEN 1 AND 60 AND "to" NOT GLOB '*[^0-9.]*' AND "to" GLOB '[0-9]*' AND "to" GLOB '*[0-9]' AND "to" NOT GLOB '*.*.*' AND "to" NOT GLOB '0[0-9]*')),
    CONSTRAINT "formula_checks_unit" CHECK ("unit" IS NULL OR (typeof("unit") = 'text' AND length("unit") BETWEEN 1 AND 200)),
    CONSTRAINT "formula_checks_looks" CHECK ("looks" IS NULL OR (typeof("looks") = 'text' AND length("looks") BETWEEN 1 AND 1000)),
    CONSTRAINT "formula_checks_asks" CHECK ("from" IS NOT NULL OR "to" IS NOT NULL OR "looks" IS NOT NULL)
);

-- CreateTable
CREATE TABLE "draft_checks" (
    "draft" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "from" TEXT,
    "to" TEXT,
    "unit" TEXT,
    "looks" TEXT,
    PRIMARY KEY ("draft", "position"),
    CONSTRAINT "draft_checks_draft_fkey" FOREIGN KEY ("draft") REFERENCES "drafts" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "draft_checks_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "draft_checks_what" CHECK (typeof("what") = 'text' AND length("what") BETWEEN 1 AND 200),
    CONSTRAINT "draft_checks_from" CHECK ("from" IS NULL OR (length("from") BETWEEN 1 AND 60 AND "from" NOT GLOB '*[^0-9.]*' AND "from" GLOB '[0-9]*' AND "from" GLOB '*[0-9]' AND "from" NOT GLOB '*.*.*' AND "from" NOT GLOB '0[0-9]*')),
    CONSTRAINT "draft_checks_to" CHECK ("to" IS NULL OR (length("to") BETWEEN 1 AND 60 AND "to" NOT GLOB '*[^0-9.]*' AND "to" GLOB '[0-9]*' AND "to" GLOB '*[0-9]' AND "to" NOT GLOB '*.*.*' AND "to" NOT GLOB '0[0-9]*')),
    CONSTRAINT "draft_checks_unit" CHECK ("unit" IS NULL OR (typeof("unit") = 'text' AND length("unit") BETWEEN 1 AND 200)),
    CONSTRAINT "draft_checks_looks" CHECK ("looks" IS NULL OR (typeof("looks") = 'text' AND length("looks") BETWEEN 1 AND 1000)),
    CONSTRAINT "draft_checks_asks" CHECK ("from" IS NOT NULL OR "to" IS NOT NULL OR "looks" IS NOT NULL)
);

-- CreateTable
CREATE TABLE "version_checks" (
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "from" TEXT,
    "to" TEXT,
    "unit" TEXT,
    "looks" TEXT,
    PRIMARY KEY ("formula", "number", "position"),
    CONSTRAINT "version_checks_formula_number_fkey" FOREIGN KEY ("formula", "number") REFERENCES "formula_versions" ("formula", "number") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "version_checks_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647),
    CONSTRAINT "version_checks_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "version_checks_what" CHECK (typeof("what") = 'text' AND length("what") BETWEEN 1 AND 200),
    CONSTRAINT "version_checks_from" CHECK ("from" IS NULL OR (length("from") BETWEEN 1 AND 60 AND "from" NOT GLOB '*[^0-9.]*' AND "from" GLOB '[0-9]*' AND "from" GLOB '*[0-9]' AND "from" NOT GLOB '*.*.*' AND "from" NOT GLOB '0[0-9]*')),
    CONSTRAINT "version_checks_to" CHECK ("to" IS NULL OR (length("to") BETWEEN 1 AND 60 AND "to" NOT GLOB '*[^0-9.]*' AND "to" GLOB '[0-9]*' AND "to" GLOB '*[0-9]' AND "to" NOT GLOB '*.*.*' AND "to" NOT GLOB '0[0-9]*')),
    CONSTRAINT "version_checks_unit" CHECK ("unit" IS NULL OR (typeof("unit") = 'text' AND length("unit") BETWEEN 1 AND 200)),
    CONSTRAINT "version_checks_looks" CHECK ("looks" IS NULL OR (typeof("looks") = 'text' AND length("looks") BETWEEN 1 AND 1000)),
    CONSTRAINT "version_checks_asks" CHECK ("from" IS NOT NULL OR "to" IS NOT NULL OR "looks" IS NOT NULL)
);

-- CreateTable
CREATE TABLE "batch_labels" (
    "run" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "market" TEXT NOT NULL,
    "code" TEXT,
    "codeText" TEXT,
    "isGs1" BOOLEAN,
    "width" TEXT,
    "height" TEXT,
    PRIMARY KEY ("run", "position"),
    CONSTRAINT "batch_labels_run_fkey" FOREIGN KEY ("run") REFERENCES "batches" ("run") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "batch_labels_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "batch_labels_label" CHECK (typeof("label") = 'text' AND length("label") BETWEEN 1 AND 200),
    CONSTRAINT "batch_labels_market" CHECK ("market" IN ('EU', 'GB', 'US')),
    CONSTRAINT "batch_labels_code" CHECK ("code" IS NULL OR "code" IN ('QR', 'Code 128')),
    CONSTRAINT "batch_labels_codeText" CHECK ("codeText" IS NULL OR (typeof("codeText") = 'text' AND length("codeText") BETWEEN 1 AND 1000)),
    CONSTRAINT "batch_labels_isGs1" CHECK ("isGs1" IS NULL OR "isGs1" IN (0, 1)),
    CONSTRAINT "batch_labels_width" CHECK ("width" IS NULL OR (length("width") BETWEEN 1 AND 60 AND "width" NOT GLOB '*[^0-9.]*' AND "width" GLOB '[0-9]*' AND "width" GLOB '*[0-9]' AND "width" NOT GLOB '*.*.*' AND "width" NOT GLOB '0[0-9]*')),
    CONSTRAINT "batch_labels_height" CHECK ("height" IS NULL OR (length("height") BETWEEN 1 AND 60 AND "height" NOT GLOB '*[^0-9.]*' AND "height" GLOB '[0-9]*' AND "height" GLOB '*[0-9]' AND "height" NOT GLOB '*.*.*' AND "height" NOT GLOB '0[0-9]*')),
    CONSTRAINT "batch_labels_drawn" CHECK (("code" IS NULL) + ("codeText" IS NULL) + ("isGs1" IS NULL) IN (0, 3)),
    CONSTRAINT "batch_labels_size" CHECK (("width" IS NULL) = ("height" IS NULL))
);

-- CreateTable
CREATE TABLE "batch_label_parts" (
    "run" TEXT NOT NULL,
    "label" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "called" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "isBold" BOOLEAN NOT NULL,
    PRIMARY KEY ("run", "label", "position"),
    CONSTRAINT "batch_label_parts_run_label_fkey" FOREIGN KEY ("run", "label") REFERENCES "batch_labels" ("run", "position") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "batch_label_parts_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "batch_label_parts_called" CHECK (typeof("called") = 'text' AND length("called") BETWEEN 1 AND 200),
    CONSTRAINT "batch_label_parts_text" CHECK (typeof("text") = 'text' AND length("text") >= 1),
    CONSTRAINT "batch_label_parts_isBold" CHECK (typeof("isBold") = 'integer' AND "isBold" IN (0, 1))
);

-- RedefineTables: with the kinds "checked" and "recoded".
DROP TRIGGER "bench_notes_once_added";
DROP TRIGGER "bench_notes_never_changed_changed";
DROP TRIGGER "bench_notes_never_changed_removed";
CREATE TABLE "new_bench_notes" (
    "run" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "who" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "line" TEXT,
    "material" TEXT,
    "called" TEXT,
    "lot" TEXT,
    "net" BIGINT,
    "gross" BIGINT,
    "tare" BIGINT,
    "more" BOOLEAN,
    "why" TEXT,
    "strikes" TEXT,
    "phase" TEXT,
    "celsius" TEXT,
    "ph" TEXT,
    "meter" TEXT,
    "calibrated" TEXT,
    "code" TEXT,
    "what" TEXT,
    "asked" TEXT,
    "found" TEXT,
    "within" BOOLEAN,
    "units" BIGINT,
    "leftOver" BIGINT,
    "bestBefore" TEXT,
    "held" BOOLEAN,
    "whyNotWeighed" TEXT,
    "whyMoreFilled" TEXT,
    "whyOutOfDate" TEXT,
    "whyNotChecked" TEXT,

    PRIMARY KEY ("run", "position"),
    CONSTRAINT "bench_notes_run_fkey" FOREIGN KEY ("run") REFERENCES "batches" ("run") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "bench_notes_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "bench_notes_key" CHECK (typeof("key") = 'text' AND length("key") BETWEEN 1 AND 300),
    CONSTRAINT "bench_notes_at" CHECK ("at" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
    CONSTRAINT "bench_notes_who" CHECK (typeof("who") = 'text' AND length("who") BETWEEN 1 AND 200),
    CONSTRAINT "bench_notes_kind" CHECK ("kind" IN ('weighed', 'added', 'struck', 'temperature', 'acidity', 'seen', 'checked', 'recoded', 'closed', 'released', 'rejected', 'annexed')),
    CONSTRAINT "bench_notes_line" CHECK ("line" IS NULL OR (typeof("line") = 'text' AND length("line") BETWEEN 1 AND 20)),
    CONSTRAINT "bench_notes_material" CHECK ("material" IS NULL OR (typeof("material") = 'text' AND length("material") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_called" CHECK ("called" IS NULL OR (typeof("called") = 'text' AND length("called") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_lot" CHECK ("lot" IS NULL OR (typeof("lot") = 'text' AND length("lot") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_net" CHECK ("net" IS NULL OR (typeof("net") = 'integer' AND "net" BETWEEN 1 AND 9007199254740991)),
    CONSTRAINT "bench_notes_gross" CHECK ("gross" IS NULL OR (typeof("gross") = 'integer' AND "gross" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "bench_notes_tare" CHECK ("tare" IS NULL OR (typeof("tare") = 'integer' AND "tare" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "bench_notes_more" CHECK ("more" IS NULL OR "more" IN (0, 1)),
    CONSTRAINT "bench_notes_why" CHECK ("why" IS NULL OR (typeof("why") = 'text' AND length("why") BETWEEN 1 AND 1000)),
    CONSTRAINT "bench_notes_strikes" CHECK ("strikes" IS NULL OR (typeof("strikes") = 'text' AND length("strikes") BETWEEN 1 AND 300)),
    CONSTRAINT "bench_notes_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_celsius" CHECK ("celsius" IS NULL OR (length("celsius") BETWEEN 1 AND 60 AND "celsius" NOT GLOB '*[^0-9.]*' AND "celsius" GLOB '[0-9]*' AND "celsius" GLOB '*[0-9]' AND "celsius" NOT GLOB '*.*.*')),
    CONSTRAINT "bench_notes_ph" CHECK ("ph" IS NULL OR (length("ph") BETWEEN 1 AND 60 AND "ph" NOT GLOB '*[^0-9.]*' AND "ph" GLOB '[0-9]*' AND "ph" GLOB '*[0-9]' AND "ph" NOT GLOB '*.*.*')),
    CONSTRAINT "bench_notes_meter" CHECK ("meter" IS NULL OR (typeof("meter") = 'text' AND length("meter") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_calibrated" CHECK ("calibrated" IS NULL OR ("calibrated" IS date("calibrated") AND "calibrated" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "bench_notes_code" CHECK ("code" IS NULL OR (typeof("code") = 'text' AND length("code") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_what" CHECK ("what" IS NULL OR (typeof("what") = 'text' AND length("what") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_asked" CHECK ("asked" IS NULL OR (typeof("asked") = 'text' AND length("asked") BETWEEN 1 AND 2000)),
    CONSTRAINT "bench_notes_found" CHECK ("found" IS NULL OR (typeof("found") = 'text' AND length("found") BETWEEN 1 AND 5000)),
    CONSTRAINT "bench_notes_within" CHECK ("within" IS NULL OR "within" IN (0, 1)),
    CONSTRAINT "bench_notes_units" CHECK ("units" IS NULL OR (typeof("units") = 'integer' AND "units" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "bench_notes_leftOver" CHECK ("leftOver" IS NULL OR (typeof("leftOver") = 'integer' AND "leftOver" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "bench_notes_bestBefore" CHECK ("bestBefore" IS NULL OR ("bestBefore" IS date("bestBefore") AND "bestBefore" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "bench_notes_held" CHECK ("held" IS NULL OR "held" IN (0, 1)),
    CONSTRAINT "bench_notes_whyNotWeighed" CHECK ("whyNotWeighed" IS NULL OR (typeof("whyNotWeighed") = 'text' AND length("whyNotWeighed") BETWEEN 1 AND 1000)),
    CONSTRAINT "bench_notes_whyMoreFilled" CHECK ("whyMoreFilled" IS NULL OR (typeof("whyMoreFilled") = 'text' AND length("whyMoreFilled") BETWEEN 1 AND 1000)),
    CONSTRAINT "bench_notes_whyOutOfDate" CHECK ("whyOutOfDate" IS NULL OR (typeof("whyOutOfDate") = 'text' AND length("whyOutOfDate") BETWEEN 1 AND 1000)),
    CONSTRAINT "bench_notes_whyNotChecked" CHECK ("whyNotChecked" IS NULL OR (typeof("whyNotChecked") = 'text' AND length("whyNotChecked") BETWEEN 1 AND 1000)),
    CONSTRAINT "bench_notes_says" CHECK (
      ("line" IS NULL OR "kind" IN ('weighed'))
      AND ("lot" IS NULL OR "kind" IN ('weighed', 'added'))
      AND ("net" IS NULL OR "kind" IN ('weighed', 'added'))
      AND ("gross" IS NULL OR "kind" IN ('weighed'))
      AND ("tare" IS NULL OR "kind" IN ('weighed'))
      AND ("more" IS NULL OR "kind" IN ('weighed'))
      AND ("why" IS NULL OR "kind" IN ('weighed', 'added', 'struck', 'checked', 'recoded', 'closed', 'released', 'rejected'))
      AND ("material" IS NULL OR "kind" IN ('added'))
      AND ("strikes" IS NULL OR "kind" IN ('struck'))
      AND ("phase" IS NULL OR "kind" IN ('temperature'))
      AND ("celsius" IS NULL OR "kind" IN ('temperature'))
      AND ("meter" IS NULL OR "kind" IN ('temperature', 'acidity'))
      AND ("calibrated" IS NULL OR "kind" IN ('temperature', 'acidity'))
      AND ("ph" IS NULL OR "kind" IN ('acidity'))
      AND ("called" IS NULL OR "kind" IN ('added'))
      AND ("code" IS NULL OR "kind" IN ('recoded'))
      AND ("what" IS NULL OR "kind" IN ('seen', 'checked'))
      AND ("asked" IS NULL OR "kind" IN ('checked'))
      AND ("found" IS NULL OR "kind" IN ('seen', 'checked', 'annexed'))
      AND ("within" IS NULL OR "kind" IN ('checked'))
      AND ("units" IS NULL OR "kind" IN ('closed'))
      AND ("leftOver" IS NULL OR "kind" IN ('closed'))
      AND ("bestBefore" IS NULL OR "kind" IN ('closed'))
      AND ("held" IS NULL OR "kind" IN ('closed'))
      AND ("whyNotWeighed" IS NULL OR "kind" IN ('closed'))
      AND ("whyMoreFilled" IS NULL OR "kind" IN ('closed'))
      AND ("whyOutOfDate" IS NULL OR "kind" IN ('closed'))
      AND ("whyNotChecked" IS NULL OR "kind" IN ('closed', 'released'))
    ),
    CONSTRAINT "bench_notes_needs" CHECK (
      ("kind" <> 'weighed' OR ("line" IS NOT NULL AND "net" IS NOT NULL AND "more" IS NOT NULL))
      AND ("kind" <> 'added' OR ("material" IS NOT NULL AND "lot" IS NOT NULL AND "net" IS NOT NULL AND "why" IS NOT NULL))
      AND ("kind" <> 'struck' OR ("strikes" IS NOT NULL AND "why" IS NOT NULL))
      AND ("kind" <> 'temperature' OR ("celsius" IS NOT NULL))
      AND ("kind" <> 'acidity' OR ("ph" IS NOT NULL))
      AND ("kind" <> 'seen' OR ("what" IS NOT NULL AND "found" IS NOT NULL))
      AND ("kind" <> 'checked' OR ("what" IS NOT NULL AND "asked" IS NOT NULL AND "found" IS NOT NULL AND "within" IS NOT NULL AND ("within" = 1 OR "why" IS NOT NULL)))
      AND ("kind" <> 'recoded' OR ("code" IS NOT NULL AND "why" IS NOT NULL))
      AND ("kind" <> 'closed' OR ("units" IS NOT NULL AND "held" IS NOT NULL))
      AND ("kind" <> 'rejected' OR ("why" IS NOT NULL))
      AND ("kind" <> 'annexed' OR ("found" IS NOT NULL))
    )
);
INSERT INTO "new_bench_notes" ("run", "position", "key", "at", "who", "kind", "line", "material", "lot", "net", "gross", "tare", "more", "why", "strikes", "phase", "celsius", "ph", "meter", "calibrated", "what", "found", "units", "leftOver", "bestBefore", "held") SELECT "run", "position", "key", "at", "who", "kind", "line", "material", "lot", "net", "gross", "tare", "more", "why", "strikes", "phase", "celsius", "ph", "meter", "calibrated", "what", "found", "units", "leftOver", "bestBefore", "held" FROM "bench_notes";
DROP TABLE "bench_notes";
ALTER TABLE "new_bench_notes" RENAME TO "bench_notes";

-- CreateIndex
CREATE UNIQUE INDEX "bench_notes_key_key" ON "bench_notes"("key");

-- CreateIndex
CREATE UNIQUE INDEX "formula_checks_formula_what_key" ON "formula_checks"("formula", "what");

-- CreateIndex
CREATE UNIQUE INDEX "draft_checks_draft_what_key" ON "draft_checks"("draft", "what");

-- CreateIndex
CREATE UNIQUE INDEX "version_checks_formula_number_what_key" ON "version_checks"("formula", "number", "what");

-- What was written at the bench is never changed and never taken away, the labels kept with it among it.
CREATE TRIGGER "bench_notes_once_added" BEFORE INSERT ON "bench_notes"
WHEN EXISTS (SELECT 1 FROM "bench_notes" WHERE "run" = NEW."run" AND "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'bench_notes_once'); END;
CREATE TRIGGER "bench_notes_never_changed_changed" BEFORE UPDATE ON "bench_notes"
BEGIN SELECT RAISE(ABORT, 'bench_notes_never_changed'); END;
CREATE TRIGGER "bench_notes_never_changed_removed" BEFORE DELETE ON "bench_notes"
BEGIN SELECT RAISE(ABORT, 'bench_notes_never_changed'); END;
CREATE TRIGGER "batch_labels_once_added" BEFORE INSERT ON "batch_labels"
WHEN EXISTS (SELECT 1 FROM "batch_labels" WHERE "run" = NEW."run" AND "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'batch_labels_once'); END;
CREATE TRIGGER "batch_labels_never_changed_changed" BEFORE UPDATE ON "batch_labels"
BEGIN SELECT RAISE(ABORT, 'batch_labels_never_changed'); END;
CREATE TRIGGER "batch_labels_never_changed_removed" BEFORE DELETE ON "batch_labels"
BEGIN SELECT RAISE(ABORT, 'batch_labels_never_changed'); END;
CREATE TRIGGER "batch_label_parts_once_added" BEFORE INSERT ON "batch_label_parts"
WHEN EXISTS (SELECT 1 FROM "batch_label_parts" WHERE "run" = NEW."run" AND "label" = NEW."label" AND "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'batch_label_parts_once'); END;
CREATE TRIGGER "batch_label_parts_never_changed_changed" BEFORE UPDATE ON "batch_label_parts"
BEGIN SELECT RAISE(ABORT, 'batch_label_parts_never_changed'); END;
CREATE TRIGGER "batch_label_parts_never_changed_removed" BEFORE DELETE ON "batch_label_parts"
BEGIN SELECT RAISE(ABORT, 'batch_label_parts_never_changed'); END;
