/** The bench is worked by hand; beside it every sway is held to planning the changed workshop afresh. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compare, type Fraction, minus, ZERO } from "@/lib/domain/fraction";
import { type MicroUnits, moneyText } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import { BASES, type Basis } from "@/lib/domain/plan-figures";
import { keptToCustomers, keptToShops } from "@/lib/domain/pricing";
import { type PartsPerMillion, quantity, type Units } from "@/lib/domain/quantity";
import { type Asked, type Sway, type SwayInput, swayOfKept } from "@/lib/domain/sway";
import type { Product, Settings, Workshop } from "@/lib/domain/workshop";
import { planned } from "@/tests/agreement/agreement";
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
} from "@/tests/helpers/notation";
import { workshops } from "@/tests/helpers/random-workshop";

const today = day("2026-11-25");
const counted = { measure: "count" } as const;

/**
 * Bulk (10 × 80 g + 100 g) ÷ 0.9 = 1,000 g of A for 18.00, so 1.80 a unit, of which the heel 1/9. Jar 0.50, filter
 * 2 × 0.25 ÷ 10 = 0.05. 30 ÷ 10 + 3 = 6 minutes: labour 1.20, overhead 0.30. One unit costs 3.85.
 */
const bench: Parts = {
  settings: {
    labourPerHour: money("12"),
    overheadPerHour: money("3"),
    tax: percent("20"),
    paymentFee: percent("1.9"),
    paymentFeeFixed: money("0.2"),
  },
  materials: [material("A"), material("filter", counted), material("jar", counted)],
  offers: [
    offer("a", "A", "1000", "18"),
    offer("f", "filter", "0", "0.25", { pack: pieces(1) }),
    offer("j", "jar", "0", "0.5", { pack: pieces(1) }),
  ],
  formulas: [formula("f", { A: "100" })],
  products: [
    product("p", "f", {
      fill: grams("80"),
      heel: grams("100"),
      processLoss: percent("10"),
      packaging: [{ material: "jar", amount: pieces(1), spoilage: percent("0") }],
      perRun: [{ material: "filter", amount: pieces(2) }],
      labourMinutesPerRun: decimal("30"),
      labourMinutesPerUnit: decimal("3"),
    }),
  ],
};

const first = <T>(list: readonly T[]): T => {
  const [found] = list;
  if (found === undefined) throw new Error("an empty list");
  return found;
};

const costIn = (workshop: Workshop, productId: string, basis: Basis) => {
  const cost = plan(workshop, today).costs.find((each) => each.product.id === productId);
  if (!cost) throw new Error(`no product ${productId}`);
  return { product: cost.product, unit: cost.byBasis[basis] };
};

const swaysIn = (workshop: Workshop, productId: string, asked: Asked, basis: Basis = "replacement") => {
  const { product: of, unit } = costIn(workshop, productId, basis);
  return swayOfKept(unit, of, asked, workshop.settings);
};

const nameOf = (input: SwayInput): string => (input.kind === "material price" ? input.material.id : input.kind);
const inShort = ({ input, worseWhen, worse, better }: Sway): string =>
  `${nameOf(input)} ${moneyText(worse, 6)} when ${worseWhen}, else ${moneyText(better, 6)}`;

describe("the sway of what is kept", () => {
  const shops: Asked = { of: "shops", price: money("8") };
  const customers: Asked = { of: "customers", price: money("12") };

  test("[SWAY-1, SWAY-3, SWAY-4] to shops, longest first, each end as worked by hand", () => {
    expect(swaysIn(workshopOf(bench), "p", shops)?.map(inShort)).toEqual([
      "price -0.800000 when less, else 0.800000",
      "A -0.180000 when more, else 0.180000",
      "labour rate -0.120000 when more, else 0.120000",
      // 0.20 of heel + 0.05 of filters + 0.75 of minutes is one unit's part of the run: ÷ 9 and ÷ 11
      "units per run -0.111111 when less, else 0.090909",
      "jar -0.050000 when more, else 0.050000",
      "overhead rate -0.030000 when more, else 0.030000",
      // 1.80 × 0.01 ÷ 0.89 and 1.80 × 0.01 ÷ 0.91
      "process loss -0.020225 when more, else 0.019780",
      "filter -0.005000 when more, else 0.005000",
    ]);
  });

  test("[SWAY-2] to customers a tenth of the price is 1.00 without tax, less 1.9 % of the 1.20 paid", () => {
    expect(inShort(first(swaysIn(workshopOf(bench), "p", customers) ?? []))).toBe(
      "price -0.977200 when less, else 0.977200",
    );
  });

  test("[SWAY-2] where tax and fee take more than the whole of a price, a lower one keeps more", () => {
    const workshop = workshopOf({ ...bench, settings: { ...bench.settings, paymentFee: percent("90") } });
    const price = swaysIn(workshop, "p", customers)?.find(({ input }) => input.kind === "price");
    expect(price && inShort(price)).toBe("price -0.080000 when more, else 0.080000");
  });

  test("[SWAY-1] inputs that move nothing stay in the fixed order, behind all others", () => {
    const workshop = workshopOf({
      ...bench,
      settings: {},
      offers: [],
      lots: [lot("a", "A", "10", "0"), lot("j", "jar", "10", "0"), lot("f", "filter", "10", "0")],
    });
    expect(swaysIn(workshop, "p", shops)?.map(({ input }) => nameOf(input))).toEqual([
      "price",
      "units per run",
      "labour rate",
      "overhead rate",
      "A",
      "filter",
      "jar",
      "process loss",
    ]);
  });

  test("[SWAY-1] not known where a material has no price", () => {
    const workshop = workshopOf({ ...bench, offers: (bench.offers ?? []).slice(1) });
    expect(swaysIn(workshop, "p", shops)).toBeNull();
  });

  test.each([
    { loss: "90.909", has: true },
    { loss: "90.9091", has: false },
  ])("[SWAY-4] a loss of $loss %: has a sway $has", ({ loss, has }) => {
    const products = (bench.products ?? []).map((each) => ({ ...each, processLoss: percent(loss) }));
    const kinds = swaysIn(workshopOf({ ...bench, products }), "p", shops)?.map(({ input }) => input.kind);
    expect(kinds?.includes("process loss")).toBe(has);
  });

  test("[SWAY-1] a material used as ingredient and as packaging has one price and one sway", () => {
    const products = (bench.products ?? []).map((each) => ({
      ...each,
      packaging: [{ material: "A", amount: grams("100"), spoilage: percent("0") }],
    }));
    const sway = swaysIn(workshopOf({ ...bench, products }), "p", shops)?.find(({ input }) => nameOf(input) === "A");
    // 1.80 as ingredient and 100 g, 1.80 again, as packaging
    expect(sway && inShort(sway)).toBe("A -0.360000 when more, else 0.360000");
    expect(sway?.input).toMatchObject({ usedAs: ["ingredient", "packaging"] });
  });
});

/**
 * The same workshop in figures of which a tenth is whole: ten times the money and the units, the loss cut to tens.
 * Runs and orders are left out: no cost depends on them.
 */
function inTens(workshop: Workshop): Workshop {
  const scaled = (amount: MicroUnits) => quantity<MicroUnits>(amount * 10n);
  const { settings } = workshop;
  return {
    ...workshop,
    runs: [],
    orders: [],
    settings: {
      ...settings,
      labourPerHour: scaled(settings.labourPerHour),
      overheadPerHour: scaled(settings.overheadPerHour),
    },
    offers: workshop.offers.map((each) => ({
      ...each,
      price: scaled(each.price),
      breaks: each.breaks.map((step) => ({ ...step, price: scaled(step.price) })),
    })),
    lots: workshop.lots.map((each) => ({ ...each, value: scaled(each.value) })),
    products: workshop.products.map((each) => ({
      ...each,
      usualRun: quantity<Units>(each.usualRun * 10n),
      processLoss: quantity<PartsPerMillion>(each.processLoss - (each.processLoss % 10n)),
    })),
  };
}

/** So many tenths of a figure, which must be whole. */
function tenths<Q extends bigint>(value: Q, count: bigint): Q {
  if (value % 10n !== 0n) throw new Error(`a tenth of ${value.toString()} is not whole`);
  return quantity<Q>((value / 10n) * count);
}

/** The workshop with one input at so many tenths of itself. The price asked is no part of it. */
function changed(workshop: Workshop, of: Product, input: SwayInput, count: bigint): Workshop {
  const withSettings = (given: Partial<Settings>) => ({ ...workshop, settings: { ...workshop.settings, ...given } });
  const withProduct = (given: Partial<Product>) => ({
    ...workshop,
    products: workshop.products.map((each) => (each.id === of.id ? { ...each, ...given } : each)),
  });
  switch (input.kind) {
    case "price":
      return workshop;
    case "units per run":
      return withProduct({ usualRun: tenths(of.usualRun, count) });
    case "process loss":
      return withProduct({ processLoss: tenths(of.processLoss, count) });
    case "labour rate":
      return withSettings({ labourPerHour: tenths(workshop.settings.labourPerHour, count) });
    case "overhead rate":
      return withSettings({ overheadPerHour: tenths(workshop.settings.overheadPerHour, count) });
    case "material price":
      return {
        ...workshop,
        offers: workshop.offers.map((each) =>
          each.material !== input.material.id
            ? each
            : {
                ...each,
                price: tenths(each.price, count),
                breaks: each.breaks.map((step) => ({ ...step, price: tenths(step.price, count) })),
              },
        ),
        lots: workshop.lots.map((each) =>
          each.material === input.material.id ? { ...each, value: tenths(each.value, count) } : each,
        ),
      };
  }
}

function keptIn(workshop: Workshop, { id }: Product, asked: Asked, basis: Basis, on: typeof today): Fraction {
  const perUnit = plan(workshop, on).costs.find(({ product: each }) => each.id === id)?.byBasis[basis].perUnit;
  if (!perUnit) throw new Error("the cost is no longer known");
  return asked.of === "shops"
    ? keptToShops(asked.price, perUnit).kept
    : keptToCustomers(asked.price, perUnit, workshop.settings).kept;
}

test("[SWAY-1, SWAY-2, SWAY-3, SWAY-4] every sway is what planning the changed workshop afresh keeps more or less", () => {
  let held = 0;
  fc.assert(
    fc.property(workshops("tiny"), fc.constantFrom("shops", "customers"), (file, of) => {
      const { workshop: read, plan: figures } = planned(file);
      const workshop = inTens(read);
      const asked: Asked = { of, price: money("37") };
      for (const { product: each, byBasis } of plan(workshop, figures.today).costs)
        for (const basis of BASES) {
          const sways = swayOfKept(byBasis[basis], each, asked, workshop.settings);
          expect(sways === null).toBe(byBasis[basis].perUnit === null);
          const before = sways && keptIn(workshop, each, asked, basis, figures.today);
          for (const { input, worseWhen, worse, better } of sways ?? []) {
            // Other amounts are drawn from the shelf by other lots, at another price, which a sway holds as it is.
            if (basis === "shelf" && (input.kind === "units per run" || input.kind === "process loss")) continue;
            const after = (count: bigint) => {
              const price = input.kind === "price" ? tenths(asked.price, count) : asked.price;
              const other = changed(workshop, each, input, count);
              return minus(keptIn(other, each, { of, price }, basis, figures.today), before ?? ZERO);
            };
            const [less, more] = worseWhen === "less" ? [worse, better] : [better, worse];
            expect([compare(after(9n), less), compare(after(11n), more)]).toEqual([0, 0]);
            held += 1;
          }
        }
    }),
    { seed: 61, numRuns: 40 },
  );
  expect(held).toBeGreaterThan(500);
});

test("[SWAY-1] worse is never above zero, better never below, and the list falls from the longest to the shortest", () => {
  fc.assert(
    fc.property(workshops("small"), fc.bigInt({ min: 1n, max: 90_000_000n }), (file, price) => {
      const { workshop, plan: figures } = planned(file);
      for (const { product: each, byBasis } of figures.costs)
        for (const of of ["shops", "customers"] as const) {
          const asked = { of, price: quantity<MicroUnits>(price) };
          const sways = swayOfKept(byBasis.replacement, each, asked, workshop.settings) ?? [];
          const lengths = sways.map(({ worse, better }) => {
            expect(worse.over <= 0n && better.over >= 0n).toBe(true);
            const size = minus(ZERO, worse);
            return compare(size, better) > 0 ? size : better;
          });
          expect(lengths.every((length, at) => at === 0 || compare(lengths[at - 1] ?? ZERO, length) >= 0)).toBe(true);
        }
    }),
    { seed: 62, numRuns: 60 },
  );
});
