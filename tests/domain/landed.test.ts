import { describe, expect, test } from "vitest";
import { ratio } from "@/lib/domain/fraction";
import { driftOf, landedEach, packPaid, paidEach } from "@/lib/domain/landed";
import type { LotReceived } from "@/lib/domain/ledger/receipt";
import { quantity } from "@/lib/domain/quantity";
import type { Offer } from "@/lib/domain/workshop";
import { day, g, money, offer } from "../helpers/notation";

const TODAY = day("2026-11-25");

/** Two packs of 500 g for 9.00, and 1.50 of delivery. */
const came = (given: Partial<LotReceived> = {}): LotReceived => ({
  lot: "L",
  posting: "d",
  supplier: "s",
  offer: "o",
  order: null,
  packs: quantity(2n),
  paid: money("9"),
  material: "A",
  day: day("2026-11-20"),
  quantity: g("1000"),
  landed: money("10.5"),
  ...given,
});

test("[ORDER-6] a kilo costs what was paid, and landed what the lot cost", () => {
  // 9.00 and 10.50 for 1,000,000,000 µg
  expect([paidEach(came()), landedEach(came())].map(({ over, under }) => Number(over) / Number(under))).toEqual([
    0.009, 0.0105,
  ]);
  expect(landedEach(came())).toEqual(ratio(10_500_000n, 1_000_000_000n));
});

test("[ORDER-6] a pack that is no whole number of millionths has no price of its own", () => {
  expect(packPaid(came())).toBe(money("4.5"));
  expect(packPaid(came({ packs: quantity(7n), paid: money("1") }))).toBeNull();
});

describe("[OFFER-3] an offer", () => {
  const of = (given: Partial<Offer>): Offer =>
    offer("o", "A", "500", "4.5", { confirmedOn: day("2026-11-01"), ...given });
  const breaks = [{ packs: quantity<never>(2n), price: money("4.4") }];
  test.each([
    { says: "that is as it was paid holds", of: of({}), is: null },
    { says: "of which nothing came holds", of: of({}), received: [], is: null },
    {
      says: "that asks something else was paid otherwise",
      of: of({ price: money("4.4") }),
      is: { kind: "paid otherwise", paid: money("4.5"), says: money("4.4"), on: day("2026-11-20") },
    },
    {
      says: "is held against its price at so many packs",
      of: of({ price: money("4.5"), breaks }),
      is: { kind: "paid otherwise", paid: money("4.5"), says: money("4.4"), on: day("2026-11-20") },
    },
    {
      says: "that was confirmed since holds",
      of: of({ price: money("4.4"), confirmedOn: day("2026-11-21") }),
      is: null,
    },
    {
      says: "is not held against what came by another",
      of: of({ price: money("4.4") }),
      received: [came({ offer: "other" })],
      is: null,
    },
    {
      says: "is held against the last that came",
      of: of({ price: money("4.4") }),
      received: [came(), came({ lot: "M", paid: money("8.8"), day: day("2026-11-24") })],
      is: null,
    },
    {
      says: "that nobody confirmed says so",
      of: of({ confirmedOn: null }),
      received: [],
      is: { kind: "never confirmed" },
    },
    { says: "confirmed 180 days ago holds", of: of({ confirmedOn: day("2026-05-29") }), received: [], is: null },
    {
      says: "confirmed 181 days ago is asked for again",
      of: of({ confirmedOn: day("2026-05-28") }),
      received: [],
      is: { kind: "confirmed long ago", on: day("2026-05-28"), days: 181 },
    },
  ])("$says", ({ of: offered, received, is }) => {
    expect(driftOf(offered, received ?? [came()], TODAY)).toEqual(is);
  });
});
