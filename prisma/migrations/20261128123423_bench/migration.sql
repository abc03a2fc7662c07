-- Batches at the bench: what was to be weighed, what was written down, and how their codes are made. CHECKs and triggers
-- are written by hand. The ledger learns a kind of posting, so that its table is made again with everything in it.

-- CreateTable
CREATE TABLE "batches" (
    "run" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "product" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "units" BIGINT NOT NULL,
    "code" TEXT NOT NULL,
    "startedOn" TEXT NOT NULL,
    "startedAt" TEXT NOT NULL,
    "startedBy" TEXT NOT NULL,
    "despite" TEXT,
    CONSTRAINT "batches_run" CHECK (typeof("run") = 'text' AND length("run") BETWEEN 1 AND 200),
    CONSTRAINT "batches_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "batches_product" CHECK (typeof("product") = 'text' AND length("product") BETWEEN 1 AND 200),
    CONSTRAINT "batches_date" CHECK ("date" IS date("date") AND "date" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "batches_sequence" CHECK (typeof("sequence") = 'integer' AND "sequence" BETWEEN 0 AND 1000000),
    CONSTRAINT "batches_units" CHECK (typeof("units") = 'integer' AND "units" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "batches_code" CHECK (typeof("code") = 'text' AND length("code") BETWEEN 1 AND 200),
    CONSTRAINT "batches_startedOn" CHECK ("startedOn" IS date("startedOn") AND "startedOn" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "batches_startedAt" CHECK ("startedAt" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
    CONSTRAINT "batches_startedBy" CHECK (typeof("startedBy") = 'text' AND length("startedBy") BETWEEN 1 AND 200),
    CONSTRAINT "batches_despite" CHECK ("despite" IS NULL OR (typeof("despite") = 'text' AND length("despite") BETWEEN 1 AND 1000))
);

-- CreateTable
CREATE TABLE "batch_versions" (
    "run" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "formula" TEXT NOT NULL,
    "number" INTEGER NOT NULL,

    PRIMARY KEY ("run", "position"),
    CONSTRAINT "batch_versions_run_fkey" FOREIGN KEY ("run") REFERENCES "batches" ("run") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "batch_versions_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "batch_versions_formula" CHECK (typeof("formula") = 'text' AND length("formula") BETWEEN 1 AND 200),
    CONSTRAINT "batch_versions_number" CHECK (typeof("number") = 'integer' AND "number" BETWEEN 1 AND 2147483647)
);

-- CreateTable
CREATE TABLE "batch_lines" (
    "run" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "part" TEXT NOT NULL,
    "material" TEXT,
    "premix" TEXT,
    "called" TEXT NOT NULL,
    "phase" TEXT,
    "target" BIGINT NOT NULL,
    "tolerance" BIGINT NOT NULL,

    PRIMARY KEY ("run", "position"),
    CONSTRAINT "batch_lines_run_fkey" FOREIGN KEY ("run") REFERENCES "batches" ("run") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "batch_lines_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "batch_lines_key" CHECK (typeof("key") = 'text' AND length("key") BETWEEN 1 AND 20),
    CONSTRAINT "batch_lines_part" CHECK (typeof("part") = 'text' AND length("part") BETWEEN 1 AND 200),
    CONSTRAINT "batch_lines_material" CHECK ("material" IS NULL OR (typeof("material") = 'text' AND length("material") BETWEEN 1 AND 200)),
    CONSTRAINT "batch_lines_premix" CHECK ("premix" IS NULL OR (typeof("premix") = 'text' AND length("premix") BETWEEN 1 AND 200)),
    CONSTRAINT "batch_lines_of" CHECK (("material" IS NULL) <> ("premix" IS NULL)),
    CONSTRAINT "batch_lines_called" CHECK (typeof("called") = 'text' AND length("called") BETWEEN 1 AND 200),
    CONSTRAINT "batch_lines_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200)),
    CONSTRAINT "batch_lines_target" CHECK (typeof("target") = 'integer' AND "target" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "batch_lines_tolerance" CHECK (typeof("tolerance") = 'integer' AND "tolerance" BETWEEN 0 AND 9007199254740991)
);

-- CreateTable
CREATE TABLE "bench_notes" (
    "run" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "who" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "line" TEXT,
    "material" TEXT,
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
    "what" TEXT,
    "found" TEXT,
    "units" BIGINT,
    "leftOver" BIGINT,
    "bestBefore" TEXT,
    "held" BOOLEAN,

    PRIMARY KEY ("run", "position"),
    CONSTRAINT "bench_notes_run_fkey" FOREIGN KEY ("run") REFERENCES "batches" ("run") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "bench_notes_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "bench_notes_key" CHECK (typeof("key") = 'text' AND length("key") BETWEEN 1 AND 300),
    CONSTRAINT "bench_notes_at" CHECK ("at" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
    CONSTRAINT "bench_notes_who" CHECK (typeof("who") = 'text' AND length("who") BETWEEN 1 AND 200),
    CONSTRAINT "bench_notes_kind" CHECK ("kind" IN ('weighed', 'added', 'struck', 'temperature', 'acidity', 'seen', 'closed', 'released', 'rejected', 'annexed')),
    CONSTRAINT "bench_notes_line" CHECK ("line" IS NULL OR (typeof("line") = 'text' AND length("line") BETWEEN 1 AND 20)),
    CONSTRAINT "bench_notes_material" CHECK ("material" IS NULL OR (typeof("material") = 'text' AND length("material") BETWEEN 1 AND 200)),
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
    CONSTRAINT "bench_notes_what" CHECK ("what" IS NULL OR (typeof("what") = 'text' AND length("what") BETWEEN 1 AND 200)),
    CONSTRAINT "bench_notes_found" CHECK ("found" IS NULL OR (typeof("found") = 'text' AND length("found") BETWEEN 1 AND 5000)),
    CONSTRAINT "bench_notes_units" CHECK ("units" IS NULL OR (typeof("units") = 'integer' AND "units" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "bench_notes_leftOver" CHECK ("leftOver" IS NULL OR (typeof("leftOver") = 'integer' AND "leftOver" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "bench_notes_bestBefore" CHECK ("bestBefore" IS NULL OR ("bestBefore" IS date("bestBefore") AND "bestBefore" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "bench_notes_held" CHECK ("held" IS NULL OR "held" IN (0, 1)),
    CONSTRAINT "bench_notes_says" CHECK (
      ("line" IS NULL OR "kind" IN ('weighed'))
      AND ("lot" IS NULL OR "kind" IN ('weighed', 'added'))
      AND ("net" IS NULL OR "kind" IN ('weighed', 'added'))
      AND ("gross" IS NULL OR "kind" IN ('weighed'))
      AND ("tare" IS NULL OR "kind" IN ('weighed'))
      AND ("more" IS NULL OR "kind" IN ('weighed'))
      AND ("why" IS NULL OR "kind" IN ('weighed', 'added', 'struck', 'closed', 'released', 'rejected'))
      AND ("material" IS NULL OR "kind" IN ('added'))
      AND ("strikes" IS NULL OR "kind" IN ('struck'))
      AND ("phase" IS NULL OR "kind" IN ('temperature'))
      AND ("celsius" IS NULL OR "kind" IN ('temperature'))
      AND ("meter" IS NULL OR "kind" IN ('temperature', 'acidity'))
      AND ("calibrated" IS NULL OR "kind" IN ('temperature', 'acidity'))
      AND ("ph" IS NULL OR "kind" IN ('acidity'))
      AND ("what" IS NULL OR "kind" IN ('seen'))
      AND ("found" IS NULL OR "kind" IN ('seen', 'annexed'))
      AND ("units" IS NULL OR "kind" IN ('closed'))
      AND ("leftOver" IS NULL OR "kind" IN ('closed'))
      AND ("bestBefore" IS NULL OR "kind" IN ('closed'))
      AND ("held" IS NULL OR "kind" IN ('closed'))
    ),
    CONSTRAINT "bench_notes_needs" CHECK (
      ("kind" <> 'weighed' OR ("line" IS NOT NULL AND "net" IS NOT NULL AND "more" IS NOT NULL))
      AND ("kind" <> 'added' OR ("material" IS NOT NULL AND "lot" IS NOT NULL AND "net" IS NOT NULL AND "why" IS NOT NULL))
      AND ("kind" <> 'struck' OR ("strikes" IS NOT NULL AND "why" IS NOT NULL))
      AND ("kind" <> 'temperature' OR ("celsius" IS NOT NULL))
      AND ("kind" <> 'acidity' OR ("ph" IS NOT NULL))
      AND ("kind" <> 'seen' OR ("what" IS NOT NULL AND "found" IS NOT NULL))
      AND ("kind" <> 'closed' OR ("units" IS NOT NULL AND "held" IS NOT NULL))
      AND ("kind" <> 'rejected' OR ("why" IS NOT NULL))
      AND ("kind" <> 'annexed' OR ("found" IS NOT NULL))
    )
);

-- CreateTable
CREATE TABLE "batch_code_scheme" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "before" TEXT NOT NULL,
    "dating" TEXT NOT NULL,
    "between" TEXT NOT NULL,
    "digits" INTEGER NOT NULL,
    CONSTRAINT "batch_code_scheme_id" CHECK ("id" = 1),
    CONSTRAINT "batch_code_scheme_before" CHECK (typeof("before") = 'text' AND length("before") BETWEEN 0 AND 100),
    CONSTRAINT "batch_code_scheme_dating" CHECK ("dating" IN ('none', 'year, month and day', 'year and day of the year')),
    CONSTRAINT "batch_code_scheme_between" CHECK (typeof("between") = 'text' AND length("between") BETWEEN 0 AND 20),
    CONSTRAINT "batch_code_scheme_digits" CHECK (typeof("digits") = 'integer' AND "digits" BETWEEN 1 AND 6)
);

-- CreateIndex
CREATE UNIQUE INDEX "batches_code_key" ON "batches"("code");

-- CreateIndex
CREATE UNIQUE INDEX "bench_notes_key_key" ON "bench_notes"("key");

-- What was written at the bench is never changed and never taken away. BEFORE, as for postings.
CREATE TRIGGER "batches_once_added" BEFORE INSERT ON "batches"
WHEN EXISTS (SELECT 1 FROM "batches" WHERE "run" = NEW."run")
BEGIN SELECT RAISE(ABORT, 'batches_once'); END;
CREATE TRIGGER "batches_never_changed_changed" BEFORE UPDATE ON "batches"
BEGIN SELECT RAISE(ABORT, 'batches_never_changed'); END;
CREATE TRIGGER "batches_never_changed_removed" BEFORE DELETE ON "batches"
BEGIN SELECT RAISE(ABORT, 'batches_never_changed'); END;
CREATE TRIGGER "batch_versions_once_added" BEFORE INSERT ON "batch_versions"
WHEN EXISTS (SELECT 1 FROM "batch_versions" WHERE "run" = NEW."run" AND "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'batch_versions_once'); END;
CREATE TRIGGER "batch_versions_never_changed_changed" BEFORE UPDATE ON "batch_versions"
BEGIN SELECT RAISE(ABORT, 'batch_versions_never_changed'); END;
CREATE TRIGGER "batch_versions_never_changed_removed" BEFORE DELETE ON "batch_versions"
BEGIN SELECT RAISE(ABORT, 'batch_versions_never_changed'); END;
CREATE TRIGGER "batch_lines_once_added" BEFORE INSERT ON "batch_lines"
WHEN EXISTS (SELECT 1 FROM "batch_lines" WHERE "run" = NEW."run" AND "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'batch_lines_once'); END;
CREATE TRIGGER "batch_lines_never_changed_changed" BEFORE UPDATE ON "batch_lines"
BEGIN SELECT RAISE(ABORT, 'batch_lines_never_changed'); END;
CREATE TRIGGER "batch_lines_never_changed_removed" BEFORE DELETE ON "batch_lines"
BEGIN SELECT RAISE(ABORT, 'batch_lines_never_changed'); END;
CREATE TRIGGER "bench_notes_once_added" BEFORE INSERT ON "bench_notes"
WHEN EXISTS (SELECT 1 FROM "bench_notes" WHERE "run" = NEW."run" AND "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'bench_notes_once'); END;
CREATE TRIGGER "bench_notes_never_changed_changed" BEFORE UPDATE ON "bench_notes"
BEGIN SELECT RAISE(ABORT, 'bench_notes_never_changed'); END;
CREATE TRIGGER "bench_notes_never_changed_removed" BEFORE DELETE ON "bench_notes"
BEGIN SELECT RAISE(ABORT, 'bench_notes_never_changed'); END;

-- The ledger's table again, with the kind "weighed". What names it stands aside meanwhile, or SQLite would not let it be
-- renamed; it is put back as it was.
DROP TRIGGER "postings_once_added";
DROP TRIGGER "postings_with_lines_added";
DROP TRIGGER "postings_never_changed_changed";
DROP TRIGGER "postings_never_changed_removed";
DROP TRIGGER "entries_with_posting_added";
DROP TRIGGER "balances_follow_entries_added";
DROP TRIGGER "balances_follow_entries_changed";
DROP TRIGGER "day_totals_follow_entries_added";
DROP TRIGGER "day_totals_follow_entries_changed";
DROP TRIGGER "postings_taken_apart";
CREATE TABLE "new_postings" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "reason" TEXT,
    "reverses" TEXT,
    "lines" TEXT,
    CONSTRAINT "postings_reverses_fkey" FOREIGN KEY ("reverses") REFERENCES "new_postings" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "postings_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 300),
    CONSTRAINT "postings_kind" CHECK ("kind" IN ('opening', 'correction', 'received', 'late cost', 'weighed', 'made', 'counted', 'held', 'released', 'written off', 'sold', 'taken back', 'reversal')),
    CONSTRAINT "postings_day" CHECK ("day" IS date("day") AND "day" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "postings_reason" CHECK ("reason" IS NULL OR (typeof("reason") = 'text' AND length("reason") BETWEEN 1 AND 1000)),
    CONSTRAINT "postings_reverses" CHECK (("reverses" IS NOT NULL) = ("kind" = 'reversal')),
    CONSTRAINT "postings_lines" CHECK ("lines" IS NULL OR (json_valid("lines") AND json_type("lines") = 'array'))
);
DROP INDEX "postings_id_key";
DROP INDEX "postings_reverses_key";
DROP INDEX "postings_day_idx";
DROP INDEX "postings_open";
CREATE UNIQUE INDEX "postings_id_key" ON "new_postings"("id");
CREATE UNIQUE INDEX "postings_reverses_key" ON "new_postings"("reverses");
CREATE INDEX "postings_day_idx" ON "new_postings"("day");
CREATE INDEX "postings_open" ON "new_postings"("sequence") WHERE "lines" IS NOT NULL;
INSERT INTO "new_postings" ("sequence", "id", "kind", "day", "reason", "reverses", "lines")
  SELECT "sequence", "id", "kind", "day", "reason", "reverses", "lines" FROM "postings";
DROP TABLE "postings";
ALTER TABLE "new_postings" RENAME TO "postings";
CREATE TRIGGER "postings_once_added" BEFORE INSERT ON "postings"
WHEN EXISTS (SELECT 1 FROM "postings" WHERE "id" = NEW."id" OR "sequence" = NEW."sequence" OR "reverses" = NEW."reverses")
BEGIN SELECT RAISE(ABORT, 'postings_once'); END;
CREATE TRIGGER "postings_with_lines_added" BEFORE INSERT ON "postings"
WHEN NEW."lines" IS NULL
BEGIN SELECT RAISE(ABORT, 'postings_with_lines'); END;
CREATE TRIGGER "postings_never_changed_changed" BEFORE UPDATE ON "postings"
WHEN OLD."lines" IS NULL OR NEW."lines" IS NOT NULL OR NEW."sequence" <> OLD."sequence" OR NEW."id" <> OLD."id"
  OR NEW."kind" <> OLD."kind" OR NEW."day" <> OLD."day" OR NEW."reason" IS NOT OLD."reason" OR NEW."reverses" IS NOT OLD."reverses"
BEGIN SELECT RAISE(ABORT, 'postings_never_changed'); END;
CREATE TRIGGER "postings_never_changed_removed" BEFORE DELETE ON "postings"
BEGIN SELECT RAISE(ABORT, 'postings_never_changed'); END;
CREATE TRIGGER "entries_with_posting_added" BEFORE INSERT ON "entries"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL AND "sequence" = NEW."posting")
BEGIN SELECT RAISE(ABORT, 'entries_with_posting'); END;
CREATE TRIGGER "balances_follow_entries_added" BEFORE INSERT ON "balances"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'balances_follow_entries'); END;
CREATE TRIGGER "balances_follow_entries_changed" BEFORE UPDATE ON "balances"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'balances_follow_entries'); END;
CREATE TRIGGER "day_totals_follow_entries_added" BEFORE INSERT ON "day_totals"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'day_totals_follow_entries'); END;
CREATE TRIGGER "day_totals_follow_entries_changed" BEFORE UPDATE ON "day_totals"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'day_totals_follow_entries'); END;
CREATE TRIGGER "postings_taken_apart" AFTER INSERT ON "postings"
BEGIN
  INSERT INTO "entries" ("posting", "position", "day", "of", "lot", "place", "run", "quantity", "materials", "labour", "overhead")
  SELECT NEW."sequence", CAST("key" AS INTEGER), NEW."day", "value" ->> 0, "value" ->> 1, "value" ->> 2, "value" ->> 3,
    "value" ->> 4, "value" ->> 5, "value" ->> 6, "value" ->> 7
  FROM json_each(NEW."lines");

  SELECT RAISE(ABORT, 'postings_in_order') WHERE NEW."sequence" <> (SELECT max("sequence") FROM "postings");
  SELECT RAISE(ABORT, 'postings_entries')
  WHERE json_array_length(NEW."lines") = 0
    OR (SELECT count(*) FROM "entries" WHERE "posting" = NEW."sequence") <> json_array_length(NEW."lines");
  SELECT RAISE(ABORT, 'postings_quantity') WHERE EXISTS (
    SELECT 1 FROM "entries" WHERE "posting" = NEW."sequence" GROUP BY "of", "lot" HAVING sum("quantity") <> 0);
  SELECT RAISE(ABORT, 'postings_value') WHERE EXISTS (
    SELECT 1 FROM "entries" WHERE "posting" = NEW."sequence" GROUP BY "posting"
    HAVING sum("materials") <> 0 OR sum("labour") <> 0 OR sum("overhead") <> 0);
  SELECT RAISE(ABORT, 'postings_unknown_lot') WHERE EXISTS (
    SELECT 1 FROM "entries" e WHERE e."posting" = NEW."sequence" AND NOT CASE e."of"
      WHEN 'material' THEN EXISTS (SELECT 1 FROM "lots" l WHERE l."id" = e."lot")
      ELSE EXISTS (SELECT 1 FROM "finished_lots" l WHERE l."id" = e."lot") END);
  SELECT RAISE(ABORT, 'postings_reversal') WHERE NEW."reverses" IS NOT NULL AND (
    NOT EXISTS (SELECT 1 FROM "postings" p WHERE p."id" = NEW."reverses" AND p."kind" <> 'reversal' AND p."day" <= NEW."day")
    OR EXISTS (
      SELECT 1 FROM "entries"
      WHERE "posting" IN (NEW."sequence", (SELECT p."sequence" FROM "postings" p WHERE p."id" = NEW."reverses"))
      GROUP BY "of", "lot", "place", "run"
      HAVING sum("quantity") <> 0 OR sum("materials") <> 0 OR sum("labour") <> 0 OR sum("overhead") <> 0));

  INSERT INTO "balances" ("of", "lot", "place", "run", "quantity", "materials", "labour", "overhead")
  SELECT DISTINCT "of", "lot", "place", "run", 0, 0, 0, 0 FROM "entries" e
  WHERE e."posting" = NEW."sequence" AND NOT EXISTS (
    SELECT 1 FROM "balances" b
    WHERE b."of" = e."of" AND b."lot" = e."lot" AND b."place" = e."place" AND b."run" = e."run");
  UPDATE "balances" SET
    "quantity" = "balances"."quantity" + s."quantity",
    "materials" = "balances"."materials" + s."materials",
    "labour" = "balances"."labour" + s."labour",
    "overhead" = "balances"."overhead" + s."overhead"
  FROM (
    SELECT "of", "lot", "place", "run", sum("quantity") AS "quantity", sum("materials") AS "materials", sum("labour") AS "labour",
      sum("overhead") AS "overhead"
    FROM "entries" WHERE "posting" = NEW."sequence" GROUP BY "of", "lot", "place", "run") s
  WHERE "balances"."of" = s."of" AND "balances"."lot" = s."lot" AND "balances"."place" = s."place" AND "balances"."run" = s."run";

  INSERT INTO "day_totals" ("of", "place", "day", "materials", "labour", "overhead")
  SELECT DISTINCT e."of", e."place", NEW."day", 0, 0, 0 FROM "entries" e
  WHERE e."posting" = NEW."sequence" AND NOT EXISTS (
    SELECT 1 FROM "day_totals" t WHERE t."of" = e."of" AND t."place" = e."place" AND t."day" = NEW."day");
  UPDATE "day_totals" SET
    "materials" = "day_totals"."materials" + s."materials",
    "labour" = "day_totals"."labour" + s."labour",
    "overhead" = "day_totals"."overhead" + s."overhead"
  FROM (
    SELECT "of", "place", sum("materials") AS "materials", sum("labour") AS "labour", sum("overhead") AS "overhead"
    FROM "entries" WHERE "posting" = NEW."sequence" GROUP BY "of", "place") s
  WHERE "day_totals"."of" = s."of" AND "day_totals"."place" = s."place" AND "day_totals"."day" = NEW."day";

  SELECT RAISE(ABORT, 'postings_out_of_range') WHERE EXISTS (
    SELECT 1 FROM "entries" e JOIN "balances" b USING ("of", "lot", "place", "run")
    WHERE e."posting" = NEW."sequence" AND (
      abs(b."quantity") > 9007199254740991 OR abs(b."materials") > 9007199254740991 OR abs(b."labour") > 9007199254740991 OR abs(b."overhead") > 9007199254740991));
  SELECT RAISE(ABORT, 'postings_below_zero') WHERE EXISTS (
    SELECT 1 FROM "entries" e JOIN "balances" b USING ("of", "lot", "place", "run")
    WHERE e."posting" = NEW."sequence" AND (
      (e."place" IN ('shelf', 'hold', 'finished', 'sold') AND (
        b."quantity" < 0 OR b."materials" < 0 OR b."labour" < 0 OR b."overhead" < 0
        OR (b."quantity" = 0 AND (b."materials" <> 0 OR b."labour" <> 0 OR b."overhead" <> 0))))
      OR (e."place" = 'batch' AND e."of" = 'material' AND b."quantity" < 0)));
  -- What a place held before each later day on which something moved there is what it holds now less what moved from
  -- that day on. Most postings are of the last day, and have no later one to look at.
  SELECT RAISE(ABORT, 'postings_below_zero_later') WHERE NEW."day" < (SELECT max("day") FROM "postings") AND EXISTS (
    SELECT 1 FROM (SELECT DISTINCT "of", "lot", "place", "run" FROM "entries" WHERE "posting" = NEW."sequence") t
      JOIN "balances" b USING ("of", "lot", "place", "run")
    WHERE (b."place" IN ('shelf', 'hold', 'finished', 'sold') OR (b."place" = 'batch' AND b."of" = 'material')) AND EXISTS (
      SELECT 1 FROM (
        SELECT sum(e."quantity") OVER "later" AS "quantity", sum(e."materials") OVER "later" AS "materials",
          sum(e."labour") OVER "later" AS "labour", sum(e."overhead") OVER "later" AS "overhead"
        FROM "entries" e
        WHERE e."of" = b."of" AND e."lot" = b."lot" AND e."place" = b."place" AND e."run" = b."run" AND e."day" > NEW."day"
        WINDOW "later" AS (ORDER BY e."day" DESC)) l
      WHERE b."quantity" < l."quantity" OR (b."place" <> 'batch' AND (
        b."materials" < l."materials" OR b."labour" < l."labour" OR b."overhead" < l."overhead"
        OR (b."quantity" = l."quantity" AND (
          b."materials" <> l."materials" OR b."labour" <> l."labour" OR b."overhead" <> l."overhead"))))));
  UPDATE "postings" SET "lines" = NULL WHERE "sequence" = NEW."sequence";
END;
