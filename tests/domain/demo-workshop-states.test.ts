/** That the demo shows every state of the screens, and where; each row finds its own, so a lost state fails here. */
import { describe, expect, test } from "vitest";
import { daysAfter, type Day, mondayOf } from "@/lib/domain/calendar";
import { plan, preparedFor } from "@/lib/domain/plan";
import type { MaterialOutlook, RunOutlook } from "@/lib/domain/plan-figures";
import { tookIt } from "@/lib/domain/took-it";
import type { Workshop } from "@/lib/domain/workshop";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { readDemo, runOf } from "./demo-workshop";

const demo = readDemo();
const { workshop } = demo;
const { today } = demo.plan;
const sunday = daysAfter(mondayOf(today), 6);

const has = (orderBy: Day | null, from: Day, to: Day) => orderBy !== null && orderBy >= from && orderBy <= to;
const onOrder = new Set(workshop.orders.flatMap(({ lines }) => lines.map(({ material }) => material)));

describe("[PLAN-6, PLAN-9] the shelf shows", () => {
  const rows: readonly (readonly [string, (outlook: MaterialOutlook) => boolean, string])[] = [
    ["order-by day gone", ({ daysLate }) => (daysLate ?? 0) > 0, "m-btms m-strips"],
    ["order today", ({ orderBy }) => orderBy === today, "m-protein"],
    ["order this week", ({ orderBy }) => has(orderBy, daysAfter(today, 1), sunday), "m-pot m-label"],
    [
      "order later",
      ({ orderBy }) => orderBy !== null && orderBy > sunday,
      "m-glycerin m-ipm m-cetyl m-emulsifier m-castor m-beeswax m-calendula m-tocopherol m-jar m-bottle m-pouch m-box",
    ],
    [
      "covered",
      ({ belowSafetyOn, expiring }) => belowSafetyOn === null && expiring.length === 0,
      "m-water m-propanediol m-ethanol m-xanthan m-citric m-panthenol m-preservative m-sunflower m-shea m-lavandin m-limonene m-sucrose m-lid m-tin m-label-round m-wax m-gloves m-filter",
    ],
    [
      "going out of date",
      ({ expiring }) => expiring.some(({ on }) => on > daysAfter(today, 1)),
      "m-protein m-calendula m-strips",
    ],
    ["already out of date", ({ expiring }) => expiring.some(({ on }) => on <= today), "m-apricot"],
    [
      "for the last time today",
      ({ ladder }) => ladder.some(({ expires, order }) => expires === today && order === null),
      "m-mica",
    ],
    [
      "a line on order that arrives out of date",
      ({ ladder }) => ladder.some(({ expires, received, order }) => order !== null && (expires ?? received) < received),
      "m-calendula",
    ],
    [
      "on order",
      ({ material }) => onOrder.has(material.id),
      "m-panthenol m-preservative m-shea m-calendula m-lavandin m-tin",
    ],
    ["no offer at all", ({ pricedOffer }) => pricedOffer === null, "m-apricot m-mica"],
    ["nothing on the shelf", ({ onHand }) => onHand === 0n, "m-apricot"],
    [
      "planned by safety stock alone",
      ({ events, toBuy }) => toBuy > 0n && events.every(({ kind }) => kind !== "drawn"),
      "m-strips",
    ],
    [
      "short",
      ({ shortOn }) => shortOn !== null,
      "m-glycerin m-btms m-cetyl m-protein m-castor m-beeswax m-calendula m-apricot m-jar m-pot m-bottle m-label m-box",
    ],
  ];
  test.each(rows)("%s", (_, isSo, ids) => {
    const found = demo.plan.materials.filter(isSo).map(({ material }) => material.id);
    expect(found.join(" ")).toBe(ids);
  });
});

describe("[MAKE-1 to MAKE-4] the week shows", () => {
  const beyondBySpoilageOnly = ({ makeable, draws }: RunOutlook) =>
    makeable && draws.some(({ need, there }) => there < need);
  const rows: readonly (readonly [string, (outlook: RunOutlook) => boolean, string])[] = [
    ["a run in the past that was not closed", ({ run }) => run.date < today, "r01"],
    ["runs today", ({ run }) => run.date === today, "r02"],
    ["a run beyond the horizon", ({ run }) => run.date > demo.plan.lastDay, "r23"],
    ["runs in turn on one day", ({ run }) => run.sequence > 0, "r02 r04 r05 r14 r15"],
    ["a run that only spoilage could stop", beyondBySpoilageOnly, "r11"],
    ["runs that cannot be made", ({ makeable }) => !makeable, "r07 r10 r12 r14 r15 r16 r17 r18 r19 r20 r21 r22 r23"],
    [
      "runs of which some units can be made",
      ({ makeable, mostUnits }) => !makeable && mostUnits > 0n,
      "r10 r12 r14 r16 r18 r20 r22 r23",
    ],
    ["a run short of several materials", ({ short }) => short.length > 1, "r14 r19 r21"],
  ];
  test.each(rows)("%s", (_, isSo, ids) => {
    const found = demo.plan.runs.filter(isSo).map(({ run }) => run.id);
    expect(found.join(" ")).toBe(ids);
  });

  test.each([
    { run: "r10", by: "r04" },
    { run: "r12", by: "r05" },
    { run: "r16", by: "r09" },
    { run: "r17", by: "r11" },
  ])("[MAKE-4] $by took what $run is short of", ({ run, by }) => {
    const { runs, stock } = preparedFor(workshop, today);
    const took = tookIt(runOf(demo, run), runs, ({ id }) => runOf(demo, id), stock);
    expect([took?.run.id, took?.enough]).toEqual([by, true]);
  });
});

describe("the file holds", () => {
  const count = (list: readonly unknown[]) => list.length;
  const units = new Set(workshop.offers.map(({ pack }) => pack.typed.unit));
  const rows: readonly (readonly [string, (of: Workshop) => number | boolean, number | boolean])[] = [
    ["suppliers", ({ suppliers }) => count(suppliers), 4],
    ["materials", ({ materials }) => count(materials), 37],
    ["products", ({ products }) => count(products), 6],
    ["runs", ({ runs }) => count(runs), 23],
    ["orders overdue", ({ orders }) => count(orders.filter(({ due }) => due < today)), 1],
    ["orders due today", ({ orders }) => count(orders.filter(({ due }) => due === today)), 1],
    ["a lot of nothing", ({ lots }) => count(lots.filter(({ remaining }) => remaining === 0n)), 1],
    [
      "a supplier with a lead in calendar days",
      ({ suppliers }) => count(suppliers.filter((s) => s.leadCounts === "calendar")),
      1,
    ],
    ["suppliers with a minimum order", ({ suppliers }) => count(suppliers.filter((s) => s.minimumOrder !== null)), 2],
    [
      "suppliers with free shipping from",
      ({ suppliers }) => count(suppliers.filter((s) => s.shippingFreeFrom !== null)),
      2,
    ],
    [
      "packs in kg, L, oz, lb, US fluid ounces, gallons and pieces",
      () =>
        ["kg", "g", "L", "mL", "oz", "lb", "floz-us", "gal-us", "gal-uk", "each"].every((unit) =>
          [...units].some((used) => used === unit),
        ),
      true,
    ],
    ["a preferred offer", ({ offers }) => count(offers.filter(({ preferred }) => preferred)), 1],
    ["offers with a smallest order", ({ offers }) => count(offers.filter(({ minPacks }) => minPacks > 1n)), 2],
    [
      "packaging by mass",
      ({ materials }) => count(materials.filter((m) => m.kind === "packaging" && m.measure === "mass")),
      1,
    ],
  ];
  test.each(rows)("%s", (_, figure, expected) => {
    expect(figure(workshop)).toBe(expected);
  });

  test("[FILE-4] and reads back from what the app writes, with the same plan", () => {
    const text = writeWorkshopFile(workshop);
    const again = readWorkshopFile(new TextEncoder().encode(text), today);
    if (again.kind === "refused") throw new Error(again.faults.join("\n"));
    expect(writeWorkshopFile(again.workshop)).toBe(text);
    expect(plan(again.workshop, today)).toEqual(demo.plan);
  });
});
