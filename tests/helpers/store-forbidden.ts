/** What must never be posted, whoever writes it, and must never be done to what was posted: SQL against a rich store. */

export interface Forbidden {
  /** The constraint, the index or the trigger that refuses. */
  readonly by: string;
  /** What is not to be done: SQL. */
  readonly deed: string;
}

type Cell = string | number | bigint | null;
type Line = readonly Cell[];

/** The lot with the space for a name holds 2^53 − 1 of its material, worth as much; `A` holds as many units. */
const LOT = " ";

const line = (place: string, quantity: Cell, materials: Cell = 0, given: Partial<Record<number, Cell>> = {}): Line =>
  ["material", LOT, place, "", quantity, materials, 0, 0].map((cell, at) => given[at] ?? cell);

/** A posting with these lines; another key, kind, day, reason or reversal where it is given. */
const posting = (lines: string | readonly Line[] | null, given: Readonly<Record<string, Cell>> = {}): string => {
  const row = { id: "'new'", kind: "'written off'", day: "'2026-11-25'", reason: "NULL", reverses: "NULL" };
  const cells = { ...row, ...Object.fromEntries(Object.entries(given).map(([name, cell]) => [name, inSql(cell)])) };
  const text = lines === null ? "NULL" : typeof lines === "string" ? inSql(lines) : inSql(jsonOf(lines));
  const names = [...Object.keys(cells), "lines"].join(", ");
  return `INSERT INTO postings (${names}) VALUES (${[...Object.values(cells), text].join(", ")})`;
};

const inSql = (cell: Cell): string =>
  cell === null ? "NULL" : typeof cell === "string" ? `'${cell.replaceAll("'", "''")}'` : String(cell);
const jsonOf = (lines: readonly Line[]): string =>
  `[${lines.map((cells) => `[${cells.map((cell) => (typeof cell === "bigint" ? String(cell) : JSON.stringify(cell))).join(",")}]`).join(",")}]`;

const moved = (quantity: number, materials: number): readonly Line[] => [
  line("shelf", -quantity, -materials),
  line("lost", quantity, materials),
];
const GOOD = moved(1, 1);

/** @param largest  2^53 − 1 */
export function forbiddenInTheLedger(largest: bigint): readonly Forbidden[] {
  const over = largest + 1n;
  return [
    ...columnsOfPostings(),
    ...columnsOfEntries(over),
    { by: "postings_with_lines", deed: posting(null) },
    { by: "postings_entries", deed: posting([]) },
    { by: "postings_once", deed: posting(GOOD, { id: `opening lot ${LOT}` }) },
    { by: "postings_once", deed: posting(GOOD, { id: `opening lot ${LOT}` }).replace("INSERT", "INSERT OR REPLACE") },
    { by: "postings_once", deed: posting(GOOD, { sequence: 1 }).replace("INSERT", "INSERT OR REPLACE") },
    { by: "postings_in_order", deed: posting(GOOD, { sequence: -7 }) },
    { by: "postings_quantity", deed: posting([line("shelf", -2, -1), line("lost", 1, 1)]) },
    { by: "postings_value", deed: posting([line("shelf", -1, -2), line("lost", 1, 1)]) },
    { by: "postings_value", deed: posting([line("shelf", -1, -1), line("lost", 1, 0, { 6: 1 })]) },
    {
      by: "postings_unknown_lot",
      deed: posting([line("shelf", -1, 0, { 1: "gone" }), line("lost", 1, 0, { 1: "gone" })]),
    },
    {
      by: "postings_unknown_lot",
      deed: posting([line("hold", -1, 0, { 0: "finished" }), line("lost", 1, 0, { 0: "finished" })]),
    },
    { by: "postings_reversal", deed: posting(GOOD, { kind: "reversal", reverses: `opening lot ${LOT}` }) },
    { by: "postings_reversal", deed: posting(GOOD, { kind: "reversal", reverses: "gone" }) },
    { by: "postings_out_of_range", deed: posting([line("supplier", -1), line("shelf", 1)]) },
    { by: "postings_below_zero", deed: posting([line("hold", -1), line("lost", 1)]) },
    // Before the lot came there was none of it, whatever there is now.
    { by: "postings_below_zero_later", deed: posting(GOOD, { day: "2026-09-30" }) },
    { by: "postings_below_zero", deed: posting([line("shelf", 0, -1, { 6: -1 }), line("lost", 0, 1, { 6: 1 })]) },
    {
      by: "postings_below_zero",
      deed: posting([line("shelf", -Number(largest), -1), line("lost", Number(largest), 1)]),
    },
    {
      by: "postings_below_zero",
      deed: posting(moved(5, 1)).replace("INSERT", "INSERT OR IGNORE").replaceAll("shelf", "hold"),
    },
    { by: "postings_never_changed", deed: "UPDATE postings SET reason = 'better so'" },
    { by: "postings_never_changed", deed: "UPDATE postings SET lines = '[]'" },
    { by: "postings_never_changed", deed: "DELETE FROM postings" },
    {
      by: "entries_with_posting",
      deed: `INSERT INTO entries SELECT posting, 9, day, "of", lot, place, run, 0, 0, 0, 0 FROM entries`,
    },
    { by: "entries_never_changed", deed: "UPDATE entries SET quantity = 1" },
    { by: "entries_never_changed", deed: "DELETE FROM entries" },
    { by: "balances_follow_entries", deed: "INSERT INTO balances VALUES ('material', ' ', 'lost', '', 1, 1, 0, 0)" },
    { by: "balances_follow_entries", deed: "UPDATE balances SET quantity = 1" },
    { by: "balances_follow_entries", deed: "DELETE FROM balances" },
    {
      by: "day_totals_follow_entries",
      deed: "INSERT INTO day_totals VALUES ('material', 'shelf', '2020-01-01', 1, 0, 0)",
    },
    { by: "day_totals_follow_entries", deed: "UPDATE day_totals SET materials = 1" },
    { by: "day_totals_follow_entries", deed: "DELETE FROM day_totals" },
  ];
}

const columnsOfPostings = (): readonly Forbidden[] => [
  ...["", "x".repeat(301)].map((id) => ({ by: "postings_id", deed: posting(GOOD, { id }) })),
  ...["", "Sold", "stolen"].map((kind) => ({ by: "postings_kind", deed: posting(GOOD, { kind }) })),
  ...["", "2026-02-30", "now", "1899-12-31", "3000-01-01", "20260203"].map((day) => ({
    by: "postings_day",
    deed: posting(GOOD, { day }),
  })),
  ...["", "x".repeat(1001)].map((reason) => ({ by: "postings_reason", deed: posting(GOOD, { reason }) })),
  { by: "postings_reverses", deed: posting(GOOD, { kind: "reversal" }) },
  { by: "postings_reverses", deed: posting(GOOD, { reverses: `opening lot ${LOT}` }) },
  ...["", "{}", "[", "1"].map((lines) => ({ by: "postings_lines", deed: posting(lines) })),
];

const columnsOfEntries = (over: bigint): readonly Forbidden[] => {
  const having = (at: number, cells: readonly Cell[]): readonly string[] =>
    cells.map((cell) => posting([line("shelf", -1, -1, { [at]: cell }), line("lost", 1, 1, { [at]: cell })]));
  const figures = [over, -over, 0.5, "many"];
  return [
    ...having(0, ["", "Material"]).map((deed) => ({ by: "entries_of", deed })),
    ...having(2, ["", "cellar"]).map((deed) => ({ by: "entries_place", deed })),
    ...having(3, ["r1", "x".repeat(201)]).map((deed) => ({ by: "entries_run", deed })),
    { by: "entries_run", deed: posting([line("shelf", -1, -1), line("batch", 1, 1)]) },
    { by: "entries_home", deed: posting([line("shelf", -1, -1), line("sold", 1, 1)]) },
    { by: "entries_home", deed: posting([line("shelf", -1, -1), line("finished", 1, 1)]) },
    {
      by: "entries_home",
      deed: posting([line("shelf", -1, 0, { 0: "finished", 1: "A" }), line("lost", 1, 0, { 0: "finished", 1: "A" })]),
    },
    ...["quantity", "materials", "labour", "overhead"].flatMap((column, at) =>
      having(at + 4, figures).map((deed) => ({ by: `entries_${column}`, deed })),
    ),
  ];
};
