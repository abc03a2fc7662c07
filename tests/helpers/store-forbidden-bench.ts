/** What must never stand in a batch, whoever writes it, and must never be done to what was written: SQL against a rich store. */
import type { Forbidden } from "./store-forbidden";

type Cells = Readonly<Record<string, string>>;

const BATCH: Cells = {
  run: "'new'",
  position: "9",
  product: "'p1'",
  date: "'2026-11-25'",
  sequence: "0",
  units: "24",
  code: "'other'",
  startedOn: "'2026-11-25'",
  startedAt: "'2026-11-25T09:00:00Z'",
  startedBy: "'R. Weaver'",
  despite: "NULL",
  workshopCalled: "'Bench'",
  productCalled: "'Cream'",
  fill: "245000000",
  fillNumber: "'250'",
  fillUnit: "'mL'",
  bulk: "1",
  step: "1",
};
const VERSION: Cells = { run: "'r1'", position: "9", formula: "'phases'", number: "1", called: "NULL" };
const LABEL: Cells = {
  run: "'__proto__'",
  position: "9",
  label: "'l1'",
  market: "'EU'",
  code: "'QR'",
  codeText: "'M-1'",
  isGs1: "0",
  width: "'63.5'",
  height: "'38.1'",
};
const PART: Cells = { run: "'r1'", label: "0", position: "9", called: "'the name'", text: "'Cream'", isBold: "1" };
const CHECKS: Readonly<Record<string, Cells>> = {
  formula_checks: { formula: "'phases'" },
  draft_checks: { draft: "(SELECT min(id) FROM drafts)" },
  version_checks: {
    formula: "(SELECT formula FROM formula_versions ORDER BY formula, number LIMIT 1)",
    number: "(SELECT number FROM formula_versions ORDER BY formula, number LIMIT 1)",
  },
};
const CHECK: Cells = { position: "9", what: "'Thickness'", from: "'1'", to: "'2'", unit: "'mm'", looks: "'even'" };
const LINE: Cells = {
  run: "'r1'",
  position: "9",
  key: "'9'",
  part: "'phases'",
  material: "'glycerol'",
  premix: "NULL",
  called: "'Glycerol'",
  phase: "NULL",
  target: "1000000",
  tolerance: "10000",
};
const NOTE: Cells = { run: "'r1'", position: "99", key: "'new'", at: "'2026-11-25T09:00:00Z'", who: "'R. Weaver'" };
/** One good note of each kind. */
const SAYS: Readonly<Record<string, Cells>> = {
  weighed: { line: "'1'", lot: "'a'", net: "1", gross: "2", tare: "1", more: "0", why: "NULL" },
  added: { material: "'glycerol'", lot: "'a'", net: "1", why: "'pH'" },
  struck: { strikes: "'n1'", why: "'wrong lot'" },
  temperature: { phase: "'A'", celsius: "'70'", meter: "'probe'", calibrated: "'2026-11-01'" },
  acidity: { ph: "'5.5'", meter: "NULL", calibrated: "NULL" },
  seen: { what: "'Colour'", found: "'white'" },
  checked: { what: "'pH'", asked: "'from 5 to 6'", found: "'5.5'", within: "1", why: "NULL" },
  recoded: { code: "'M-2'", why: "'taken'" },
  closed: { units: "24", leftOver: "1", bestBefore: "'2027-11-25'", held: "1", why: "NULL" },
  released: { why: "NULL" },
  rejected: { why: "'grainy'" },
  annexed: { found: "'The meter was off by 0.1'" },
};

const insert = (table: string, row: Cells): string =>
  `INSERT INTO "${table}" (${Object.keys(row)
    .map((name) => `"${name}"`)
    .join(", ")}) VALUES (${Object.values(row).join(", ")})`;

const put = (table: string, row: Cells, column: string, values: readonly string[]): readonly Forbidden[] =>
  values.map((value) => ({ by: `${table}_${column}`, deed: insert(table, { ...row, [column]: value }) }));

const note = (kind: string, given: Cells = {}): Cells => ({ ...NOTE, kind: `'${kind}'`, ...SAYS[kind], ...given });
const inNote = (kind: string, column: string, values: readonly string[]): readonly Forbidden[] =>
  put("bench_notes", note(kind), column, values);

const text = (most: number): readonly string[] => ["''", `'${"x".repeat(most + 1)}'`, "x'41'"];
const DAYS = ["''", "'2026-02-30'", "'20260203'", "'1899-12-31'"];
const MOMENTS = [
  "''",
  "'2026-11-25'",
  "'2026-11-25T09:00:00'",
  "'2026-11-25 09:00:00Z'",
  "'2026-11-25T09:00:00+01:00'",
];
const DECIMALS = ["''", "'1,5'", "'-1'", "'1.2.3'", "'.5'"];
const whole = (least: number, most = "9007199254740992"): readonly string[] => [String(least - 1), most, "1.5", "'x'"];

/** @rule BENCH-4 */
export const FORBIDDEN_AT_THE_BENCH: readonly Forbidden[] = [
  ...put("batches", BATCH, "run", text(200)),
  ...put("batches", BATCH, "position", whole(0)),
  ...put("batches", BATCH, "product", text(200)),
  ...put("batches", BATCH, "date", DAYS),
  ...put("batches", BATCH, "sequence", whole(0, "1000001")),
  ...put("batches", BATCH, "units", whole(1)),
  ...put("batches", BATCH, "code", text(200)),
  ...put("batches", BATCH, "startedOn", DAYS),
  ...put("batches", BATCH, "startedAt", MOMENTS),
  ...put("batches", BATCH, "startedBy", text(200)),
  ...put("batches", BATCH, "despite", text(1000)),
  ...put("batch_versions", VERSION, "position", whole(0)),
  ...put("batch_versions", VERSION, "formula", text(200)),
  ...put("batch_versions", VERSION, "number", whole(1)),
  ...put("batch_lines", LINE, "position", whole(0)),
  ...put("batch_lines", LINE, "key", text(20)),
  ...put("batch_lines", LINE, "part", text(200)),
  ...put("batch_lines", LINE, "material", text(200)),
  ...put("batch_lines", { ...LINE, material: "NULL" }, "premix", text(200)),
  { by: "batch_lines_of", deed: insert("batch_lines", { ...LINE, premix: "'base'" }) },
  { by: "batch_lines_of", deed: insert("batch_lines", { ...LINE, material: "NULL" }) },
  ...put("batch_lines", LINE, "called", text(200)),
  ...put("batch_lines", LINE, "phase", text(200)),
  ...put("batch_lines", LINE, "target", whole(0)),
  ...put("batch_lines", LINE, "tolerance", whole(0)),
  ...inNote("annexed", "position", whole(0)),
  ...inNote("annexed", "key", text(300)),
  ...inNote("annexed", "at", MOMENTS),
  ...inNote("annexed", "who", text(200)),
  ...inNote("annexed", "kind", ["''", "'changed'"]),
  ...inNote("weighed", "line", text(20)),
  ...["workshopCalled", "productCalled"].flatMap((column) => put("batches", BATCH, column, text(200))),
  ...["fill", "bulk", "step"].flatMap((column) => put("batches", BATCH, column, whole(1))),
  ...put("batches", BATCH, "fillNumber", DECIMALS),
  ...put("batches", BATCH, "fillUnit", ["'each'", "''"]),
  { by: "batches_as", deed: insert("batches", { ...BATCH, bulk: "NULL" }) },
  ...put("batch_versions", VERSION, "called", text(200)),
  ...put("batch_labels", LABEL, "position", whole(0)),
  ...put("batch_labels", LABEL, "label", text(200)),
  ...put("batch_labels", LABEL, "market", ["''", "'CA'"]),
  ...put("batch_labels", LABEL, "code", ["'EAN'"]),
  ...put("batch_labels", LABEL, "codeText", text(1000)),
  ...put("batch_labels", LABEL, "isGs1", ["2", "'x'"]),
  ...["width", "height"].flatMap((column) => put("batch_labels", LABEL, column, DECIMALS)),
  { by: "batch_labels_drawn", deed: insert("batch_labels", { ...LABEL, codeText: "NULL" }) },
  { by: "batch_labels_size", deed: insert("batch_labels", { ...LABEL, height: "NULL" }) },
  ...put("batch_label_parts", PART, "position", whole(0)),
  ...put("batch_label_parts", PART, "called", text(200)),
  ...put("batch_label_parts", PART, "text", ["''", "x'41'"]),
  ...put("batch_label_parts", PART, "isBold", ["2", "'x'"]),
  ...Object.entries(CHECKS).flatMap(([table, of]) => {
    const row = { ...of, ...CHECK };
    return [
      ...put(table, row, "position", whole(0)),
      ...put(table, row, "what", text(200)),
      ...["from", "to"].flatMap((column) => put(table, row, column, DECIMALS)),
      ...put(table, row, "unit", text(200)),
      ...put(table, row, "looks", text(1000)),
      { by: `${table}_asks`, deed: insert(table, { ...row, from: "NULL", to: "NULL", looks: "NULL" }) },
    ];
  }),
  ...put("version_checks", { ...CHECKS.version_checks, ...CHECK }, "number", whole(1)),
  ...inNote("added", "called", text(200)),
  ...inNote("recoded", "code", text(200)),
  ...inNote("checked", "asked", text(2000)),
  ...inNote("checked", "within", ["2", "'x'"]),
  ...["whyNotWeighed", "whyMoreFilled", "whyOutOfDate", "whyNotChecked"].flatMap((column) =>
    inNote("closed", column, text(1000)),
  ),
  { by: "bench_notes_says", deed: insert("bench_notes", note("released", { whyNotWeighed: "'no'" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("checked", { within: "0" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("recoded", { why: "NULL" })) },
  ...inNote("added", "material", text(200)),
  ...inNote("weighed", "lot", text(200)),
  ...inNote("weighed", "net", whole(1)),
  ...inNote("weighed", "gross", whole(0)),
  ...inNote("weighed", "tare", whole(0)),
  ...inNote("weighed", "more", ["2", "'x'"]),
  ...inNote("weighed", "why", text(1000)),
  ...inNote("struck", "strikes", text(300)),
  ...inNote("temperature", "phase", text(200)),
  ...inNote("temperature", "celsius", DECIMALS),
  ...inNote("acidity", "ph", DECIMALS),
  ...inNote("temperature", "meter", text(200)),
  ...inNote("temperature", "calibrated", DAYS),
  ...inNote("seen", "what", text(200)),
  ...inNote("seen", "found", text(5000)),
  ...inNote("closed", "units", whole(0)),
  ...inNote("closed", "leftOver", whole(0)),
  ...inNote("closed", "bestBefore", DAYS),
  ...inNote("closed", "held", ["2", "'x'"]),
  // A note says what its kind says, and nothing of another's.
  { by: "bench_notes_says", deed: insert("bench_notes", note("annexed", { net: "1" })) },
  { by: "bench_notes_says", deed: insert("bench_notes", note("weighed", { units: "1" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("weighed", { net: "NULL" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("added", { why: "NULL" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("struck", { why: "NULL" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("closed", { units: "NULL" })) },
  { by: "bench_notes_needs", deed: insert("bench_notes", note("rejected", { why: "NULL" })) },
  ...["batches", "batch_versions", "batch_lines", "bench_notes", "batch_labels", "batch_label_parts"].flatMap(
    (table) => [
      { by: `${table}_once`, deed: `INSERT OR REPLACE INTO "${table}" SELECT * FROM "${table}" LIMIT 1` },
      { by: `${table}_never_changed`, deed: `UPDATE "${table}" SET "position" = "position" + 100` },
      { by: `${table}_never_changed`, deed: `DELETE FROM "${table}"` },
    ],
  ),
  { by: "notation_id", deed: "UPDATE notation SET id = 2" },
  ...["x'4142'", "'e'", `'${"x".repeat(21)}'`].map((value) => ({
    by: "notation_locale",
    deed: `UPDATE notation SET locale = ${value}`,
  })),
  { by: "notation_units", deed: "UPDATE notation SET units = 'troy'" },
  { by: "batch_code_scheme_id", deed: "UPDATE batch_code_scheme SET id = 2" },
  ...["x'41'", `'${"x".repeat(101)}'`].map((value) => ({
    by: "batch_code_scheme_before",
    deed: `UPDATE batch_code_scheme SET "before" = ${value}`,
  })),
  { by: "batch_code_scheme_dating", deed: "UPDATE batch_code_scheme SET dating = 'by the moon'" },
  { by: "batch_code_scheme_between", deed: `UPDATE batch_code_scheme SET "between" = '${"x".repeat(21)}'` },
  ...["0", "7", "'x'"].map((value) => ({
    by: "batch_code_scheme_digits",
    deed: `UPDATE batch_code_scheme SET digits = ${value}`,
  })),
];
