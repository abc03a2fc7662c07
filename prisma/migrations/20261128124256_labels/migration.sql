-- What the maker types for the labels of products, and the sheets that they are printed on. Nobody has said any of it yet.

-- CreateTable
CREATE TABLE "labels" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "product" TEXT NOT NULL,
    "market" TEXT NOT NULL,
    "title" TEXT,
    "function" TEXT,
    "cautions" TEXT,
    "responsible" TEXT,
    "address" TEXT,
    "contact" TEXT,
    "madeIn" TEXT,
    "monthsOpen" INTEGER,
    "gtin" TEXT,
    "code" TEXT,
    "showsPh" BOOLEAN NOT NULL,
    "showsMade" BOOLEAN NOT NULL,

    CONSTRAINT "labels_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "labels_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "labels_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "labels_market" CHECK ("market" IN ('EU', 'GB', 'US')),
    CONSTRAINT "labels_title" CHECK ("title" IS NULL OR (typeof("title") = 'text' AND length("title") BETWEEN 1 AND 200)),
    CONSTRAINT "labels_function" CHECK ("function" IS NULL OR (typeof("function") = 'text' AND length("function") BETWEEN 1 AND 200)),
    CONSTRAINT "labels_cautions" CHECK ("cautions" IS NULL OR (typeof("cautions") = 'text' AND length("cautions") BETWEEN 1 AND 1000)),
    CONSTRAINT "labels_responsible" CHECK ("responsible" IS NULL OR (typeof("responsible") = 'text' AND length("responsible") BETWEEN 1 AND 200)),
    CONSTRAINT "labels_address" CHECK ("address" IS NULL OR (typeof("address") = 'text' AND length("address") BETWEEN 1 AND 1000)),
    CONSTRAINT "labels_contact" CHECK ("contact" IS NULL OR (typeof("contact") = 'text' AND length("contact") BETWEEN 1 AND 200)),
    CONSTRAINT "labels_madeIn" CHECK ("madeIn" IS NULL OR (typeof("madeIn") = 'text' AND length("madeIn") BETWEEN 1 AND 200)),
    CONSTRAINT "labels_monthsOpen" CHECK ("monthsOpen" IS NULL OR (typeof("monthsOpen") = 'integer' AND "monthsOpen" BETWEEN 1 AND 120)),
    CONSTRAINT "labels_gtin" CHECK ("gtin" NOT GLOB '*[^0-9]*' AND length("gtin") IN (8, 12, 13, 14)),
    CONSTRAINT "labels_code" CHECK ("code" IN ('QR', 'Code 128')),
    CONSTRAINT "labels_showsPh" CHECK (typeof("showsPh") = 'integer' AND "showsPh" IN (0, 1)),
    CONSTRAINT "labels_showsMade" CHECK (typeof("showsMade") = 'integer' AND "showsMade" IN (0, 1))
);

-- CreateTable
CREATE TABLE "papers" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "page" TEXT NOT NULL,
    "columns" INTEGER NOT NULL,
    "rows" INTEGER NOT NULL,
    "labelWidth" TEXT NOT NULL,
    "labelHeight" TEXT NOT NULL,
    "top" TEXT NOT NULL,
    "left" TEXT NOT NULL,
    "gapAcross" TEXT NOT NULL,
    "gapDown" TEXT NOT NULL,

    CONSTRAINT "papers_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "papers_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "papers_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "papers_page" CHECK ("page" IN ('A4', 'Letter')),
    CONSTRAINT "papers_columns" CHECK (typeof("columns") = 'integer' AND "columns" BETWEEN 1 AND 100),
    CONSTRAINT "papers_rows" CHECK (typeof("rows") = 'integer' AND "rows" BETWEEN 1 AND 100),
    CONSTRAINT "papers_labelWidth" CHECK (length("labelWidth") BETWEEN 1 AND 60 AND "labelWidth" NOT GLOB '*[^0-9.]*' AND "labelWidth" GLOB '[0-9]*' AND "labelWidth" GLOB '*[0-9]' AND "labelWidth" NOT GLOB '*.*.*' AND "labelWidth" NOT GLOB '0[0-9]*' AND CAST("labelWidth" AS REAL) <= 300),
    CONSTRAINT "papers_labelHeight" CHECK (length("labelHeight") BETWEEN 1 AND 60 AND "labelHeight" NOT GLOB '*[^0-9.]*' AND "labelHeight" GLOB '[0-9]*' AND "labelHeight" GLOB '*[0-9]' AND "labelHeight" NOT GLOB '*.*.*' AND "labelHeight" NOT GLOB '0[0-9]*' AND CAST("labelHeight" AS REAL) <= 300),
    CONSTRAINT "papers_top" CHECK (length("top") BETWEEN 1 AND 60 AND "top" NOT GLOB '*[^0-9.]*' AND "top" GLOB '[0-9]*' AND "top" GLOB '*[0-9]' AND "top" NOT GLOB '*.*.*' AND "top" NOT GLOB '0[0-9]*' AND CAST("top" AS REAL) <= 300),
    CONSTRAINT "papers_left" CHECK (length("left") BETWEEN 1 AND 60 AND "left" NOT GLOB '*[^0-9.]*' AND "left" GLOB '[0-9]*' AND "left" GLOB '*[0-9]' AND "left" NOT GLOB '*.*.*' AND "left" NOT GLOB '0[0-9]*' AND CAST("left" AS REAL) <= 300),
    CONSTRAINT "papers_gapAcross" CHECK (length("gapAcross") BETWEEN 1 AND 60 AND "gapAcross" NOT GLOB '*[^0-9.]*' AND "gapAcross" GLOB '[0-9]*' AND "gapAcross" GLOB '*[0-9]' AND "gapAcross" NOT GLOB '*.*.*' AND "gapAcross" NOT GLOB '0[0-9]*' AND CAST("gapAcross" AS REAL) <= 300),
    CONSTRAINT "papers_gapDown" CHECK (length("gapDown") BETWEEN 1 AND 60 AND "gapDown" NOT GLOB '*[^0-9.]*' AND "gapDown" GLOB '[0-9]*' AND "gapDown" GLOB '*[0-9]' AND "gapDown" NOT GLOB '*.*.*' AND "gapDown" NOT GLOB '0[0-9]*' AND CAST("gapDown" AS REAL) <= 300)
);

-- CreateIndex
CREATE UNIQUE INDEX "labels_position_key" ON "labels"("position");

-- CreateIndex
CREATE INDEX "labels_product_idx" ON "labels"("product");

-- CreateIndex
CREATE UNIQUE INDEX "papers_position_key" ON "papers"("position");
