/**
 * What must never be in the store, whoever writes it. Prisma cannot say these rules and drops them without a word when
 * it rebuilds a table: here each one is named, looked for in the schema, and broken on purpose.
 */
import Database from "better-sqlite3";
import { beforeEach, expect, test } from "vitest";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { keepBooks, richBooks } from "../helpers/store-desk";
import { type Forbidden, forbiddenInTheLedger } from "../helpers/store-forbidden";
import { FORBIDDEN_AT_THE_BENCH } from "../helpers/store-forbidden-bench";
import { storeForEachTest } from "../helpers/store-folder";
import { richWorkshop } from "../helpers/store-workshop";

const LARGEST = 9_007_199_254_740_991n;

const quoted = (value: string | bigint | number): string =>
  typeof value === "string" && !/^[xX]'/.test(value) ? `'${value.replaceAll("'", "''")}'` : String(value);

/** One column set to each of the values in turn, in one row: the first, or the one that `where` finds. */
const setTo = (column: string, values: readonly (string | bigint | number)[], where = ""): readonly Forbidden[] => {
  const [table = "", name = ""] = column.split(".");
  const row = where === "" ? `rowid = (SELECT min(rowid) FROM ${table})` : where;
  const by = `${table}_${name}`;
  return values.map((value) => ({ by, deed: `UPDATE ${table} SET "${name}" = ${quoted(value)} WHERE ${row}` }));
};

const wholeNumbers = (column: string, least: bigint, most = LARGEST) =>
  setTo(column, [least - 1n, most + 1n, 12.5, "many", "x'31'"]);
const days = (column: string) =>
  setTo(column, [
    "",
    "2026-02-30",
    "2026-2-3",
    "26-02-03",
    "2026-02-03T00:00",
    "now",
    "1899-12-31",
    "3000-01-01",
    "20260203",
  ]);
const labels = (column: string) => setTo(column, ["", "x".repeat(201), "x'41'"]);
const decimals = (column: string) =>
  setTo(column, ["", "01", "1.", ".5", "-1", "+1", "1e3", "1,5", "1.2.3", " 1", "1 ", "٣", "1".repeat(61)]);
const oneOf = (column: string, values: readonly string[]) => setTo(column, ["", ...values]);
const weighed = (column: string, least: bigint) => [
  ...wholeNumbers(column, least),
  ...decimals(`${column}Number`),
  ...oneOf(`${column}Unit`, ["ml", "G", "each"]),
];
const held = (column: string, least: bigint) => [
  ...wholeNumbers(column, least),
  ...decimals(`${column}Number`),
  ...oneOf(`${column}Unit`, ["ml", "EACH", "pcs"]),
];
/** An amount is there with what was typed, or absent as a whole. */
const wholeOrAbsent = (column: string): readonly Forbidden[] => {
  const [table = "", name = ""] = column.split(".");
  return [name, `${name}Number`, `${name}Unit`].map((part) => ({
    by: `${table}_${name}_whole`,
    deed: `UPDATE ${table} SET "${part}" = NULL WHERE "${name}" IS NOT NULL`,
  }));
};
/** A posted lot cannot be renamed: one of which nothing was posted stands in for it. */
const unposted = (table: string, named: readonly Forbidden[]): readonly Forbidden[] =>
  named.map(({ by, deed }) => ({
    by,
    deed: deed.replace(`rowid = (SELECT min(rowid) FROM ${table})`, `id IN ('__proto__', 'F')`),
  }));
const place = (table: string) => setTo(`${table}.position`, [-1, 2n ** 31n, 0.5, "x'30'"]);

/** Receipts come with their posting and stay as they are: what is wrong with one is tried as it comes in. */
function forbiddenReceipts(): readonly Forbidden[] {
  const good = {
    lot: "'new'",
    posting: "'opening lot  '",
    supplier: "NULL",
    offer: "NULL",
    order: "NULL",
    line: "NULL",
  };
  const row = { ...good, packs: "1", paid: "0" };
  const names = Object.keys(row)
    .map((name) => `"${name}"`)
    .join(", ");
  const having = (by: string, given: Partial<typeof row>): Forbidden => ({
    by,
    deed: `INSERT INTO receipts (${names}) VALUES (${Object.values({ ...row, ...given }).join(", ")})`,
  });
  const asText = ["''", `'${"x".repeat(201)}'`, "x'41'"];
  return [
    ...(["lot", "supplier", "offer"] as const).flatMap((name) =>
      asText.map((text) => having(`receipts_${name}`, { [name]: text })),
    ),
    ...asText.map((text) => having("receipts_order", { order: text, line: "1" })),
    having("receipts_line", { order: "'po9'" }),
    ...["0", "1", "1000001", "1.5"].map((line) => having("receipts_line", { line })),
    ...["0", "1.5", "9007199254740992"].map((packs) => having("receipts_packs", { packs })),
    ...["-1", "0.5", "9007199254740992"].map((paid) => having("receipts_paid", { paid })),
    having("FOREIGN KEY", { posting: "'gone'" }),
    ...["UPDATE receipts SET paid = 1", "DELETE FROM receipts"].map((deed) => ({
      by: "receipts_never_changed",
      deed: `${having("", {}).deed}; ${deed}`,
    })),
  ];
}
const phWindow = (table: string, where: string): readonly Forbidden[] => [
  ...decimals(`${table}.phFrom`),
  ...decimals(`${table}.phTo`),
  ...setTo(`${table}.phFrom`, ["15", "14.01"]),
  ...setTo(`${table}.phTo`, ["15", "140"]),
  { by: `${table}_ph_range`, deed: `UPDATE ${table} SET "phFrom" = '10', "phTo" = '9.5' WHERE ${where}` },
];
/** What the checks know of a formula, or of a draft of one. */
const formulaFacts = (table: string, one: string, where: string): readonly Forbidden[] => [
  ...oneOf(`${table}.market`, ["eu", "UK"]),
  ...oneOf(`${table}.use`, ["leave on"]),
  ...phWindow(table, where),
  ...wholeNumbers(`${table}.keepsDays`, 0n, 3660n),
  ...place(`${one}_phases`),
  ...labels(`${one}_phases.name`),
  ...decimals(`${one}_phases.temperature`),
  ...setTo(`${one}_phases.temperature`, ["150.1", "158"]),
  ...place(`${one}_steps`),
  ...labels(`${one}_steps.phase`),
  ...setTo(`${one}_steps.text`, ["", "x".repeat(1001), "x'41'"]),
  ...decimals(`${one}_steps.temperature`),
  ...setTo(`${one}_steps.temperature`, ["150.1", "158"]),
  ...decimals(`${one}_steps.minutes`),
  ...labels(`${one}_steps.caution`),
];

const ledger = forbiddenInTheLedger(LARGEST);

const FORBIDDEN: readonly Forbidden[] = [
  ...ledger,
  { by: "settings_one_row", deed: "UPDATE settings SET id = 2" },
  ...labels("settings.name"),
  ...oneOf("settings.currency", ["gbp", "GB", "GBPP", "£££", "x'474250'"]),
  ...days("settings.today"),
  ...wholeNumbers("settings.horizonDays", 0n, 3660n),
  ...wholeNumbers("settings.coverDays", 0n, 3660n),
  ...wholeNumbers("settings.labourPerHour", 0n),
  ...wholeNumbers("settings.overheadPerHour", 0n),
  ...weighed("settings.balanceStep", 1n),
  ...oneOf("settings.balanceStepUnit", ["mL"]),
  ...wholeNumbers("settings.tax", 0n, 1_000_000n),
  ...wholeNumbers("settings.paymentFee", 0n, 999_999n),
  ...wholeNumbers("settings.paymentFeeFixed", 0n),
  ...setTo("closed_days.position", [-1, 2n ** 31n]),
  ...days("closed_days.day"),
  ...labels("suppliers.id"),
  ...place("suppliers"),
  ...labels("suppliers.name"),
  ...wholeNumbers("suppliers.leadDays", 0n, 3660n),
  ...oneOf("suppliers.leadCounts", ["Working", "weeks"]),
  ...wholeNumbers("suppliers.shipping", 0n),
  ...wholeNumbers("suppliers.shippingFreeFrom", 0n),
  ...wholeNumbers("suppliers.minimumOrder", 0n),
  ...place("supplier_closed_days"),
  ...days("supplier_closed_days.day"),
  ...labels("materials.id"),
  ...place("materials"),
  ...labels("materials.name"),
  ...oneOf("materials.kind", ["Ingredient", "tool"]),
  ...oneOf("materials.measure", ["volume"]),
  ...wholeNumbers("materials.density", 1n),
  ...held("materials.safetyStock", 0n),
  ...wholeOrAbsent("materials.safetyStock"),
  ...wholeNumbers("materials.safetyDays", 0n, 3660n),
  ...wholeNumbers("materials.useMin", 0n, 1_000_000n),
  ...wholeNumbers("materials.useMax", 0n, 1_000_000n),
  { by: "materials_use_range", deed: `UPDATE materials SET "useMin" = 3, "useMax" = 2` },
  ...decimals("materials.addBelow"),
  ...oneOf("materials.role", ["Water", "emulsifier"]),
  ...phWindow("materials", "id = 'glycerol'"),
  ...["flammable", "allergen", "eyeHazard"].flatMap((flag) => setTo(`materials.${flag}`, [2, -1, "yes"])),
  ...place("material_components"),
  ...labels("material_components.inci"),
  ...wholeNumbers("material_components.share", 1n, 1_000_000n),
  ...place("material_limits"),
  ...oneOf("material_limits.market", ["eu", "UK"]),
  ...oneOf("material_limits.use", ["rinse off"]),
  ...labels("material_limits.substance"),
  ...wholeNumbers("material_limits.maximum", 1n, 1_000_000n),
  ...decimals("material_limits.countsAs"),
  ...setTo("material_limits.countsAs", ["3.01", "84.7"]),
  ...labels("material_limits.source"),
  ...days("material_limits.copied"),
  ...place("material_sheets"),
  ...oneOf("material_sheets.kind", ["data"]),
  ...labels("material_sheets.reference"),
  ...days("material_sheets.reviewBy"),
  ...labels("offers.id"),
  ...place("offers"),
  ...held("offers.pack", 1n),
  ...wholeNumbers("offers.price", 1n),
  ...wholeNumbers("offers.minPacks", 1n),
  ...setTo("offers.preferred", [2, -1, "yes", 0.5]),
  ...wholeNumbers("offers.shelfLifeDays", 0n, 3660n),
  ...days("offers.confirmedOn"),
  { by: "offers.material", deed: `UPDATE offers SET preferred = 1 WHERE material = 'glycerol'` },
  ...place("price_breaks"),
  ...wholeNumbers("price_breaks.packs", 2n),
  ...wholeNumbers("price_breaks.price", 1n),
  { by: "price_breaks.offer, price_breaks.packs", deed: "UPDATE price_breaks SET packs = 2" },
  ...unposted("lots", labels("lots.id")),
  ...place("lots"),
  ...days("lots.received"),
  ...days("lots.expires"),
  { by: "lots_listed", deed: "UPDATE lots SET material = NULL" },
  { by: "lots_posted", deed: "DELETE FROM lots" },
  { by: "lots_posted", deed: "UPDATE lots SET id = 'renamed' WHERE id = ' '" },
  ...labels("orders.id"),
  ...place("orders"),
  ...days("orders.placed"),
  ...days("orders.due"),
  ...oneOf("orders.state", ["Ordered", "received"]),
  ...place("order_lines"),
  ...labels("order_lines.offer"),
  ...wholeNumbers("order_lines.packs", 1n),
  ...wholeNumbers("order_lines.received", 0n),
  ...forbiddenReceipts(),
  ...wholeNumbers("order_lines.quantity", 1n),
  ...wholeNumbers("order_lines.cost", 0n),
  ...days("order_lines.expires"),
  ...labels("formulas.id"),
  ...place("formulas"),
  ...labels("formulas.name"),
  ...wholeNumbers("formulas.density", 1n),
  ...place("formula_lines"),
  ...formulaFacts("formulas", "formula", "id = 'phases'"),
  { by: "formula_lines_material_or_premix", deed: "UPDATE formula_lines SET premix = NULL WHERE material IS NULL" },
  { by: "formula_lines_material_or_premix", deed: "UPDATE formula_lines SET premix = 'base' WHERE formula = 'phases'" },
  { by: "formula_lines_not_of_itself", deed: "UPDATE formula_lines SET premix = formula WHERE premix = 'base'" },
  ...wholeNumbers("formula_lines.percent", 1n, 1_000_000n),
  { by: "formula_lines.formula", deed: "UPDATE formula_lines SET percent = NULL WHERE formula = 'phases'" },
  ...labels("formula_lines.phase"),
  ...labels("products.id"),
  ...place("products"),
  ...labels("products.name"),
  ...weighed("products.fill", 1n),
  ...weighed("products.overfill", 0n),
  ...wholeOrAbsent("products.overfill"),
  ...wholeNumbers("products.processLoss", 0n, 999_999n),
  ...weighed("products.heel", 0n),
  ...wholeOrAbsent("products.heel"),
  ...wholeNumbers("products.usualRun", 1n),
  ...decimals("products.labourMinutesPerRun"),
  ...decimals("products.labourMinutesPerUnit"),
  ...wholeNumbers("products.priceToShops", 1n),
  ...wholeNumbers("products.priceToCustomers", 1n),
  ...place("packaging_items"),
  ...held("packaging_items.amount", 1n),
  ...wholeNumbers("packaging_items.spoilage", 0n, 999_999n),
  { by: "packaging_items.product, packaging_items.material", deed: "UPDATE packaging_items SET material = 'jar'" },
  ...place("per_run_items"),
  ...held("per_run_items.amount", 1n),
  {
    by: "per_run_items.product, per_run_items.material",
    deed: "INSERT INTO per_run_items SELECT product, 9, material, amountNumber, amountUnit, amount FROM per_run_items",
  },
  ...labels("runs.id"),
  ...place("runs"),
  ...days("runs.date"),
  ...wholeNumbers("runs.sequence", 0n, 1_000_000n),
  ...wholeNumbers("runs.units", 1n),
  ...unposted("finished_lots", labels("finished_lots.id")),
  ...place("finished_lots"),
  ...days("finished_lots.made"),
  ...days("finished_lots.bestBefore"),
  { by: "finished_lots_listed", deed: "UPDATE finished_lots SET product = NULL" },
  { by: "finished_lots_posted", deed: "DELETE FROM finished_lots" },
  { by: "finished_lots_posted", deed: "UPDATE finished_lots SET id = 'renamed' WHERE id = 'A'" },
  ...setTo("sales.position", [-1, 2n ** 31n]),
  ...days("sales.date"),
  ...wholeNumbers("sales.units", 1n),
  ...labels("labels.id"),
  ...place("labels"),
  { by: "FOREIGN KEY", deed: "UPDATE labels SET product = 'nothing'" },
  { by: "FOREIGN KEY", deed: "DELETE FROM products WHERE id IN (SELECT product FROM labels)" },
  ...oneOf("labels.market", ["eu", "CA", "UK"]),
  ...["title", "function", "responsible", "contact", "madeIn"].flatMap((name) => labels(`labels.${name}`)),
  ...["cautions", "address"].flatMap((name) => setTo(`labels.${name}`, ["", "x".repeat(1001), "x'41'"])),
  ...wholeNumbers("labels.monthsOpen", 1n, 120n),
  ...setTo("labels.gtin", ["", "629104150021x", "629104150", "1".repeat(15)]),
  ...oneOf("labels.code", ["qr", "EAN"]),
  ...setTo("labels.showsPh", [2, -1, "yes"]),
  ...setTo("labels.showsMade", [2, -1, "yes"]),
  ...labels("papers.id"),
  ...place("papers"),
  ...labels("papers.name"),
  ...oneOf("papers.page", ["a4", "A5"]),
  ...wholeNumbers("papers.columns", 1n, 100n),
  ...wholeNumbers("papers.rows", 1n, 100n),
  ...["labelWidth", "labelHeight", "top", "left", "gapAcross", "gapDown"].flatMap((name) => [
    ...decimals(`papers.${name}`),
    ...setTo(`papers.${name}`, ["300.1"]),
  ]),
  ...["suppliers", "materials", "offers", "formulas", "products"].flatMap((list) => [
    ...place(`retired_${list}`),
    { by: "FOREIGN KEY", deed: `INSERT INTO retired_${list} VALUES ('nothing', 9)` },
    { by: `retired_${list}.id`, deed: `INSERT INTO retired_${list} SELECT id, 9 FROM retired_${list}` },
  ]),
  ...labels("drafts.id"),
  ...place("drafts"),
  ...labels("drafts.name"),
  ...wholeNumbers("drafts.density", 1n),
  { by: "drafts_draft_or_formula", deed: "INSERT INTO drafts (id, position, name) VALUES ('base', 9, 'Base')" },
  { by: "drafts_draft_or_formula", deed: "UPDATE drafts SET id = 'base' WHERE id = 'd1'" },
  { by: "formulas_draft_or_formula", deed: "INSERT INTO formulas (id, position, name) VALUES ('d1', 9, 'Draft')" },
  { by: "formulas_draft_or_formula", deed: "UPDATE formulas SET id = 'd1' WHERE id = 'base'" },
  ...formulaFacts("drafts", "draft", "id = '__proto__'"),
  ...place("draft_lines"),
  { by: "draft_lines_material_or_premix", deed: "UPDATE draft_lines SET premix = NULL, material = NULL" },
  { by: "draft_lines_material_or_premix", deed: "UPDATE draft_lines SET premix = 'base', material = 'glycerol'" },
  ...wholeNumbers("draft_lines.percent", 1n, 1_000_000n),
  ...labels("draft_lines.phase"),
  { by: "FOREIGN KEY", deed: "UPDATE draft_lines SET draft = 'base' WHERE draft = 'toString' AND position = 0" },
  { by: "FOREIGN KEY", deed: "UPDATE draft_lines SET premix = 'd1' WHERE premix IS NOT NULL" },
  { by: "count_rhythms_position", deed: "UPDATE count_rhythms SET position = -1 WHERE id = 'jar'" },
  { by: "count_rhythms_days", deed: "UPDATE count_rhythms SET days = 0 WHERE id = 'jar'" },
  { by: "count_rhythms_draws", deed: "UPDATE count_rhythms SET draws = 3661 WHERE id = 'glycerol'" },
  { by: "count_rhythms_either", deed: "UPDATE count_rhythms SET days = NULL WHERE id = 'jar'" },
  { by: "bench_week_one_row", deed: "UPDATE bench_week SET id = 2" },
  ...["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"].flatMap((weekday) => [
    ...wholeNumbers(`bench_week.${weekday}`, 0n, 1440n),
    { by: `bench_week.${weekday}`, deed: `UPDATE bench_week SET ${weekday} = NULL` },
  ]),
  ...place("closed_run_versions"),
  ...wholeNumbers("closed_run_versions.number", 1n, 2_147_483_647n),
  ...wholeNumbers("formula_versions.number", 1n, 2_147_483_647n),
  ...days("formula_versions.since"),
  ...setTo("formula_versions.why", ["", "x".repeat(1001), "x'41'"]),
  ...labels("formula_versions.name"),
  ...wholeNumbers("formula_versions.density", 1n),
  ...formulaFacts("formula_versions", "version", "number = 2"),
  ...place("version_lines"),
  { by: "version_lines_of", deed: "UPDATE version_lines SET premix = NULL WHERE material IS NULL" },
  { by: "version_lines_of", deed: "UPDATE version_lines SET premix = 'base'" },
  ...wholeNumbers("version_lines.percent", 1n, 1_000_000n),
  ...labels("version_lines.phase"),
  ...["version_lines", "version_phases", "version_steps", "accepted_warnings"].flatMap((table) => [
    ...setTo(`${table}.number`, [0, 1.5]),
    { by: "FOREIGN KEY", deed: `UPDATE ${table} SET number = number + 99` },
  ]),
  ...place("accepted_warnings"),
  ...setTo("accepted_warnings.key", ["", "x".repeat(10_001)]),
  ...setTo("accepted_warnings.says", ["", "x".repeat(2001)]),
  ...setTo("accepted_warnings.reason", ["", "x".repeat(1001)]),
  ...days("accepted_warnings.on"),
  ...labels("trials.id"),
  ...place("trials"),
  ...labels("trials.name"),
  ...days("trials.day"),
  ...setTo("trials.notes", ["", "x".repeat(5001)]),
  ...setTo("trials.posting", ["", "x".repeat(301)]),
  ...place("trial_lines"),
  { by: "trial_lines_of", deed: "UPDATE trial_lines SET premix = NULL, material = NULL" },
  ...wholeNumbers("trial_lines.weighed", 1n),
  ...labels("trial_lines.phase"),
  ...place("trial_readings"),
  ...wholeNumbers("trial_readings.afterMinutes", 0n, 5_270_400n),
  ...decimals("trial_readings.ph"),
  ...setTo("trial_readings.ph", ["15", "14.01"]),
  ...decimals("trial_readings.viscosity"),
  ...setTo("trial_readings.appearance", ["", "x".repeat(1001)]),
  { by: "FOREIGN KEY", deed: "UPDATE trials SET formula = 'nothing'" },
  { by: "FOREIGN KEY", deed: "UPDATE closed_run_versions SET formula = 'nothing'" },
  ...labels("closed_runs.id"),
  ...place("closed_runs"),
  ...days("closed_runs.date"),
  ...wholeNumbers("closed_runs.sequence", 0n, 1_000_000n),
  ...wholeNumbers("closed_runs.units", 1n),
  ...days("closed_runs.madeOn"),
  ...wholeNumbers("closed_runs.unitsMade", 0n),
  {
    by: "closed_runs_planned_or_made",
    deed: "INSERT INTO closed_runs SELECT id, 9, product, date, sequence, units, date, 1 FROM runs WHERE id = 'r1'",
  },
  { by: "closed_runs_planned_or_made", deed: "UPDATE closed_runs SET id = 'r1' WHERE id = 'c1'" },
  {
    by: "runs_planned_or_made",
    deed: "INSERT INTO runs SELECT id, 9, product, date, sequence, units FROM closed_runs WHERE id = 'c1'",
  },
  { by: "runs_planned_or_made", deed: "UPDATE runs SET id = 'c1' WHERE id = 'r1'" },
  { by: "FOREIGN KEY", deed: "UPDATE closed_runs SET product = 'nothing'" },
  { by: "FOREIGN KEY", deed: "DELETE FROM materials WHERE id = 'glycerol'" },
  { by: "FOREIGN KEY", deed: "UPDATE runs SET product = 'nothing'" },
  { by: "FOREIGN KEY", deed: "UPDATE lots SET material = 'Jar'" },
  { by: "suppliers.position", deed: "UPDATE suppliers SET position = 0" },
  { by: "lots.id", deed: "UPDATE lots SET id = 'toString'" },
  ...FORBIDDEN_AT_THE_BENCH,
];

const { file } = storeForEachTest();
let store: Database.Database;

beforeEach(async () => {
  await replaceWorkshop(file(), richWorkshop());
  await keepBooks(richBooks());
  store = new Database(file());
  store.pragma("foreign_keys = ON");
  return () => store.close();
});

test("every forbidden thing is refused, by the rule that is there for it", () => {
  const allowed = FORBIDDEN.filter(({ by, deed }) => {
    const said = refusalOf(deed);
    return said === null || !isSaidBy(said, by);
  }).map(({ by, deed }) => `${by}: ${deed.slice(0, 120)} (${refusalOf(deed) ?? "done"})`);
  expect(allowed).toEqual([]);
  expect(FORBIDDEN.length).toBeGreaterThan(500);
});

test("every CHECK and trigger of the schema is broken above, and none that is named there is gone", () => {
  const named = FORBIDDEN.map(({ by }) => by).filter((by) => /^\w+_\w+$/.test(by));
  expect([...checksOf(store), ...refusalsOfTriggers(store)].sort()).toEqual([...new Set(named)].sort());
});

test("the indexes that hold a rule are there", () => {
  const indexes = store
    .prepare("SELECT name, sql FROM sqlite_master WHERE type = 'index' AND sql LIKE '%UNIQUE%'")
    .all();
  expect((indexes as { name: string }[]).map(({ name }) => name).sort()).toEqual([
    "accepted_warnings_formula_number_key_key",
    "batches_code_key",
    "bench_notes_key_key",
    "closed_runs_position_key",
    "count_rhythms_position_key",
    "draft_checks_draft_what_key",
    "draft_phases_draft_name_key",
    "drafts_position_key",
    "finished_lots_position_key",
    "formula_checks_formula_what_key",
    "formula_lines_one_qs",
    "formula_phases_formula_name_key",
    "formulas_position_key",
    "labels_position_key",
    "lots_position_key",
    "materials_position_key",
    "offers_one_preferred",
    "offers_position_key",
    "orders_position_key",
    "packaging_items_product_material_key",
    "papers_position_key",
    "per_run_items_product_material_key",
    "postings_id_key",
    "postings_reverses_key",
    "price_breaks_offer_packs_key",
    "products_madeInto_key",
    "products_made_ahead",
    "products_position_key",
    "retired_formulas_position_key",
    "retired_materials_position_key",
    "retired_offers_position_key",
    "retired_products_position_key",
    "retired_suppliers_position_key",
    "runs_position_key",
    "suppliers_position_key",
    "trials_position_key",
    "version_checks_formula_number_what_key",
  ]);
});

test("every column but an id, a place and a name of another record is under a CHECK", () => {
  const checks = new Set(checksOf(store));
  // SQLite numbers the postings and a trigger the entries, which take their day from the posting; balances and totals follow.
  const made = /^(sqlite_sequence|balances|day_totals)\.|^postings\.sequence$|^entries\.(position|day|lot)$/;
  const free = columnsOf(store).filter(
    ({ table, column, key }) => !key && !checks.has(`${table}_${column}`) && !made.test(`${table}.${column}`),
  );
  expect(free.map(({ table, column }) => `${table}.${column}`)).toEqual([]);
});

test("[BOOK-3] a draft may come to anything, with several lines that take what is left", () => {
  expect(refusalOf("UPDATE draft_lines SET percent = 1")).toBeNull();
  expect(refusalOf("UPDATE draft_lines SET percent = 1000000")).toBeNull();
  expect(refusalOf("UPDATE draft_lines SET percent = NULL")).toBeNull();
});

test("[BOOK-2] what is retired goes with its record, and keeps nobody from removing it", () => {
  const goes = "DELETE FROM offers WHERE id = 'z'";
  expect(store.prepare("SELECT id FROM retired_offers").all()).toEqual([{ id: "z" }]);
  store.exec(goes);
  expect(store.prepare("SELECT id FROM retired_offers").all()).toEqual([]);
});

/** What SQLite says against a deed, or null where it would be done. Nothing stays done. */
function refusalOf(deed: string): string | null {
  store.exec("BEGIN");
  try {
    store.exec(deed);
    return null;
  } catch (fault) {
    return fault instanceof Error ? fault.message : String(fault);
  } finally {
    store.exec("ROLLBACK");
  }
}

/** `now` as a day is refused in words of SQLite's own: it is not the same day tomorrow. */
const isSaidBy = (said: string, by: string): boolean =>
  said.endsWith(`failed: ${by}`) || said.startsWith(by) || said.startsWith("non-deterministic use of date()");

function checksOf(database: Database.Database): readonly string[] {
  const tables = database.prepare("SELECT sql FROM sqlite_master WHERE type = 'table'").all() as {
    sql: string | null;
  }[];
  return tables
    .flatMap(({ sql }) => [...(sql ?? "").matchAll(/CONSTRAINT "(\w+)" CHECK/g)].map((found) => found[1] ?? ""))
    .sort();
}

/** What the triggers say when they refuse: two of them, for adding and for renaming, say the same. */
function refusalsOfTriggers(database: Database.Database): readonly string[] {
  const triggers = database.prepare("SELECT sql FROM sqlite_master WHERE type = 'trigger'").all() as { sql: string }[];
  return [
    ...new Set(
      triggers.flatMap(({ sql }) => [...sql.matchAll(/RAISE\(ABORT, '(\w+)'\)/g)].map((found) => found[1] ?? "")),
    ),
  ];
}

interface FoundColumn {
  readonly table: string;
  readonly column: string;
  /** Names a record: its own id is checked where it is made, another's by the foreign key. */
  readonly key: boolean;
}

function columnsOf(database: Database.Database): readonly FoundColumn[] {
  const rows = database
    .prepare(
      `SELECT m.name AS "table", c.name AS "column",
         (m.name IN ('settings', 'bench_week') AND c.name = 'id') OR EXISTS (SELECT 1 FROM pragma_foreign_key_list(m.name) f WHERE f."from" = c.name) AS "key"
       FROM sqlite_master m, pragma_table_info(m.name) c WHERE m.type = 'table' AND m.name NOT LIKE '\\_%' ESCAPE '\\'`,
    )
    .all() as { table: string; column: string; key: number }[];
  return rows.map(({ table, column, key }) => ({ table, column, key: key === 1 }));
}
