import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { arrivalOf, arrivalsOf, deliveryFrom, latestOrderDay } from "@/lib/domain/arrivals";
import { type Day, daysAfter, isoDate, weekday } from "@/lib/domain/calendar";
import { day, g, money, order, supplier } from "@/tests/helpers/notation";

const from = (leadDays: number, leadCounts: "working" | "calendar", closed: string[] = [], ours: string[] = []) =>
  deliveryFrom(supplier("s", { leadDays, leadCounts, closedDays: closed.map(day) }), ours.map(day));

describe("[DAY-3] an order comes in", () => {
  // Wed 25 Nov 2026
  test.each([
    { lead: [0, "working"], on: "2026-11-25", comes: "2026-11-25", says: "the same day" },
    { lead: [1, "working"], on: "2026-11-27", comes: "2026-11-30", says: "over the weekend" },
    { lead: [0, "working"], on: "2026-11-28", comes: "2026-11-30", says: "placed on Monday" },
    { lead: [10, "calendar"], on: "2026-11-25", comes: "2026-12-05", says: "on a Saturday" },
    {
      lead: [8, "calendar"],
      on: "2026-11-25",
      comes: "2026-12-05",
      ours: ["2026-12-03", "2026-12-04"],
      says: "moved on past our closed days",
    },
    {
      lead: [3, "working"],
      on: "2026-12-02",
      comes: "2026-12-08",
      closed: ["2026-12-07"],
      ours: ["2026-12-04"],
      says: "the supplier works while we are shut",
    },
    {
      lead: [1, "working"],
      on: "2026-11-26",
      comes: "2026-11-30",
      ours: ["2026-11-26"],
      says: "not placed on our closed day",
    },
  ] as const)("$says", ({ lead: [days, counts], on, comes, ...shut }) => {
    const closed = "closed" in shut ? [...shut.closed] : [];
    const ours = "ours" in shut ? [...shut.ours] : [];
    expect(isoDate(arrivalOf(from(days, counts, closed, ours), day(on)))).toBe(comes);
  });
});

const dayIn2026 = fc.integer({ min: 20_550, max: 20_700 }).map((at) => at as Day);
property.prop([
  fc.integer({ min: 0, max: 25 }),
  fc.constantFrom("working" as const, "calendar" as const),
  fc.array(dayIn2026, { maxLength: 40 }),
  fc.array(dayIn2026, { maxLength: 40 }),
  dayIn2026,
])(
  "[PLAN-6] the order-by day is the last working day of both that comes in time",
  (lead, counts, closed, ours, needed) => {
    const delivery = deliveryFrom(supplier("s", { leadDays: lead, leadCounts: counts, closedDays: closed }), ours);
    const found = latestOrderDay(delivery, needed);
    const isWorking = (at: Day) => weekday(at) <= 5 && !closed.includes(at) && !ours.includes(at);
    let walked = needed;
    while (!isWorking(walked) || arrivalOf(delivery, walked) > needed) walked = daysAfter(walked, -1);
    expect(found).toBe(walked);
  },
);

test("[PLAN-2] [PLAN-3] an order due today or overdue is expected on the next working day of both", () => {
  const line = { material: "A", quantity: g("1"), cost: money("1"), expires: null };
  const orders = [
    order("over", "2026-11-20", [line, line]),
    order("today", "2026-11-25", [line]),
    order("ahead", "2026-11-28", [line]),
  ];
  const delivery = from(1, "working", ["2026-11-27"], ["2026-11-26"]);
  const arrivals = arrivalsOf(orders, () => delivery, day("2026-11-25"));
  expect(arrivals.map(({ day: at, lot }) => `${lot.id} ${isoDate(at)} ${isoDate(lot.received)}`)).toEqual([
    "over/1 2026-11-30 2026-11-30",
    "over/2 2026-11-30 2026-11-30",
    "today/1 2026-11-30 2026-11-30",
    "ahead/1 2026-11-28 2026-11-28",
  ]);
});
