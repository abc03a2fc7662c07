-- How often the maker counts a material. Nobody has said so of the materials that are there.

-- CreateTable
CREATE TABLE "count_rhythms" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "days" INTEGER,
    "draws" INTEGER,
    CONSTRAINT "count_rhythms_id_fkey" FOREIGN KEY ("id") REFERENCES "materials" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "count_rhythms_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "count_rhythms_days" CHECK ("days" IS NULL OR (typeof("days") = 'integer' AND "days" BETWEEN 1 AND 3660)),
    CONSTRAINT "count_rhythms_draws" CHECK ("draws" IS NULL OR (typeof("draws") = 'integer' AND "draws" BETWEEN 1 AND 3660)),
    CONSTRAINT "count_rhythms_either" CHECK ("days" IS NOT NULL OR "draws" IS NOT NULL)
);

-- CreateIndex
CREATE UNIQUE INDEX "count_rhythms_position_key" ON "count_rhythms"("position");
