-- The material that a run of a product makes, where its formula is a premix made ahead. Of what is there nobody has said so.

-- AlterTable. A column is added and the table not rebuilt, which would lose its CHECKs.
ALTER TABLE "products" ADD COLUMN "madeInto" TEXT
  CONSTRAINT "products_madeInto_fkey" REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- CreateIndex
CREATE UNIQUE INDEX "products_madeInto_key" ON "products"("madeInto");

-- Written by hand: a formula is made ahead by one product at most.
CREATE UNIQUE INDEX "products_made_ahead" ON "products"("formula") WHERE "madeInto" IS NOT NULL;
