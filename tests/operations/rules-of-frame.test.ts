/** Which rules of a frame can be taken away to ask what decided a line, and what the purchase is without each. */
import { expect, test } from "vitest";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { type BuyingFrame, OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { lineReasons } from "@/lib/domain/buying/line-reasons";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { plan } from "@/lib/domain/plan";
import { type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import { withoutEachRule } from "@/lib/operations/rules-of-frame";
import { workshopOf } from "../helpers/bench";
import { day, formula, material, money, offer, product, run, supplier } from "../helpers/notation";

const today = day("2026-11-25");

/**
 * 100 g of A for 27 November. Quick comes on the 26th: 4.00 for a pack that keeps, 3.00 for one that keeps a day, which
 * is too little where the run is moved to the 29th; slow comes on 5 December, for 2.00.
 */
const workshop = workshopOf({
  settings: { horizonDays: 20 },
  suppliers: [
    supplier("quick", { leadCounts: "calendar" }),
    supplier("slow", { leadDays: 10, leadCounts: "calendar" }),
    supplier("dear", { leadCounts: "calendar" }),
  ],
  materials: [material("A"), material("B")],
  offers: [
    offer("keeps", "A", "100", "4.00", { supplier: "quick" }),
    offer("short", "A", "100", "3.00", { supplier: "quick", shelfLifeDays: 1 }),
    offer("slow", "A", "100", "2.00", { supplier: "slow" }),
    offer("dear", "A", "200", "7.90", { supplier: "dear" }),
    offer("b", "B", "10", "1.00", { supplier: "dear" }),
  ],
  formulas: [formula("f", { A: "99", B: "1" })],
  products: [product("p", "f")],
  runs: [run("r", "p", "2026-11-29", 1), run("later", "p", "2026-12-10", 1)],
});
const planned = plan(workshop, today);

function asked(frame: Partial<BuyingFrame>) {
  const whole = { ...OPEN_FRAME, cover: { kind: "days", days: 5 } as const, ...frame };
  const list = shoppingListIn(workshop, planned, whole).list;
  const purchases = list.purchases.filter((purchase) => purchase.material.id === "A");
  const problem = problemOf(workshop, { ...list, purchases }, whole.cap);
  return { problem, rules: withoutEachRule(workshop, planned, whole, problem) };
}

const offersIn = (problem: BasketProblem) => problem.offers.map(({ id }) => id);

test("[BUY-12] a frame that is open rules out who comes late and nothing else; where any day will do, nothing", () => {
  expect(asked({}).rules.map(({ rule }) => rule)).toEqual(["arrival"]);
  expect(asked({ arrival: "any day" }).rules).toEqual([]);
});

const PUNCTUAL = ["dear", "keeps", "short"];

test.each([
  { rule: "arrival", frame: { arrival: "in time" }, within: PUNCTUAL, without: [...PUNCTUAL, "slow"] },
  { rule: "who is left out or held to", frame: { leftOut: new Set(["quick"]) }, within: ["dear"], without: PUNCTUAL },
  { rule: "who is left out or held to", frame: { heldTo: new Set(["slow"]) }, within: ["slow"], without: PUNCTUAL },
  { rule: "who is left out or held to", frame: { chosen: new Set(["dear"]) }, within: ["dear"], without: PUNCTUAL },
] as const)(
  "[BUY-12] without $rule every offer that it kept away is there again",
  ({ rule, frame, within, without }) => {
    const { problem, rules } = asked(frame);
    expect(offersIn(problem)).toEqual(within);
    expect(rules.filter((each) => each.rule === rule).map((each) => offersIn(each.problem))).toEqual([without]);
    // Only what the purchase is about is asked about.
    expect(rules.every((each) => each.problem.materials.every(({ id }) => id === "A"))).toBe(true);
  },
);

test("[BUY-12] [BUY-16] [BUY-17] packs that must keep, and leftovers that count, are each taken away alone", () => {
  const has = ({ materials: [first] }: BasketProblem) => [first?.keeping != null, first?.leftOver != null];
  const keeping = asked({ mustKeep: true, arrival: "any day" });
  expect(keeping.rules.map(({ rule, problem }) => [rule, ...has(problem)])).toEqual([
    ["goes out of date", false, false],
  ]);
  expect(has(keeping.problem)).toEqual([true, false]);
  // Leftovers count only where every candidate keeps beyond the plan's last day.
  const leftOvers = quantity<PartsPerMillion>(500_000n);
  const counting = asked({ leftOvers, chosen: new Set(["keeps"]), arrival: "any day", cap: money("20") });
  expect(counting.rules.map(({ rule, problem }) => [rule, ...has(problem)])).toEqual([
    ["leftovers count", false, false],
    ["who is left out or held to", false, false],
  ]);
  expect(has(counting.problem)).toEqual([false, true]);
});

test("[BUY-12] the rule that is named as deciding is the one without which other packs are taken", () => {
  const decided = (frame: Partial<BuyingFrame>) => {
    const { problem, rules } = asked(frame);
    const answer = leastBasket(problem, { effort: 100_000 });
    if (answer.kind !== "basket") throw new Error("no basket");
    return lineReasons(problem, answer, 100_000, rules).map(({ offer: taken, decidedBy }) => [taken, ...decidedBy]);
  };
  expect(decided({ arrival: "any day" })).toEqual([["slow"]]);
  expect(decided({})).toEqual([["short", "arrival"]]);
  expect(decided({ mustKeep: true })).toEqual([["keeps", "arrival", "goes out of date"]]);
  expect(decided({ arrival: "in time" })).toEqual([["short", "arrival"]]);
  expect(decided({ leftOut: new Set(["quick"]) })).toEqual([["dear", "arrival", "who is left out or held to"]]);
});
