/** Order quantities, safety stocks and reorder points against the worked examples of textbooks, and normal tables. */
import { describe, expect, test } from "vitest";
import { economicOrder, reorderPoint, safetyStockFor } from "@/lib/domain/buying/reorder-suggestions";
import { type Fraction, ratio, whole } from "@/lib/domain/fraction";
import { normalLoss, normalQuantile, normalShare } from "@/lib/domain/normal-distribution";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { money, percent, stock } from "../helpers/notation";

/** A decimal as a fraction. */
const exact = (text: string): Fraction => ratio(money(text), 1_000_000n);
/** So many units, in millionths of one, as grams are held in µg. */
const units = (text: string): Stock => quantity<Stock>(money(text));
/** Money for one unit, per millionth. */
const each = (text: string): Fraction => ratio(money(text), 1_000_000n);
const number = ({ over, under }: Fraction): number => Number(over) / Number(under);
const inUnits = (quantity: bigint): number => Number(quantity) / 1e6;

interface Order {
  readonly source: string;
  readonly order: string;
  readonly use: string;
  /** Percent a year of the price; 100 where the book gives the cost of keeping one unit. */
  readonly keeping: string;
  readonly prices: readonly (readonly [string, string])[];
  readonly quantity: number;
  /** A year's orders and keeping, and goods where the book counts them. */
  readonly cost: number;
  readonly withGoods: boolean;
}

const ORDERS: readonly Order[] = [
  {
    source: "Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed. (2019), example 3.1; read in a copy",
    order: "8",
    use: "1300",
    keeping: "100",
    prices: [["0", "0.225"]],
    quantity: 304.0467800264368,
    cost: 68.41052550594829,
    withGoods: false,
  },
  {
    source: "Snyder and Shen (2019), problem 3.1; read in a copy",
    order: "2250",
    use: "182500",
    keeping: "100",
    prices: [["0", "275"]],
    quantity: 1728.1098449935514,
    cost: 475230.20737322664,
    withGoods: false,
  },
  {
    source: "Hillier and Lieberman, Introduction to Operations Research, 7th ed. (2001), in a package's manual",
    order: "12000",
    use: "8000",
    keeping: "100",
    prices: [["0", "0.3"]],
    quantity: 25298.221281347036,
    cost: 7589.466384404111,
    withGoods: false,
  },
  {
    source: "Heizer and Render, Operations Management, inventory chapter, examples 3 to 5; from memory",
    order: "10",
    use: "1000",
    keeping: "100",
    prices: [["0", "0.5"]],
    quantity: 200,
    cost: 100,
    withGoods: false,
  },
  {
    source: "Snyder and Shen (2019), example 3.6, all-units discounts; read in a copy",
    order: "8",
    use: "1300",
    keeping: "30",
    prices: [
      ["0", "0.75"],
      ["400", "0.72"],
      ["800", "0.68"],
    ],
    quantity: 800,
    cost: 978.6,
    withGoods: true,
  },
  {
    source: "Snyder and Shen (2019), problem 3.12(a), all-units discounts; read in a copy",
    order: "2250",
    use: "182500",
    keeping: "25",
    prices: [
      ["0", "1490"],
      ["1200", "1220"],
      ["2400", "1100"],
    ],
    quantity: 2400,
    cost: 201251093.75,
    withGoods: true,
  },
  {
    source: "Heizer and Render, Operations Management, inventory chapter, example 9; from memory",
    order: "49",
    use: "5000",
    keeping: "20",
    prices: [
      ["0", "5"],
      ["1000", "4.8"],
      ["2000", "4.75"],
    ],
    quantity: 1000,
    cost: 24725,
    withGoods: true,
  },
];

describe("[BUY-13] economic order quantity", () => {
  test.each(ORDERS)("$source", ({ order, use, keeping, prices, quantity: expected, cost, withGoods }) => {
    const found = economicOrder({
      order: money(order),
      yearlyUse: units(use),
      keeping: percent(keeping),
      prices: prices.map(([from, price]) => ({ from: units(from), each: each(price) })),
    });
    if (found === null) throw new Error("no order was found");
    expect(inUnits(found.quantity)).toBeCloseTo(expected, 6);
    const goods = withGoods ? 0 : number(found.each) * Number(units(use));
    expect((number(found.yearlyCost) - goods) / 1e6).toBeCloseTo(cost, 3);
  });

  test("there is none where nothing is used, or ordering or keeping is free", () => {
    const costs = { order: money("8"), yearlyUse: units("1300"), keeping: percent("30") };
    const prices = [{ from: units("0"), each: each("0.75") }];
    expect(economicOrder({ ...costs, prices, order: money("0") })).toBeNull();
    expect(economicOrder({ ...costs, prices, yearlyUse: units("0") })).toBeNull();
    expect(economicOrder({ ...costs, prices, keeping: percent("0") })).toBeNull();
  });
});

describe("[BUY-14] safety stock and reorder point", () => {
  const NO_DEVIATION = whole(0n);
  // The use of the lead time stands for a day's, and the lead is one.
  test("Heizer and Render: 350 over the lead time, deviation 10, 95 % service: 16.5 and 366.5; from memory", () => {
    const demand = {
      useOfDay: whole(units("350")),
      useDeviation: whole(units("10")),
      lead: whole(1n),
      leadDeviation: NO_DEVIATION,
      service: percent("95"),
    };
    expect(inUnits(safetyStockFor(demand))).toBeCloseTo(16.4485, 3);
    expect(inUnits(reorderPoint(demand))).toBeCloseTo(366.4485, 3);
  });

  test("Chopra and Meindl: 2500 a week, deviation 500, lead 2 weeks, 90 % service: 906; from memory", () => {
    const demand = {
      useOfDay: whole(units("2500")),
      useDeviation: whole(units("500")),
      lead: whole(2n),
      leadDeviation: NO_DEVIATION,
      service: percent("90"),
    };
    expect(inUnits(safetyStockFor(demand))).toBeCloseTo(906.1938024368235, 2);
  });

  test("Snyder and Shen (2019), example 5.5: 1300 a year, deviation 150, lead a month; 190.337; read in a copy", () => {
    // The book's service is what running short costs beside keeping: 7.5 ÷ (7.5 + 0.225).
    const demand = {
      useOfDay: whole(units("1300")),
      useDeviation: whole(units("150")),
      lead: ratio(1n, 12n),
      leadDeviation: NO_DEVIATION,
      service: percent("97.0874"),
    };
    expect(inUnits(reorderPoint(demand))).toBeCloseTo(190.337, 2);
  });

  test("a lead that varies counts with the use of a day", () => {
    const demand = {
      useOfDay: whole(units("3")),
      useDeviation: whole(units("4")),
      lead: whole(4n),
      leadDeviation: exact("2"),
      service: percent("97.5"),
    };
    // √(4 × 4² + 3² × 2²) = 10
    expect(inUnits(safetyStockFor(demand))).toBeCloseTo(19.59964, 5);
  });

  test("below one half no stock is kept for safety", () => {
    const demand = {
      useOfDay: whole(stock(5n)),
      useDeviation: whole(stock(2n)),
      lead: whole(3n),
      leadDeviation: NO_DEVIATION,
      service: percent("40"),
    };
    expect(safetyStockFor(demand)).toBe(0n);
    expect(reorderPoint(demand)).toBe(15n);
  });
});

describe("[BUY-14] the normal distribution", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, from memory; worked again to ten digits.
  test.each([
    [0.5, 0],
    [0.8, 0.8416212336],
    [0.9, 1.2815515655],
    [0.975, 1.9599639845],
    [0.98, 2.0537489106],
    [0.995, 2.5758293035],
    [0.999, 3.0902323062],
  ])("a share of %d lies below %d deviations", (share, z) => {
    expect(normalQuantile(share)).toBeCloseTo(z, 8);
    expect(normalShare(z)).toBeCloseTo(share, 9);
    expect(normalShare(-z)).toBeCloseTo(1 - share, 9);
  });

  test.each([
    [0.3, 0.26676124211721],
    [3.1, 0.0002672490952231408],
  ])("the unit normal loss at %d is %d (read in a library's tests)", (z, loss) => {
    expect(normalLoss(z)).toBeCloseTo(loss, 10);
    // What is lacking on one side and what is over on the other differ by the distance.
    expect(normalLoss(-z)).toBeCloseTo(loss + z, 10);
  });
});
