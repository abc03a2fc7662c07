/** Worked by hand from SUGGEST-5; everything here is invented. */
import { describe, expect, test } from "vitest";
import { broughtForward } from "@/lib/domain/bring-forward";
import { isoDate } from "@/lib/domain/calendar";
import { plan, preparedFor } from "@/lib/domain/plan";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import { day, formula, g, inGrams, lot, material, money, order, product, run } from "@/tests/helpers/notation";

/** A Wednesday. A unit of pA is 100 g of A, a unit of pAB 50 g of A and 50 g of B. */
const today = day("2026-11-25");
const bench: Parts = {
  materials: [material("A"), material("B")],
  formulas: [formula("a", { A: "100" }), formula("b", { B: "100" }), formula("ab", { A: "50", B: "50" })],
  products: [product("pA", "a"), product("pB", "b"), product("pAB", "ab")],
};
/** 500 g of A, good to Wednesday 2 December, and as much that keeps. */
const lots = [lot("OLD", "A", "500", "5", { expires: day("2026-12-02") }), lot("NEW", "A", "500", "5")];

function forward(parts: Parts): string {
  const workshop = workshopOf({ ...bench, ...parts });
  const figures = plan(workshop, today);
  const losing = figures.materials.find(({ expiring }) => expiring.length > 0);
  const [expiry] = losing?.expiring ?? [];
  if (losing === undefined || expiry === undefined) return "nothing is lost";
  const planned = { workshop, plan: figures, prepared: preparedFor(workshop, today), benchMinutes: null };
  const found = broughtForward(losing, expiry, planned, []);
  if (found !== null) expect(found.saved + found.stillLost).toBe(expiry.quantity);
  return found === null
    ? "none"
    : `${found.outlook.run.id} to ${isoDate(found.day).slice(5)}, saves ${inGrams(found.saved)} g`;
}

describe("a run brought forward", () => {
  test.each<{ says: string; parts: Parts; is: string }>([
    {
      says: "the first later run, on the last day of use, saves what it draws",
      parts: { lots, runs: [run("late", "pA", "2026-12-09", 3), run("later", "pA", "2026-12-16", 2)] },
      is: "late to 12-02, saves 300 g",
    },
    {
      says: "a run that draws more than the lot saves all of it",
      parts: { lots, runs: [run("late", "pA", "2026-12-09", 8)] },
      is: "late to 12-02, saves 500 g",
    },
    {
      says: "what earlier runs draw is used already",
      parts: { lots, runs: [run("early", "pA", "2026-11-30", 4), run("late", "pA", "2026-12-09", 3)] },
      is: "late to 12-02, saves 100 g",
    },
    {
      says: "a day that the workshop is shut is left out",
      parts: { lots, settings: { closedDays: [day("2026-12-02")] }, runs: [run("late", "pA", "2026-12-09", 3)] },
      is: "late to 12-01, saves 300 g",
    },
    {
      says: "last on its day, so that it takes nothing from that day's other runs",
      parts: {
        lots: [...lots, lot("B1", "B", "100", "1")],
        runs: [run("two", "pAB", "2026-12-02", 2, { sequence: 1 }), run("late", "pA", "2026-12-09", 9)],
      },
      is: "late to 12-02, saves 400 g",
    },
    {
      says: "not where another run could no longer be made: it would take the B that the run in between needs",
      parts: {
        lots: [...lots, lot("B1", "B", "100", "1")],
        orders: [order("po", "2026-12-07", [{ material: "B", quantity: g("100"), cost: money("1"), expires: null }])],
        runs: [run("mid", "pB", "2026-12-04", 1), run("late", "pAB", "2026-12-09", 2)],
      },
      is: "none",
    },
    {
      says: "not where more of another material is lost: B then goes out of date that the run in between would use",
      parts: {
        lots: [...lots, lot("B1", "B", "100", "1", { expires: day("2026-12-04") })],
        runs: [run("two", "pAB", "2026-12-03", 2), run("late", "pA", "2026-12-09", 9)],
      },
      is: "two to 12-02, saves 100 g",
    },
    { says: "no run draws on it", parts: { lots }, is: "none" },
    {
      says: "the run could not be made then either",
      parts: { lots, runs: [run("late", "pA", "2026-12-09", 80)] },
      is: "none",
    },
    {
      says: "nothing is lost",
      parts: { lots, runs: [run("early", "pA", "2026-11-30", 5)] },
      is: "nothing is lost",
    },
  ])("[SUGGEST-5] $says", ({ parts, is }) => {
    expect(forward(parts)).toBe(is);
  });
});
