/** Only what must be ordered by a day, and how long what is bought then lasts. Figures worked by hand beside them. */
import { expect, test } from "vitest";
import { OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { lastingWith } from "@/lib/domain/buying/lasting";
import { dueBy, ridingAlong } from "@/lib/domain/buying/ride-along";
import { isoDate } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import { workshopOf } from "../helpers/bench";
import { day, formula, g, material, offer, product, run, supplier } from "../helpers/notation";

const today = day("2026-11-25");
const one = { leadDays: 1, leadCounts: "calendar" } as const;

/** A is needed on the 27th, B and C a week later; B is offered by A's supplier too, C by another alone. */
const workshop = workshopOf({
  settings: { horizonDays: 20 },
  suppliers: [supplier("first", one), supplier("other", one)],
  materials: [material("A"), material("B"), material("C")],
  offers: [
    offer("fA", "A", "100", "5.00", { supplier: "first" }),
    offer("fB", "B", "100", "5.00", { supplier: "first" }),
    offer("oB", "B", "100", "1.00", { supplier: "other" }),
    offer("oC", "C", "100", "1.00", { supplier: "other" }),
  ],
  formulas: [formula("a", { A: "100" }), formula("b", { B: "100" }), formula("c", { C: "100" })],
  products: [product("pa", "a"), product("pb", "b"), product("pc", "c")],
  runs: [run("r1", "pa", "2026-11-27", 1), run("r2", "pb", "2026-12-04", 1), run("r3", "pc", "2026-12-04", 1)],
});
const planned = plan(workshop, today);
const { list } = shoppingListIn(workshop, planned, OPEN_FRAME);
const idsOf = (purchases: readonly { readonly material: { readonly id: string } }[]) =>
  purchases.map((each) => each.material.id).join(" ");

test.each([
  { by: "2026-11-25", due: "", others: "A B C" },
  // A day's lead: the 26th for the run of the 27th, the 3rd for those of the 4th.
  { by: "2026-11-26", due: "A", others: "B C" },
  { by: "2026-12-02", due: "A", others: "B C" },
  { by: "2026-12-03", due: "A B C", others: "" },
])("[BUY-18] by $by must be ordered: $due", ({ by, due, others }) => {
  const parted = dueBy(list, day(by));
  expect([idsOf(parted.due.purchases), idsOf(parted.others)]).toEqual([due, others]);
});

test("[BUY-18] what the same supplier offers rides along, from that supplier alone, and the rest waits", () => {
  const riding = ridingAlong(dueBy(list, day("2026-11-26")), new Set(["first"]));
  const offers = riding.list.purchases.map(({ candidates }) => candidates.map(({ offer: { id } }) => id).join(" "));
  expect([idsOf(riding.list.purchases), offers, idsOf(riding.waiting)]).toEqual(["A B", ["fA", "fB"], "C"]);
});

const lastingOf = (grams: string, arrives: string) => {
  const [outlook] = planned.materials;
  if (!outlook) throw new Error("no material");
  return lastingWith(outlook, [{ arrives: day(arrives), expires: null, quantity: g(grams) }], planned);
};

test.each([
  // 50 g come for the 100 g of the 27th: less than nothing from then on.
  { grams: "50", lowOn: "2026-11-27", daysBeyond: undefined },
  // 100 g are over after the run: twenty days at 100 g in twenty days.
  { grams: "200", lowOn: null, daysBeyond: 20 },
  { grams: "100", lowOn: null, daysBeyond: 0 },
])("[BUY-19] $grams g bought last to $lowOn, or $daysBeyond days beyond", ({ grams, lowOn, daysBeyond }) => {
  const lasting = lastingOf(grams, "2026-11-26");
  expect([lasting?.lowOn && isoDate(lasting.lowOn), lasting?.beyond?.daysMore]).toEqual([lowOn, daysBeyond]);
});

test("[BUY-19] it opens to what comes and what the run needs, by the run's own name", () => {
  const changes = lastingOf("50", "2026-11-26")?.standing.changes.map((change) =>
    change.kind === "drawn"
      ? `${isoDate(change.day)} ${change.run.id} -${String(change.need)}`
      : `${isoDate(change.day)} +${String(change.quantity)}`,
  );
  expect(changes).toEqual(["2026-11-26 +50000000", "2026-11-27 r1 -100000000"]);
});

test("[BUY-19] of what comes after the plan's last day, the 15th, the plan does not say how long it lasts", () => {
  expect(lastingOf("200", "2026-12-15")).not.toBeNull();
  expect(lastingOf("200", "2026-12-16")).toBeNull();
});
