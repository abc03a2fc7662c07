/**
 * Published instances of neighbouring problems, written as baskets: ordering in a period or opening a warehouse is
 * shipping, what is wanted in a period or by a customer is a material. A basket's price is above zero, so each unit
 * carries a coin of its own, which is taken off the total again.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { money } from "../helpers/notation";
import { problemOfInstance } from "../helpers/random-baskets";
import type { Instance } from "../second/cheapest-basket";

const EFFORT = 50_000_000;

function leastCost(instance: Instance): bigint {
  const answer = leastBasket(problemOfInstance(instance), { effort: EFFORT });
  if (answer.kind !== "basket" || answer.gap !== null) throw new Error("no proven basket");
  return answer.basket.total;
}

const supplier = (id: string, shipping: bigint) => ({ id, shipping, freeFrom: null, minimum: null });
const offer = (material: string, from: string, price: bigint) => ({
  id: `${material} from ${from}`,
  material,
  supplier: from,
  pack: 1n,
  price,
  breaks: [],
  minPacks: 1n,
  maxPacks: null,
});

interface LotSizing {
  readonly source: string;
  readonly demand: readonly number[];
  /** Of an order, for each period or for all. */
  readonly setup: readonly number[] | number;
  /** Of keeping one unit for one period. */
  readonly holding: string;
  readonly prices?: readonly number[];
  readonly cost: string;
}

/** Dynamic lot sizing: what period `t` wants may be ordered in any period up to it, and is kept until then. */
const LOT_SIZING: readonly LotSizing[] = [
  {
    source: "Wagner and Whitin, Management Science 5 (1958), twelve periods; read in copies",
    demand: [69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56],
    setup: [85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114],
    holding: "1",
    cost: "864",
  },
  {
    source: "Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed. (2019), problem 3.27; read in a copy",
    demand: [150, 100, 80, 200],
    setup: 120,
    holding: "0.8",
    cost: "424",
  },
  {
    source: "Snyder and Shen (2019), problem 3.29; read in a copy",
    demand: [730, 580, 445, 650, 880],
    setup: 100,
    holding: "0.1",
    cost: "423",
  },
  {
    source: "Hillier and Lieberman, Introduction to Operations Research, 7th ed. (2001), p. 952; read in a copy",
    demand: [3, 2, 3, 2],
    setup: 2,
    holding: "0.2",
    cost: "4.8",
  },
  {
    source: "a purchase price that changes by the period; read in a library's tests, which name no publication",
    demand: [400, 500, 500, 1100, 900],
    setup: 100,
    holding: "0.1",
    prices: [3, 1, 4, 6, 6],
    cost: "4940",
  },
  {
    source: "Silver, Pyke and Peterson, Inventory Management, 3rd ed. (1998), twelve months; costs from memory",
    demand: [10, 62, 12, 130, 154, 129, 88, 52, 124, 160, 238, 41],
    setup: 54,
    holding: "0.4",
    cost: "501.2",
  },
  {
    source: "Nahmias, Production and Operations Analysis, the machine shop; worked steps read in a copy",
    demand: [18, 30, 42, 5, 20],
    setup: 80,
    holding: "2",
    cost: "310",
  },
  {
    source: "Tersine, Principles of Inventory, the example of Wagner and Whitin's method; from memory",
    demand: [75, 0, 33, 28, 0, 10],
    setup: 100,
    holding: "1",
    cost: "258",
  },
];

describe("[BUY-5] lot sizing", () => {
  test.each(LOT_SIZING)("$source", ({ demand, setup, holding, prices, cost }) => {
    const units = demand.map((count) => BigInt(count));
    const coin = money("1");
    const wanted = [...units.entries()].filter(([, count]) => count > 0n);
    const instance: Instance = {
      materials: wanted.map(([period]) => ({ id: `d${String(period)}`, need: 1n })),
      suppliers: units.map((_, period) =>
        supplier(`p${String(period)}`, money(String(typeof setup === "number" ? setup : setup[period]))),
      ),
      offers: wanted.flatMap(([period, count]) =>
        units.slice(0, period + 1).map((_, from) => {
          const each = money(String(prices?.[from] ?? 0)) + money(holding) * BigInt(period - from) + coin;
          return offer(`d${String(period)}`, `p${String(from)}`, count * each);
        }),
      ),
    };
    const coins = units.reduce((sum, count) => sum + count * coin, 0n);
    expect(leastCost(instance) - coins).toBe(money(cost));
  });
});

// The figures of the file were read in a copy, and its optimum was found again by trying all 65,535 sets of warehouses.
test("[BUY-5] opening warehouses: OR-Library, instance cap71, uncapacitated; 932615.750 (Beasley, J. Opl Res. Soc. 41 (1990))", () => {
  const file = new URL("./facility-location-cap71.json", import.meta.url);
  const { openingCosts, servingCosts } = JSON.parse(readFileSync(file, "utf8")) as {
    readonly openingCosts: readonly string[];
    readonly servingCosts: readonly (readonly string[])[];
  };
  const instance: Instance = {
    materials: servingCosts.map((_, at) => ({ id: `c${String(at)}`, need: 1n })),
    suppliers: openingCosts.map((cost, at) => supplier(`w${String(at)}`, money(cost))),
    offers: servingCosts.flatMap((costs, at) =>
      costs.map((cost, from) => offer(`c${String(at)}`, `w${String(from)}`, money(cost) + 1n)),
    ),
  };
  expect(leastCost(instance) - BigInt(servingCosts.length)).toBe(money("932615.75"));
});

test("[BUY-5] covering: where taking the best bargain first costs most (Chvátal, Math. Oper. Res. 4 (1979), from memory)", () => {
  // One supplier has all eight; of the others each has one, cheap enough to tempt whoever buys one after the other.
  const count = 8;
  const instance: Instance = {
    materials: Array.from({ length: count }, (_, at) => ({ id: `m${String(at)}`, need: 1n })),
    suppliers: [
      supplier("all", 1_100_000n),
      ...Array.from({ length: count }, (_, at) => supplier(`only ${String(at)}`, 1_000_000n / BigInt(at + 1))),
    ],
    offers: Array.from({ length: count }, (_, at) => [
      offer(`m${String(at)}`, "all", 1n),
      offer(`m${String(at)}`, `only ${String(at)}`, 1n),
    ]).flat(),
  };
  expect(leastCost(instance)).toBe(1_100_000n + BigInt(count));
});
