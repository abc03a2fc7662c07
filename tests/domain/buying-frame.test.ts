/** A maker's frame: what it narrows, and what it makes impossible. */
import { describe, expect, test } from "vitest";
import { type BuyingFrame, type FrameFault, OPEN_FRAME, overCap } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { lineReasons } from "@/lib/domain/buying/line-reasons";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { isoDate } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { type Parts, workshopOf } from "../helpers/bench";
import { day, formula, inGrams, material, money, offer, product, run, supplier } from "../helpers/notation";

const EFFORT = 1_000_000;
const today = day("2026-11-25");

/** A wants 100 g on 27 November, 300 g more on 7 December. Quick comes on the 26th, slow on 5 December. */
const BENCH: Parts = {
  settings: { horizonDays: 20, coverDays: 5 },
  suppliers: [
    supplier("quick", { leadDays: 1, leadCounts: "calendar", shipping: money("4.00"), shippingFreeFrom: money("30") }),
    supplier("slow", { leadDays: 10, leadCounts: "calendar", minimumOrder: money("5.00") }),
    supplier("idle", { minimumOrder: money("12.00") }),
  ],
  materials: [material("A"), material("B")],
  offers: [
    offer("qA", "A", "50", "6.00", { supplier: "quick", breaks: [{ packs: quantity(4n), price: money("4.00") }] }),
    offer("qA-large", "A", "200", "22.00", { supplier: "quick" }),
    offer("sA", "A", "100", "2.00", { supplier: "slow" }),
    offer("iB", "B", "10", "1.00", { supplier: "idle" }),
  ],
  formulas: [formula("f", { A: "100" })],
  products: [product("p", "f")],
  runs: [run("r1", "p", "2026-11-27", 1), run("r2", "p", "2026-12-07", 3)],
};

function bought(frame: Partial<BuyingFrame>, parts: Parts = BENCH) {
  const workshop = workshopOf(parts);
  const framed = shoppingListIn(workshop, plan(workshop, today), { ...OPEN_FRAME, ...frame });
  const problem = problemOf(workshop, framed.list);
  const answer = leastBasket(problem, { effort: EFFORT });
  if (answer.kind !== "basket") throw new Error("no basket");
  return { ...framed, problem, answer };
}

const inShort = (frame: Partial<BuyingFrame>) => {
  const { list, answer, faults } = bought(frame);
  const wanted = list.purchases.map((each) => `${each.material.id} ${inGrams(each.wanted)}`).join(", ");
  const packs = [...answer.packs].map(([id, count]) => `${String(count)} ${id}`).join(", ");
  const late = list.purchases.flatMap(({ candidates }) =>
    candidates.flatMap((each) => (each.late ? each.offer.id : [])),
  );
  return { wanted, packs, late: late.join(" "), faults: faults.map(({ kind }) => kind).join(", ") };
};

describe("[BUY-10] a frame", () => {
  test("that is open is the plan's own: the workshop's cover, whoever comes in time", () => {
    expect(inShort({})).toEqual({ wanted: "A 100", packs: "2 qA", late: "", faults: "" });
  });

  test.each([
    { days: 0, wanted: "", packs: "" },
    { days: 1, wanted: "A 100", packs: "2 qA" },
    { days: 10, wanted: "A 100", packs: "2 qA" },
    { days: 11, wanted: "A 400", packs: "8 qA" },
  ])("covers $days days from the first arrival", ({ days, wanted, packs }) => {
    expect(inShort({ cover: { kind: "days", days } })).toMatchObject({ wanted, packs });
  });

  test("covers the horizon: eight packs at the break, without shipping", () => {
    const { answer } = bought({ cover: { kind: "horizon" } });
    expect(answer.basket.total).toBe(money("32.00"));
  });

  test("leaves a supplier out: the others' first arrival counts, and what is to be bought from then on", () => {
    expect(inShort({ leftOut: new Set(["quick"]) })).toEqual({
      // From 5 December on, and five days: both runs are owed by then. The first day that it can still help is the 5th
      // itself, so it is not late for that.
      wanted: "A 400",
      packs: "4 sA",
      late: "",
      faults: "",
    });
  });

  test("is held to a supplier, however late it comes", () => {
    expect(inShort({ heldTo: new Set(["slow"]) })).toMatchObject({ wanted: "A 100", packs: "3 sA", late: "sA" });
  });

  test("is held to an offer", () => {
    expect(inShort({ chosen: new Set(["qA-large"]) })).toMatchObject({ packs: "1 qA-large" });
  });

  test("takes what comes on any day where the maker does not mind", () => {
    expect(inShort({ arrival: "any day" })).toMatchObject({ packs: "3 sA", late: "sA" });
  });
});

describe("[BUY-11] a frame that cannot hold is told with the figures", () => {
  const faultsOf = (frame: Partial<BuyingFrame>): readonly FrameFault[] => bought(frame).faults;

  test("everyone left out", () => {
    const [fault] = faultsOf({ leftOut: new Set(["quick", "slow"]) });
    expect(fault).toMatchObject({ kind: "everyone left out", material: { id: "A" }, suppliers: ["quick", "slow"] });
    expect(bought({ leftOut: new Set(["quick", "slow"]) }).list).toEqual({ purchases: [], unsourced: [] });
  });

  test("nothing in time, and by how many days", () => {
    const [fault] = faultsOf({ arrival: "in time", heldTo: new Set(["slow"]) });
    if (fault?.kind !== "nothing in time") throw new Error("another fault");
    expect([isoDate(fault.buyBy), isoDate(fault.first), fault.daysLate]).toEqual(["2026-11-27", "2026-12-05", 8]);
  });

  test("a minimum order with nothing wanted", () => {
    expect(faultsOf({ heldTo: new Set(["idle"]) })).toMatchObject([
      { kind: "nothing wanted", supplier: { id: "idle" }, minimumOrder: money("12.00") },
    ]);
  });

  test("an offer that nothing is wanted of", () => {
    expect(faultsOf({ chosen: new Set(["iB"]) })).toMatchObject([
      { kind: "chosen offer not wanted", offer: { id: "iB" } },
    ]);
  });

  test("a cap below the least cost, and by how much", () => {
    const { answer } = bought({});
    const { total } = answer.basket;
    expect(overCap({ total, gap: null }, money("15.99"))).toEqual({
      kind: "over the cap",
      cap: money("15.99"),
      least: money("16.00"),
      by: money("0.01"),
    });
    expect(overCap({ total, gap: null }, money("16.00"))).toBeNull();
    expect(overCap({ total, gap: null }, null)).toBeNull();
    // While a gap is open, what may still be saved counts for the maker.
    expect(overCap({ total, gap: money("1.00") }, money("15.00"))).toBeNull();
  });
});

describe("[BUY-12] a line says why", () => {
  const reasons = (frame: Partial<BuyingFrame>, parts?: Parts) => {
    const { problem, answer } = bought(frame, parts);
    return lineReasons(problem, answer, EFFORT);
  };

  test("what the next best choice costs more, and that its price alone decides", () => {
    // Two at 6.00 and 4.00 of shipping, against one large at 22.00 and the same shipping.
    expect(reasons({})).toEqual([{ offer: "qA", withoutIt: { more: money("10.00"), gap: null }, decidedBy: [] }]);
  });

  test("its price break", () => {
    // Eight at 4.00 are 32.00 and nothing is shipped; without the break two large ones are 44.00, eight small ones 48.00.
    const [line] = reasons({ cover: { kind: "horizon" } });
    expect(line).toMatchObject({ offer: "qA", withoutIt: { more: money("12.00") } });
    expect(line?.decidedBy).toContain("price break");
  });

  test("that nobody else offers the material", () => {
    expect(reasons({ chosen: new Set(["qA"]) })).toEqual([{ offer: "qA", withoutIt: null, decidedBy: [] }]);
  });

  test("its least packs", () => {
    const least = offer("sA", "A", "100", "2.00", { supplier: "quick", minPacks: quantity(4n) });
    const [line] = reasons({}, { ...BENCH, offers: [least] });
    expect(line).toMatchObject({ offer: "sA", decidedBy: ["least packs"] });
  });

  test("the charges: a third pack where free shipping is worth more than it costs", () => {
    const withShipping = (shipping: string): Parts => ({
      ...BENCH,
      suppliers: [supplier("s", { shipping: money(shipping), shippingFreeFrom: money("20"), leadCounts: "calendar" })],
      offers: [offer("oA", "A", "60", "6.70")],
    });
    // Two are 13.40 and the shipping, three are 20.10 without: dearer than 18.40, cheaper than 21.40.
    expect(reasons({}, withShipping("5"))).toMatchObject([{ decidedBy: [] }]);
    expect(reasons({}, withShipping("8"))).toMatchObject([{ decidedBy: ["shipping and minimum order"] }]);
  });
});
