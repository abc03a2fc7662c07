import { describe, expect, test } from "vitest";
import { moneyText } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import type { Basis, UnitCost } from "@/lib/domain/plan-figures";
import { packPrice } from "@/lib/domain/prices";
import { quantity } from "@/lib/domain/quantity";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import {
  day,
  decimal,
  formula,
  grams,
  lot,
  material,
  money,
  offer,
  percent,
  pieces,
  product,
  supplier,
} from "@/tests/helpers/notation";

const costs = (parts: Parts, basis: Basis): readonly UnitCost[] =>
  plan(workshopOf(parts), day("2026-11-25")).costs.map(({ byBasis }) => byBasis[basis]);

const shown = ({ perUnit, ingredients, packaging, labour, overhead }: UnitCost) =>
  [perUnit, ingredients, packaging, labour, overhead].map((figure) => figure && moneyText(figure, 4)).join(" ");

const base: Parts = {
  materials: [material("A")],
  formulas: [formula("f", { A: "100" })],
  products: [product("p", "f", { usualRun: quantity(5n) })],
};

test("[COST-1] [COST-2] ingredients, packaging, labour and overhead of one unit of a usual run", () => {
  const seen = costs(
    {
      settings: { labourPerHour: money("14"), overheadPerHour: money("3.2") },
      materials: [material("A"), material("J", { measure: "count" }), material("G", { measure: "count" })],
      formulas: [formula("f", { A: "100" })],
      products: [
        product("p", "f", {
          fill: grams("50"),
          usualRun: quantity(24n),
          packaging: [{ material: "J", amount: pieces(1), spoilage: percent("2") }],
          perRun: [{ material: "G", amount: pieces(6) }],
          labourMinutesPerRun: decimal("45"),
          labourMinutesPerUnit: decimal("1.5"),
        }),
      ],
      offers: [
        offer("o1", "A", "500", "6.10", {
          minPacks: quantity(2n),
          breaks: [{ packs: quantity(2n), price: money("5.90") }],
        }),
        offer("o2", "A", "1000", "11.90"),
        offer("j", "J", "0.000012", "5.40"),
        offer("g", "G", "0.000100", "7.00"),
      ],
    },
    "replacement",
  );
  // 50 g × 0.0118 = 0.59; 0.45 ÷ 0.98 + 6 × 0.07 ÷ 24 = 0.476683…; 3.375 min ÷ 60 × 14 and × 3.2
  expect(seen.map(shown)).toEqual(["2.0342 0.5900 0.4767 0.7875 0.1800"]);
});

describe("[COST-3] the offer that prices a material", () => {
  test.each([
    {
      says: "the lowest price at its smallest order",
      offers: [offer("o1", "A", "100", "2"), offer("o2", "A", "100", "1")],
      perUnit: "1.0000",
    },
    {
      says: "the preferred one, though dearer",
      offers: [offer("o1", "A", "100", "2", { preferred: true }), offer("o2", "A", "100", "1")],
      perUnit: "2.0000",
    },
    {
      says: "the break that its minimum packs reach",
      offers: [
        offer("o1", "A", "100", "2", {
          minPacks: quantity(3n),
          breaks: [
            { packs: quantity(4n), price: money("1") },
            { packs: quantity(3n), price: money("1.5") },
            { packs: quantity(2n), price: money("1.8") },
          ],
        }),
      ],
      perUnit: "1.5000",
    },
  ])("$says", ({ offers, perUnit }) => {
    expect(costs({ ...base, offers }, "replacement").map(shown)[0]).toContain(perUnit);
  });

  test("ties go to the lower id by code point, whatever the file's order", () => {
    const tied = [offer("o2", "A", "200", "2"), offer("o10", "A", "100", "1", { supplier: "t" })];
    const workshop = workshopOf({ ...base, suppliers: [supplier("s"), supplier("t")], offers: tied });
    expect(plan(workshop, day("2026-11-25")).materials[0]?.pricedOffer?.id).toBe("o10");
  });

  test("without an offer, the average of the usable lots", () => {
    const lots = [lot("L1", "A", "100", "3"), lot("gone", "A", "100", "50", { expires: day("2026-11-24") })];
    expect(costs({ ...base, lots }, "replacement").map(shown)[0]).toBe("3.0000 3.0000 0.0000 0.0000 0.0000");
  });
});

describe("[COST-4] [COST-5] the same shelf on three bases", () => {
  const parts: Parts = {
    ...base,
    products: [product("p1", "f", { usualRun: quantity(5n) }), product("p2", "f", { usualRun: quantity(2n) })],
    offers: [offer("o", "A", "1000", "30")],
    lots: [
      lot("L2", "A", "300", "6", { expires: day("2027-02-01") }),
      lot("L1", "A", "100", "1", { expires: day("2027-01-01") }),
      lot("L0", "A", "500", "90", { expires: day("2026-11-24") }),
    ],
  };
  test.each([
    // 100 g for 1.00, 300 g for 6.00, 100 g at 0.03; the second product alone draws 100 g and a third of the other lot
    { basis: "shelf", perUnit: ["2.0000", "1.5000"] },
    { basis: "average", perUnit: ["1.7500", "1.7500"] },
    { basis: "replacement", perUnit: ["3.0000", "3.0000"] },
  ] as const)("$basis: $perUnit", ({ basis, perUnit }) => {
    expect(costs(parts, basis).map((cost) => cost.perUnit && moneyText(cost.perUnit, 4))).toEqual(perUnit);
  });

  test("[COST-4] the working names the lots drawn and what is topped up", () => {
    const from = costs(parts, "shelf")[0]?.lines[0]?.price?.from;
    expect(from?.kind === "shelf" && from.draws.map(({ lot: { id } }) => id)).toEqual(["L1", "L2"]);
    expect(from?.kind === "shelf" && from.topUp?.price.from.kind).toBe("offer");
  });
});

describe("[COST-6] a material that nothing prices is never zero", () => {
  const parts: Parts = {
    materials: [material("A"), material("B"), material("J", { measure: "count" })],
    formulas: [formula("f", { A: "50", B: "50" }), formula("a", { A: "100" })],
    products: [
      product("p1", "f"),
      product("p2", "a", { packaging: [{ material: "J", amount: pieces(1), spoilage: percent("0") }] }),
      product("p3", "a"),
    ],
    offers: [offer("o", "A", "100", "1")],
    lots: [lot("empty", "B", "0", "0")],
  };
  test("the figures that depend on it are not known; the others stand", () => {
    expect(costs(parts, "replacement").map(shown)).toEqual([
      "  0.0000 0.0000 0.0000",
      " 1.0000  0.0000 0.0000",
      "1.0000 1.0000 0.0000 0.0000 0.0000",
    ]);
    expect(costs(parts, "shelf").map(({ unpriced }) => unpriced.map(({ id }) => id))).toEqual([["B"], ["J"], []]);
  });
});

test("[COST-7] freight is no part of a replacement price", () => {
  const offers = [offer("o", "A", "100", "1")];
  const dear = { ...base, suppliers: [supplier("s", { shipping: money("99") })], offers };
  expect(costs(dear, "replacement").map(shown)).toEqual(costs({ ...base, offers }, "replacement").map(shown));
});

test("the price of a pack is that of the highest break reached", () => {
  const breaks = [
    { packs: quantity<never>(5n), price: money("4") },
    { packs: quantity<never>(2n), price: money("5") },
  ];
  const each = offer("o", "A", "1", "6", { breaks });
  expect([1n, 2n, 4n, 5n, 100n].map((packs) => packPrice(each, quantity(packs)))).toEqual(
    ["6", "5", "5", "4", "4"].map(money),
  );
});
