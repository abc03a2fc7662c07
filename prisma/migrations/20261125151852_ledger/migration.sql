-- The ledger, as lib/domain/ledger has it. What is there of a lot no longer stands with the lot: it is what the entries
-- come to. CHECKs and triggers are written by hand.

-- CreateTable
CREATE TABLE "postings" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "reason" TEXT,
    "reverses" TEXT,
    "lines" TEXT,
    CONSTRAINT "postings_reverses_fkey" FOREIGN KEY ("reverses") REFERENCES "postings" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "postings_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 300),
    CONSTRAINT "postings_kind" CHECK ("kind" IN ('opening', 'correction', 'received', 'late cost', 'made', 'counted', 'held', 'released', 'written off', 'sold', 'taken back', 'reversal')),
    CONSTRAINT "postings_day" CHECK ("day" IS date("day") AND "day" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "postings_reason" CHECK ("reason" IS NULL OR (typeof("reason") = 'text' AND length("reason") BETWEEN 1 AND 1000)),
    CONSTRAINT "postings_reverses" CHECK (("reverses" IS NOT NULL) = ("kind" = 'reversal')),
    CONSTRAINT "postings_lines" CHECK ("lines" IS NULL OR (json_valid("lines") AND json_type("lines") = 'array'))
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
    CONSTRAINT "entries_posting_fkey" FOREIGN KEY ("posting") REFERENCES "postings" ("sequence") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "entries_of" CHECK ("of" IN ('material', 'finished')),
    CONSTRAINT "entries_place" CHECK ("place" IN ('supplier', 'shelf', 'hold', 'batch', 'finished', 'sold', 'lost', 'expired', 'counted', 'labour', 'overhead')),
    CONSTRAINT "entries_run" CHECK (typeof("run") = 'text' AND length("run") <= 200 AND ("run" <> '') = ("place" = 'batch')),
    CONSTRAINT "entries_home" CHECK (NOT ("of" = 'finished' AND "place" = 'shelf') AND NOT ("of" = 'material' AND "place" IN ('finished', 'sold'))),
    CONSTRAINT "entries_quantity" CHECK (typeof("quantity") = 'integer' AND "quantity" BETWEEN -9007199254740991 AND 9007199254740991),
    CONSTRAINT "entries_materials" CHECK (typeof("materials") = 'integer' AND "materials" BETWEEN -9007199254740991 AND 9007199254740991),
    CONSTRAINT "entries_labour" CHECK (typeof("labour") = 'integer' AND "labour" BETWEEN -9007199254740991 AND 9007199254740991),
    CONSTRAINT "entries_overhead" CHECK (typeof("overhead") = 'integer' AND "overhead" BETWEEN -9007199254740991 AND 9007199254740991)
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

-- CreateTable
CREATE TABLE "day_totals" (
    "of" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "materials" BIGINT NOT NULL,
    "labour" BIGINT NOT NULL,
    "overhead" BIGINT NOT NULL,

    PRIMARY KEY ("of", "place", "day")
);

-- CreateIndex
CREATE UNIQUE INDEX "postings_id_key" ON "postings"("id");

-- CreateIndex
CREATE UNIQUE INDEX "postings_reverses_key" ON "postings"("reverses");

-- CreateIndex
CREATE INDEX "postings_day_idx" ON "postings"("day");

-- CreateIndex
CREATE INDEX "entries_of_lot_place_run_day_idx" ON "entries"("of", "lot", "place", "run", "day");

-- CreateIndex
CREATE INDEX "balances_place_idx" ON "balances"("place");

-- What the lots held, until the ledger can take it.
CREATE TABLE "old_lots" AS SELECT "position", "id", "received", "remaining", "value" FROM "lots";
CREATE TABLE "old_finished_lots" AS SELECT "position", "id", "made", "units" FROM "finished_lots";

-- RedefineTables
CREATE TABLE "new_finished_lots" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER,
    "product" TEXT,
    "made" TEXT NOT NULL,
    "bestBefore" TEXT,
    CONSTRAINT "finished_lots_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "finished_lots_listed" CHECK ("position" IS NULL OR "product" IS NOT NULL),
    CONSTRAINT "finished_lots_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "finished_lots_position" CHECK ("position" IS NULL OR (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)),
    CONSTRAINT "finished_lots_made" CHECK ("made" IS date("made") AND "made" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "finished_lots_bestBefore" CHECK ("bestBefore" IS NULL OR ("bestBefore" IS date("bestBefore") AND "bestBefore" BETWEEN '1900-01-01' AND '2999-12-31'))
);
INSERT INTO "new_finished_lots" ("id", "position", "product", "made", "bestBefore") SELECT "id", "position", "product", "made", "bestBefore" FROM "finished_lots";
DROP TABLE "finished_lots";
ALTER TABLE "new_finished_lots" RENAME TO "finished_lots";
CREATE UNIQUE INDEX "finished_lots_position_key" ON "finished_lots"("position");
CREATE INDEX "finished_lots_product_idx" ON "finished_lots"("product");
CREATE TABLE "new_lots" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER,
    "material" TEXT,
    "received" TEXT NOT NULL,
    "expires" TEXT,
    CONSTRAINT "lots_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "lots_listed" CHECK ("position" IS NULL OR "material" IS NOT NULL),
    CONSTRAINT "lots_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "lots_position" CHECK ("position" IS NULL OR (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647)),
    CONSTRAINT "lots_received" CHECK ("received" IS date("received") AND "received" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "lots_expires" CHECK ("expires" IS NULL OR ("expires" IS date("expires") AND "expires" BETWEEN '1900-01-01' AND '2999-12-31'))
);
INSERT INTO "new_lots" ("id", "position", "material", "received", "expires") SELECT "id", "position", "material", "received", "expires" FROM "lots";
DROP TABLE "lots";
ALTER TABLE "new_lots" RENAME TO "lots";
CREATE UNIQUE INDEX "lots_position_key" ON "lots"("position");
CREATE INDEX "lots_material_idx" ON "lots"("material");

-- Written by hand: the batches, which are few among the entries of a material.
CREATE INDEX "entries_of_runs" ON "entries"("run", "posting") WHERE "run" <> '';
-- None but while one is being inserted.
CREATE INDEX "postings_open" ON "postings"("sequence") WHERE "lines" IS NOT NULL;

-- A posting is inserted once, with its entries, and then never changed. BEFORE, because INSERT OR REPLACE would take
-- the other away without asking.
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

-- Entries come with their posting alone, and balances follow them alone.
CREATE TRIGGER "entries_with_posting_added" BEFORE INSERT ON "entries"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL AND "sequence" = NEW."posting")
BEGIN SELECT RAISE(ABORT, 'entries_with_posting'); END;
CREATE TRIGGER "entries_never_changed_changed" BEFORE UPDATE ON "entries"
BEGIN SELECT RAISE(ABORT, 'entries_never_changed'); END;
CREATE TRIGGER "entries_never_changed_removed" BEFORE DELETE ON "entries"
BEGIN SELECT RAISE(ABORT, 'entries_never_changed'); END;
CREATE TRIGGER "balances_follow_entries_added" BEFORE INSERT ON "balances"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'balances_follow_entries'); END;
CREATE TRIGGER "balances_follow_entries_changed" BEFORE UPDATE ON "balances"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'balances_follow_entries'); END;
CREATE TRIGGER "balances_follow_entries_removed" BEFORE DELETE ON "balances"
BEGIN SELECT RAISE(ABORT, 'balances_follow_entries'); END;
CREATE TRIGGER "day_totals_follow_entries_added" BEFORE INSERT ON "day_totals"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'day_totals_follow_entries'); END;
CREATE TRIGGER "day_totals_follow_entries_changed" BEFORE UPDATE ON "day_totals"
WHEN NOT EXISTS (SELECT 1 FROM "postings" WHERE "lines" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'day_totals_follow_entries'); END;
CREATE TRIGGER "day_totals_follow_entries_removed" BEFORE DELETE ON "day_totals"
BEGIN SELECT RAISE(ABORT, 'day_totals_follow_entries'); END;

-- Takes a posting apart and looks at every sum. No CHECK stands on the balances and no conflict clause is used here:
-- INSERT OR IGNORE from outside would make them skip a row, where RAISE ends the whole statement.
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

-- A lot that the ledger names stays, under its id. Struck off the list it has no position.
CREATE TRIGGER "lots_posted_removed" BEFORE DELETE ON "lots"
WHEN EXISTS (SELECT 1 FROM "balances" WHERE "of" = 'material' AND "lot" = OLD."id")
BEGIN SELECT RAISE(ABORT, 'lots_posted'); END;
CREATE TRIGGER "lots_posted_renamed" BEFORE UPDATE OF "id" ON "lots"
WHEN NEW."id" <> OLD."id" AND EXISTS (SELECT 1 FROM "balances" WHERE "of" = 'material' AND "lot" = OLD."id")
BEGIN SELECT RAISE(ABORT, 'lots_posted'); END;
CREATE TRIGGER "finished_lots_posted_removed" BEFORE DELETE ON "finished_lots"
WHEN EXISTS (SELECT 1 FROM "balances" WHERE "of" = 'finished' AND "lot" = OLD."id")
BEGIN SELECT RAISE(ABORT, 'finished_lots_posted'); END;
CREATE TRIGGER "finished_lots_posted_renamed" BEFORE UPDATE OF "id" ON "finished_lots"
WHEN NEW."id" <> OLD."id" AND EXISTS (SELECT 1 FROM "balances" WHERE "of" = 'finished' AND "lot" = OLD."id")
BEGIN SELECT RAISE(ABORT, 'finished_lots_posted'); END;

-- Stores from before there was a ledger: every lot that is there becomes a posting that opens the books with it. What
-- finished units cost was not kept; they open without value.
INSERT INTO "postings" ("id", "kind", "day", "lines")
SELECT 'opening lot ' || "id", 'opening', "received", json_array(
  json_array('material', "id", 'supplier', '', -"remaining", -"value", 0, 0),
  json_array('material', "id", 'shelf', '', "remaining", "value", 0, 0))
FROM "old_lots" WHERE "remaining" > 0 ORDER BY "position";
INSERT INTO "postings" ("id", "kind", "day", "lines")
SELECT 'opening finished ' || "id", 'opening', "made", json_array(
  json_array('finished', "id", 'supplier', '', -"units", 0, 0, 0),
  json_array('finished', "id", 'finished', '', "units", 0, 0, 0))
FROM "old_finished_lots" WHERE "units" > 0 ORDER BY "position";
DROP TABLE "old_lots";
DROP TABLE "old_finished_lots";
