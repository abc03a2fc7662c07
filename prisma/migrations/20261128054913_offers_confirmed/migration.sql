-- What a supplier says of an offer beyond its price: how long it keeps after it comes, and when the price was last heard.
-- Nobody has said so of the offers that are there.

-- AlterTable
ALTER TABLE "offers" ADD COLUMN "confirmedOn" TEXT
  CONSTRAINT "offers_confirmedOn" CHECK ("confirmedOn" IS NULL OR ("confirmedOn" IS date("confirmedOn") AND "confirmedOn" BETWEEN '1900-01-01' AND '2999-12-31'));
ALTER TABLE "offers" ADD COLUMN "shelfLifeDays" INTEGER
  CONSTRAINT "offers_shelfLifeDays" CHECK ("shelfLifeDays" IS NULL OR (typeof("shelfLifeDays") = 'integer' AND "shelfLifeDays" BETWEEN 0 AND 3660));
