import { describe, expect, test } from "vitest";
import { AMOUNTS } from "../bad-files/amounts";
import { changedFile, faultsOf } from "../bad-files/bench-workshop";
import { DECIMALS } from "../bad-files/decimals";
import { DOCUMENT } from "../bad-files/document";
import { FORMULA_FACTS } from "../bad-files/formula-facts";
import { FORMULAS } from "../bad-files/formulas";
import { LABELS } from "../bad-files/labels";
import { LOTS_AND_ORDERS } from "../bad-files/lots-and-orders";
import { NAMES_AND_DATES } from "../bad-files/names-and-dates";
import { OFFERS } from "../bad-files/offers";
import { PRICES_AND_DENSITIES } from "../bad-files/prices-and-densities";
import { PRODUCTS } from "../bad-files/products";
import { QUANTITIES } from "../bad-files/quantities";
import { RUNS_AND_SALES } from "../bad-files/runs-and-sales";
import { SETTINGS } from "../bad-files/settings";
import { SUPPLIERS_AND_MATERIALS } from "../bad-files/suppliers-and-materials";

const FAULTY = [
  ...DOCUMENT,
  ...NAMES_AND_DATES,
  ...SETTINGS,
  ...DECIMALS,
  ...PRICES_AND_DENSITIES,
  ...AMOUNTS,
  ...QUANTITIES,
  ...SUPPLIERS_AND_MATERIALS,
  ...OFFERS,
  ...LOTS_AND_ORDERS,
  ...FORMULAS,
  ...FORMULA_FACTS,
  ...PRODUCTS,
  ...RUNS_AND_SALES,
  ...LABELS,
];

test("the file in which nothing is changed is read", () => {
  expect(faultsOf(changedFile({}))).toEqual([]);
});

// Every line is compared, so that a fault that draws another one after it is seen too.
describe("a faulty file is refused with exactly its faults", () => {
  test.each(FAULTY)("[$rule] $says", ({ changes, faults }) => {
    expect(faults.length).toBeGreaterThan(0);
    expect(faultsOf(changedFile(changes))).toEqual(faults);
  });
});

const DOCUMENT_LISTS = "suppliers materials offers lots orders formulas products runs finished sales".split(" ");

test.each(DOCUMENT_LISTS)("[FILE-1] the list %s must be there, if empty", (list) => {
  expect(faultsOf(changedFile({ [list]: undefined }))).toEqual([`${list}: missing; it must be a list`]);
});

const sales = (count: number) =>
  Array.from({ length: count }, () => ({ product: "gone", date: "2026-11-03", units: 1 }));

test.each([
  { count: 99, lines: 99, last: "sales[98].product" },
  { count: 100, lines: 100, last: "sales[99].product" },
  { count: 101, lines: 101, last: "and 1 more fault" },
  { count: 350, lines: 101, last: "and 250 more faults" },
])("[FILE-2] $count faults are $lines lines", ({ count, lines, last }) => {
  const faults = faultsOf(changedFile({ sales: sales(count) }));
  expect(faults).toHaveLength(lines);
  expect(faults.at(-1)).toContain(last);
});
