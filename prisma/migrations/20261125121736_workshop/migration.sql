-- The first schema: a workshop as lib/domain/workshop.ts has it, in the order of its lists. Quantities are whole µg or
-- pieces, money whole micro-units, shares parts per million, days YYYY-MM-DD. The CHECKs are written by hand: they hold
-- what must never be, whoever writes. A plain decimal is digits without a leading zero, perhaps a point and digits.
-- That the percents of a formula make 100 is not among them: a draft may fall short.

-- CreateTable
CREATE TABLE "settings" (
    "id" INTEGER NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "today" TEXT,
    "horizonDays" INTEGER NOT NULL,
    "coverDays" INTEGER,
    "labourPerHour" BIGINT NOT NULL,
    "overheadPerHour" BIGINT NOT NULL,
    "balanceStepNumber" TEXT NOT NULL,
    "balanceStepUnit" TEXT NOT NULL,
    "balanceStep" BIGINT NOT NULL,
    "tax" BIGINT NOT NULL,
    "paymentFee" BIGINT NOT NULL,
    "paymentFeeFixed" BIGINT NOT NULL,
    CONSTRAINT "settings_one_row" CHECK ("id" = 1),
    CONSTRAINT "settings_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "settings_currency" CHECK (typeof("currency") = 'text' AND "currency" GLOB '[A-Z][A-Z][A-Z]'),
    CONSTRAINT "settings_today" CHECK ("today" IS NULL OR ("today" IS date("today") AND "today" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "settings_horizonDays" CHECK (typeof("horizonDays") = 'integer' AND "horizonDays" BETWEEN 0 AND 3660),
    CONSTRAINT "settings_coverDays" CHECK ("coverDays" IS NULL OR (typeof("coverDays") = 'integer' AND "coverDays" BETWEEN 0 AND 3660)),
    CONSTRAINT "settings_labourPerHour" CHECK (typeof("labourPerHour") = 'integer' AND "labourPerHour" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "settings_overheadPerHour" CHECK (typeof("overheadPerHour") = 'integer' AND "overheadPerHour" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "settings_balanceStep" CHECK (typeof("balanceStep") = 'integer' AND "balanceStep" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "settings_balanceStepNumber" CHECK (length("balanceStepNumber") BETWEEN 1 AND 60 AND "balanceStepNumber" NOT GLOB '*[^0-9.]*' AND "balanceStepNumber" GLOB '[0-9]*' AND "balanceStepNumber" GLOB '*[0-9]' AND "balanceStepNumber" NOT GLOB '*.*.*' AND "balanceStepNumber" NOT GLOB '0[0-9]*'),
    CONSTRAINT "settings_balanceStepUnit" CHECK ("balanceStepUnit" IN ('mg', 'g', 'kg', 'oz', 'lb')),
    CONSTRAINT "settings_tax" CHECK (typeof("tax") = 'integer' AND "tax" BETWEEN 0 AND 1000000),
    CONSTRAINT "settings_paymentFee" CHECK (typeof("paymentFee") = 'integer' AND "paymentFee" BETWEEN 0 AND 999999),
    CONSTRAINT "settings_paymentFeeFixed" CHECK (typeof("paymentFeeFixed") = 'integer' AND "paymentFeeFixed" BETWEEN 0 AND 9007199254740991)
);

-- CreateTable
CREATE TABLE "closed_days" (
    "position" INTEGER NOT NULL PRIMARY KEY,
    "day" TEXT NOT NULL,
    CONSTRAINT "closed_days_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "closed_days_day" CHECK ("day" IS date("day") AND "day" BETWEEN '1900-01-01' AND '2999-12-31')
);

-- CreateTable
CREATE TABLE "suppliers" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "leadDays" INTEGER NOT NULL,
    "leadCounts" TEXT NOT NULL,
    "shipping" BIGINT NOT NULL,
    "shippingFreeFrom" BIGINT,
    "minimumOrder" BIGINT,
    CONSTRAINT "suppliers_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "suppliers_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "suppliers_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "suppliers_leadDays" CHECK (typeof("leadDays") = 'integer' AND "leadDays" BETWEEN 0 AND 3660),
    CONSTRAINT "suppliers_leadCounts" CHECK ("leadCounts" IN ('working', 'calendar')),
    CONSTRAINT "suppliers_shipping" CHECK (typeof("shipping") = 'integer' AND "shipping" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "suppliers_shippingFreeFrom" CHECK ("shippingFreeFrom" IS NULL OR (typeof("shippingFreeFrom") = 'integer' AND "shippingFreeFrom" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "suppliers_minimumOrder" CHECK ("minimumOrder" IS NULL OR (typeof("minimumOrder") = 'integer' AND "minimumOrder" BETWEEN 0 AND 9007199254740991))
);

-- CreateTable
CREATE TABLE "supplier_closed_days" (
    "supplier" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "day" TEXT NOT NULL,

    PRIMARY KEY ("supplier", "position"),
    CONSTRAINT "supplier_closed_days_supplier_fkey" FOREIGN KEY ("supplier") REFERENCES "suppliers" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "supplier_closed_days_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "supplier_closed_days_day" CHECK ("day" IS date("day") AND "day" BETWEEN '1900-01-01' AND '2999-12-31')
);

-- CreateTable
CREATE TABLE "materials" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "measure" TEXT NOT NULL,
    "density" BIGINT,
    "safetyStockNumber" TEXT,
    "safetyStockUnit" TEXT,
    "safetyStock" BIGINT,
    "safetyDays" INTEGER NOT NULL,
    "useMin" BIGINT,
    "useMax" BIGINT,
    "addBelow" TEXT,
    CONSTRAINT "materials_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "materials_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "materials_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "materials_kind" CHECK ("kind" IN ('ingredient', 'packaging', 'consumable')),
    CONSTRAINT "materials_measure" CHECK ("measure" IN ('mass', 'count')),
    CONSTRAINT "materials_density" CHECK ("density" IS NULL OR (typeof("density") = 'integer' AND "density" BETWEEN 1 AND 9007199254740991)),
    CONSTRAINT "materials_safetyStock" CHECK ("safetyStock" IS NULL OR (typeof("safetyStock") = 'integer' AND "safetyStock" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "materials_safetyStockNumber" CHECK ("safetyStockNumber" IS NULL OR (length("safetyStockNumber") BETWEEN 1 AND 60 AND "safetyStockNumber" NOT GLOB '*[^0-9.]*' AND "safetyStockNumber" GLOB '[0-9]*' AND "safetyStockNumber" GLOB '*[0-9]' AND "safetyStockNumber" NOT GLOB '*.*.*' AND "safetyStockNumber" NOT GLOB '0[0-9]*')),
    CONSTRAINT "materials_safetyStockUnit" CHECK ("safetyStockUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk', 'each')),
    CONSTRAINT "materials_safetyStock_whole" CHECK (("safetyStock" IS NULL) = ("safetyStockNumber" IS NULL) AND ("safetyStock" IS NULL) = ("safetyStockUnit" IS NULL)),
    CONSTRAINT "materials_safetyDays" CHECK (typeof("safetyDays") = 'integer' AND "safetyDays" BETWEEN 0 AND 3660),
    CONSTRAINT "materials_useMin" CHECK ("useMin" IS NULL OR (typeof("useMin") = 'integer' AND "useMin" BETWEEN 0 AND 1000000)),
    CONSTRAINT "materials_useMax" CHECK ("useMax" IS NULL OR (typeof("useMax") = 'integer' AND "useMax" BETWEEN 0 AND 1000000)),
    CONSTRAINT "materials_use_range" CHECK ("useMin" <= "useMax"),
    CONSTRAINT "materials_addBelow" CHECK ("addBelow" IS NULL OR (length("addBelow") BETWEEN 1 AND 60 AND "addBelow" NOT GLOB '*[^0-9.]*' AND "addBelow" GLOB '[0-9]*' AND "addBelow" GLOB '*[0-9]' AND "addBelow" NOT GLOB '*.*.*' AND "addBelow" NOT GLOB '0[0-9]*'))
);

-- CreateTable
CREATE TABLE "offers" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "supplier" TEXT NOT NULL,
    "packNumber" TEXT NOT NULL,
    "packUnit" TEXT NOT NULL,
    "pack" BIGINT NOT NULL,
    "price" BIGINT NOT NULL,
    "minPacks" BIGINT NOT NULL,
    "preferred" BOOLEAN NOT NULL,
    CONSTRAINT "offers_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "offers_supplier_fkey" FOREIGN KEY ("supplier") REFERENCES "suppliers" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "offers_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "offers_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "offers_pack" CHECK (typeof("pack") = 'integer' AND "pack" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "offers_packNumber" CHECK (length("packNumber") BETWEEN 1 AND 60 AND "packNumber" NOT GLOB '*[^0-9.]*' AND "packNumber" GLOB '[0-9]*' AND "packNumber" GLOB '*[0-9]' AND "packNumber" NOT GLOB '*.*.*' AND "packNumber" NOT GLOB '0[0-9]*'),
    CONSTRAINT "offers_packUnit" CHECK ("packUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk', 'each')),
    CONSTRAINT "offers_price" CHECK (typeof("price") = 'integer' AND "price" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "offers_minPacks" CHECK (typeof("minPacks") = 'integer' AND "minPacks" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "offers_preferred" CHECK (typeof("preferred") = 'integer' AND "preferred" IN (0, 1))
);

-- CreateTable
CREATE TABLE "price_breaks" (
    "offer" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "packs" BIGINT NOT NULL,
    "price" BIGINT NOT NULL,

    PRIMARY KEY ("offer", "position"),
    CONSTRAINT "price_breaks_offer_fkey" FOREIGN KEY ("offer") REFERENCES "offers" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "price_breaks_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "price_breaks_packs" CHECK (typeof("packs") = 'integer' AND "packs" BETWEEN 2 AND 9007199254740991),
    CONSTRAINT "price_breaks_price" CHECK (typeof("price") = 'integer' AND "price" BETWEEN 1 AND 9007199254740991)
);

-- CreateTable
CREATE TABLE "lots" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "received" TEXT NOT NULL,
    "expires" TEXT,
    "remaining" BIGINT NOT NULL,
    "value" BIGINT NOT NULL,
    CONSTRAINT "lots_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "lots_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "lots_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "lots_received" CHECK ("received" IS date("received") AND "received" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "lots_expires" CHECK ("expires" IS NULL OR ("expires" IS date("expires") AND "expires" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "lots_remaining" CHECK (typeof("remaining") = 'integer' AND "remaining" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "lots_value" CHECK (typeof("value") = 'integer' AND "value" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "lots_nothing_has_no_value" CHECK ("remaining" > 0 OR "value" = 0)
);

-- CreateTable
CREATE TABLE "orders" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "supplier" TEXT NOT NULL,
    "placed" TEXT NOT NULL,
    "due" TEXT NOT NULL,
    CONSTRAINT "orders_supplier_fkey" FOREIGN KEY ("supplier") REFERENCES "suppliers" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "orders_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "orders_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "orders_placed" CHECK ("placed" IS date("placed") AND "placed" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "orders_due" CHECK ("due" IS date("due") AND "due" BETWEEN '1900-01-01' AND '2999-12-31')
);

-- CreateTable
CREATE TABLE "order_lines" (
    "order" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "quantity" BIGINT NOT NULL,
    "cost" BIGINT NOT NULL,
    "expires" TEXT,

    PRIMARY KEY ("order", "position"),
    CONSTRAINT "order_lines_order_fkey" FOREIGN KEY ("order") REFERENCES "orders" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "order_lines_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "order_lines_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "order_lines_quantity" CHECK (typeof("quantity") = 'integer' AND "quantity" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "order_lines_cost" CHECK (typeof("cost") = 'integer' AND "cost" BETWEEN 0 AND 9007199254740991),
    CONSTRAINT "order_lines_expires" CHECK ("expires" IS NULL OR ("expires" IS date("expires") AND "expires" BETWEEN '1900-01-01' AND '2999-12-31'))
);

-- CreateTable
CREATE TABLE "formulas" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "density" BIGINT,
    CONSTRAINT "formulas_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "formulas_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "formulas_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "formulas_density" CHECK ("density" IS NULL OR (typeof("density") = 'integer' AND "density" BETWEEN 1 AND 9007199254740991))
);

-- CreateTable
CREATE TABLE "formula_lines" (
    "formula" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT,
    "premix" TEXT,
    "percent" BIGINT,
    "phase" TEXT,

    PRIMARY KEY ("formula", "position"),
    CONSTRAINT "formula_lines_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "formula_lines_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "formula_lines_premix_fkey" FOREIGN KEY ("premix") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "formula_lines_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "formula_lines_material_or_premix" CHECK (("material" IS NULL) <> ("premix" IS NULL)),
    CONSTRAINT "formula_lines_not_of_itself" CHECK ("premix" <> "formula"),
    CONSTRAINT "formula_lines_percent" CHECK ("percent" IS NULL OR (typeof("percent") = 'integer' AND "percent" BETWEEN 1 AND 1000000)),
    CONSTRAINT "formula_lines_phase" CHECK ("phase" IS NULL OR (typeof("phase") = 'text' AND length("phase") BETWEEN 1 AND 200))
);

-- CreateTable
CREATE TABLE "products" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "formula" TEXT NOT NULL,
    "fillNumber" TEXT NOT NULL,
    "fillUnit" TEXT NOT NULL,
    "fill" BIGINT NOT NULL,
    "overfillNumber" TEXT,
    "overfillUnit" TEXT,
    "overfill" BIGINT,
    "processLoss" BIGINT NOT NULL,
    "heelNumber" TEXT,
    "heelUnit" TEXT,
    "heel" BIGINT,
    "usualRun" BIGINT NOT NULL,
    "labourMinutesPerRun" TEXT NOT NULL,
    "labourMinutesPerUnit" TEXT NOT NULL,
    "priceToShops" BIGINT,
    "priceToCustomers" BIGINT,
    CONSTRAINT "products_formula_fkey" FOREIGN KEY ("formula") REFERENCES "formulas" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "products_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "products_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "products_name" CHECK (typeof("name") = 'text' AND length("name") BETWEEN 1 AND 200),
    CONSTRAINT "products_fill" CHECK (typeof("fill") = 'integer' AND "fill" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "products_fillNumber" CHECK (length("fillNumber") BETWEEN 1 AND 60 AND "fillNumber" NOT GLOB '*[^0-9.]*' AND "fillNumber" GLOB '[0-9]*' AND "fillNumber" GLOB '*[0-9]' AND "fillNumber" NOT GLOB '*.*.*' AND "fillNumber" NOT GLOB '0[0-9]*'),
    CONSTRAINT "products_fillUnit" CHECK ("fillUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk')),
    CONSTRAINT "products_overfill" CHECK ("overfill" IS NULL OR (typeof("overfill") = 'integer' AND "overfill" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "products_overfillNumber" CHECK ("overfillNumber" IS NULL OR (length("overfillNumber") BETWEEN 1 AND 60 AND "overfillNumber" NOT GLOB '*[^0-9.]*' AND "overfillNumber" GLOB '[0-9]*' AND "overfillNumber" GLOB '*[0-9]' AND "overfillNumber" NOT GLOB '*.*.*' AND "overfillNumber" NOT GLOB '0[0-9]*')),
    CONSTRAINT "products_overfillUnit" CHECK ("overfillUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk')),
    CONSTRAINT "products_overfill_whole" CHECK (("overfill" IS NULL) = ("overfillNumber" IS NULL) AND ("overfill" IS NULL) = ("overfillUnit" IS NULL)),
    CONSTRAINT "products_processLoss" CHECK (typeof("processLoss") = 'integer' AND "processLoss" BETWEEN 0 AND 999999),
    CONSTRAINT "products_heel" CHECK ("heel" IS NULL OR (typeof("heel") = 'integer' AND "heel" BETWEEN 0 AND 9007199254740991)),
    CONSTRAINT "products_heelNumber" CHECK ("heelNumber" IS NULL OR (length("heelNumber") BETWEEN 1 AND 60 AND "heelNumber" NOT GLOB '*[^0-9.]*' AND "heelNumber" GLOB '[0-9]*' AND "heelNumber" GLOB '*[0-9]' AND "heelNumber" NOT GLOB '*.*.*' AND "heelNumber" NOT GLOB '0[0-9]*')),
    CONSTRAINT "products_heelUnit" CHECK ("heelUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk')),
    CONSTRAINT "products_heel_whole" CHECK (("heel" IS NULL) = ("heelNumber" IS NULL) AND ("heel" IS NULL) = ("heelUnit" IS NULL)),
    CONSTRAINT "products_usualRun" CHECK (typeof("usualRun") = 'integer' AND "usualRun" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "products_labourMinutesPerRun" CHECK (length("labourMinutesPerRun") BETWEEN 1 AND 60 AND "labourMinutesPerRun" NOT GLOB '*[^0-9.]*' AND "labourMinutesPerRun" GLOB '[0-9]*' AND "labourMinutesPerRun" GLOB '*[0-9]' AND "labourMinutesPerRun" NOT GLOB '*.*.*' AND "labourMinutesPerRun" NOT GLOB '0[0-9]*'),
    CONSTRAINT "products_labourMinutesPerUnit" CHECK (length("labourMinutesPerUnit") BETWEEN 1 AND 60 AND "labourMinutesPerUnit" NOT GLOB '*[^0-9.]*' AND "labourMinutesPerUnit" GLOB '[0-9]*' AND "labourMinutesPerUnit" GLOB '*[0-9]' AND "labourMinutesPerUnit" NOT GLOB '*.*.*' AND "labourMinutesPerUnit" NOT GLOB '0[0-9]*'),
    CONSTRAINT "products_priceToShops" CHECK ("priceToShops" IS NULL OR (typeof("priceToShops") = 'integer' AND "priceToShops" BETWEEN 1 AND 9007199254740991)),
    CONSTRAINT "products_priceToCustomers" CHECK ("priceToCustomers" IS NULL OR (typeof("priceToCustomers") = 'integer' AND "priceToCustomers" BETWEEN 1 AND 9007199254740991))
);

-- CreateTable
CREATE TABLE "packaging_items" (
    "product" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "amountNumber" TEXT NOT NULL,
    "amountUnit" TEXT NOT NULL,
    "amount" BIGINT NOT NULL,
    "spoilage" BIGINT NOT NULL,

    PRIMARY KEY ("product", "position"),
    CONSTRAINT "packaging_items_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "packaging_items_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "packaging_items_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "packaging_items_amount" CHECK (typeof("amount") = 'integer' AND "amount" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "packaging_items_amountNumber" CHECK (length("amountNumber") BETWEEN 1 AND 60 AND "amountNumber" NOT GLOB '*[^0-9.]*' AND "amountNumber" GLOB '[0-9]*' AND "amountNumber" GLOB '*[0-9]' AND "amountNumber" NOT GLOB '*.*.*' AND "amountNumber" NOT GLOB '0[0-9]*'),
    CONSTRAINT "packaging_items_amountUnit" CHECK ("amountUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk', 'each')),
    CONSTRAINT "packaging_items_spoilage" CHECK (typeof("spoilage") = 'integer' AND "spoilage" BETWEEN 0 AND 999999)
);

-- CreateTable
CREATE TABLE "per_run_items" (
    "product" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "amountNumber" TEXT NOT NULL,
    "amountUnit" TEXT NOT NULL,
    "amount" BIGINT NOT NULL,

    PRIMARY KEY ("product", "position"),
    CONSTRAINT "per_run_items_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "per_run_items_material_fkey" FOREIGN KEY ("material") REFERENCES "materials" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "per_run_items_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "per_run_items_amount" CHECK (typeof("amount") = 'integer' AND "amount" BETWEEN 1 AND 9007199254740991),
    CONSTRAINT "per_run_items_amountNumber" CHECK (length("amountNumber") BETWEEN 1 AND 60 AND "amountNumber" NOT GLOB '*[^0-9.]*' AND "amountNumber" GLOB '[0-9]*' AND "amountNumber" GLOB '*[0-9]' AND "amountNumber" NOT GLOB '*.*.*' AND "amountNumber" NOT GLOB '0[0-9]*'),
    CONSTRAINT "per_run_items_amountUnit" CHECK ("amountUnit" IN ('mg', 'g', 'kg', 'oz', 'lb', 'mL', 'L', 'floz-us', 'gal-us', 'floz-uk', 'gal-uk', 'each'))
);

-- CreateTable
CREATE TABLE "runs" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "product" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "units" BIGINT NOT NULL,
    CONSTRAINT "runs_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "runs_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "runs_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "runs_date" CHECK ("date" IS date("date") AND "date" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "runs_sequence" CHECK (typeof("sequence") = 'integer' AND "sequence" BETWEEN 0 AND 1000000),
    CONSTRAINT "runs_units" CHECK (typeof("units") = 'integer' AND "units" BETWEEN 1 AND 9007199254740991)
);

-- CreateTable
CREATE TABLE "finished_lots" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "product" TEXT NOT NULL,
    "made" TEXT NOT NULL,
    "bestBefore" TEXT,
    "units" BIGINT NOT NULL,
    CONSTRAINT "finished_lots_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "finished_lots_id" CHECK (typeof("id") = 'text' AND length("id") BETWEEN 1 AND 200),
    CONSTRAINT "finished_lots_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "finished_lots_made" CHECK ("made" IS date("made") AND "made" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "finished_lots_bestBefore" CHECK ("bestBefore" IS NULL OR ("bestBefore" IS date("bestBefore") AND "bestBefore" BETWEEN '1900-01-01' AND '2999-12-31')),
    CONSTRAINT "finished_lots_units" CHECK (typeof("units") = 'integer' AND "units" BETWEEN 0 AND 9007199254740991)
);

-- CreateTable
CREATE TABLE "sales" (
    "position" INTEGER NOT NULL PRIMARY KEY,
    "product" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "units" BIGINT NOT NULL,
    CONSTRAINT "sales_product_fkey" FOREIGN KEY ("product") REFERENCES "products" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "sales_position" CHECK (typeof("position") = 'integer' AND "position" BETWEEN 0 AND 2147483647),
    CONSTRAINT "sales_date" CHECK ("date" IS date("date") AND "date" BETWEEN '1900-01-01' AND '2999-12-31'),
    CONSTRAINT "sales_units" CHECK (typeof("units") = 'integer' AND "units" BETWEEN 1 AND 9007199254740991)
);

-- CreateIndex
CREATE UNIQUE INDEX "suppliers_position_key" ON "suppliers"("position");

-- CreateIndex
CREATE UNIQUE INDEX "materials_position_key" ON "materials"("position");

-- CreateIndex
CREATE UNIQUE INDEX "offers_position_key" ON "offers"("position");

-- CreateIndex
CREATE INDEX "offers_material_idx" ON "offers"("material");

-- CreateIndex
CREATE INDEX "offers_supplier_idx" ON "offers"("supplier");

-- CreateIndex
CREATE UNIQUE INDEX "price_breaks_offer_packs_key" ON "price_breaks"("offer", "packs");

-- CreateIndex
CREATE UNIQUE INDEX "lots_position_key" ON "lots"("position");

-- CreateIndex
CREATE INDEX "lots_material_idx" ON "lots"("material");

-- CreateIndex
CREATE UNIQUE INDEX "orders_position_key" ON "orders"("position");

-- CreateIndex
CREATE INDEX "orders_supplier_idx" ON "orders"("supplier");

-- CreateIndex
CREATE INDEX "order_lines_material_idx" ON "order_lines"("material");

-- CreateIndex
CREATE UNIQUE INDEX "formulas_position_key" ON "formulas"("position");

-- CreateIndex
CREATE INDEX "formula_lines_material_idx" ON "formula_lines"("material");

-- CreateIndex
CREATE INDEX "formula_lines_premix_idx" ON "formula_lines"("premix");

-- CreateIndex
CREATE UNIQUE INDEX "products_position_key" ON "products"("position");

-- CreateIndex
CREATE INDEX "products_formula_idx" ON "products"("formula");

-- CreateIndex
CREATE INDEX "packaging_items_material_idx" ON "packaging_items"("material");

-- CreateIndex
CREATE UNIQUE INDEX "packaging_items_product_material_key" ON "packaging_items"("product", "material");

-- CreateIndex
CREATE INDEX "per_run_items_material_idx" ON "per_run_items"("material");

-- CreateIndex
CREATE UNIQUE INDEX "per_run_items_product_material_key" ON "per_run_items"("product", "material");

-- CreateIndex
CREATE UNIQUE INDEX "runs_position_key" ON "runs"("position");

-- CreateIndex
CREATE INDEX "runs_product_idx" ON "runs"("product");

-- CreateIndex
CREATE UNIQUE INDEX "finished_lots_position_key" ON "finished_lots"("position");

-- CreateIndex
CREATE INDEX "finished_lots_product_idx" ON "finished_lots"("product");

-- CreateIndex
CREATE INDEX "sales_product_idx" ON "sales"("product");

-- Written by hand from here: what Prisma's schema cannot say.

-- A material has at most one preferred offer.
CREATE UNIQUE INDEX "offers_one_preferred" ON "offers"("material") WHERE "preferred" = 1;

-- A formula has at most one line that takes what is left (percent is null: qs).
CREATE UNIQUE INDEX "formula_lines_one_qs" ON "formula_lines"("formula") WHERE "percent" IS NULL;
