/** What a formula asks of a batch, and what answers it: each case by hand from BENCH-11. */
import { describe, expect, test } from "vitest";
import { checksAsked, checksFound, isWithin } from "@/lib/domain/bench/asked-checks";
import type { Batch, BenchNote, Instant } from "@/lib/domain/bench/batch";
import { NO_FORMULA_FACTS } from "@/lib/domain/formula-book/facts";
import { measuredPh } from "@/lib/domain/label/label-of-run";
import { decimal } from "@/tests/helpers/notation";

const mark = (key: string) => ({ key, at: "2026-11-25T09:30:00Z" as Instant, who: "R. Weaver" });
const measured = (key: string, ph: string): BenchNote => ({
  ...mark(key),
  kind: "acidity",
  ph: decimal(ph),
  meter: null,
  calibrated: null,
});
const checked = (key: string, found: string, within: boolean): BenchNote => ({
  ...mark(key),
  kind: "checked",
  what: "pH",
  asked: "from 5 to 6",
  found,
  within,
  why: within ? null : "known",
});
const struck = (key: string, strikes: string): BenchNote => ({ ...mark(key), kind: "struck", strikes, why: "misread" });
const batchWith = (notes: readonly BenchNote[]): Batch => ({ notes }) as unknown as Batch;
const asking = checksAsked({ ...NO_FORMULA_FACTS, phFrom: decimal("5"), phTo: decimal("6") });

test.each([
  { found: "4.99", within: false },
  { found: "5", within: true },
  { found: "5.00", within: true },
  { found: "6.0", within: true },
  { found: "6.0001", within: false },
])("[BENCH-11] $found between 5 and 6: $within", ({ found, within }) => {
  expect(isWithin({ from: decimal("5"), to: decimal("6") }, decimal(found))).toBe(within);
});

test("[BENCH-11] a limit that is open lets everything pass on that side", () => {
  expect(isWithin({ from: null, to: decimal("1") }, decimal("0"))).toBe(true);
  expect(isWithin({ from: decimal("1"), to: null }, decimal("1000000"))).toBe(true);
});

test("[BENCH-11] the target pH is a check, once, also where the formula names one so", () => {
  const own = { what: "pH", from: decimal("1"), to: null, unit: null, looks: null };
  const smell = { what: "Smell", from: null, to: null, unit: null, looks: "none" };
  const asked = checksAsked({ ...NO_FORMULA_FACTS, phTo: decimal("6"), checks: [own, smell] });
  expect(asked).toEqual([{ ...own, from: null, to: "6" }, smell]);
  expect(checksAsked({ ...NO_FORMULA_FACTS, checks: [own] })).toEqual([own]);
  expect(checksAsked(NO_FORMULA_FACTS)).toEqual([]);
});

describe("the pH is answered by the last of what was measured and what was checked", () => {
  test.each([
    { says: "nothing", notes: [], answered: false, ph: null },
    { says: "measured within", notes: [measured("a", "5.5")], answered: true, ph: "5.5" },
    { says: "measured outside", notes: [measured("a", "6.4")], answered: false, ph: "6.4" },
    {
      says: "checked outside with a reason",
      notes: [measured("a", "5.5"), checked("b", "6.4", false)],
      answered: true,
      ph: "6.4",
    },
    {
      says: "measured outside after it was checked",
      notes: [checked("b", "5.5", true), measured("a", "6.4")],
      answered: false,
      ph: "6.4",
    },
    {
      says: "the check struck",
      notes: [measured("a", "5.5"), checked("b", "6.4", false), struck("c", "b")],
      answered: true,
      ph: "5.5",
    },
  ])("[BENCH-11, LABEL-8] $says", ({ notes, answered, ph }) => {
    expect(checksFound(batchWith(notes), asking)).toMatchObject([{ isAnswered: answered }]);
    expect(measuredPh(batchWith(notes))).toBe(ph);
  });
});
