/** Figures of the textbooks for how much to order and when: suggestions beside what the plan asks. @rule BUY-13, BUY-14 */
import { compare, dividedBy, type Fraction, plus, ratio, roundedDown, roundedUp, times, whole } from "../fraction";
import type { MicroUnits } from "../money";
import { normalQuantile } from "../normal-distribution";
import { type PartsPerMillion, quantity, shareOf, type Stock } from "../quantity";
import { rootDown } from "../whole-root";

export interface OrderCosts {
  /** Of one order, whatever its size: shipping and the maker's time. */
  readonly order: MicroUnits;
  readonly yearlyUse: Stock;
  /** What keeping costs in a year, as a share of the price. */
  readonly keeping: PartsPerMillion;
  /** Micro-units for one µg or piece, each for every unit of an order of at least `from`; ascending, the first from 0. */
  readonly prices: readonly { readonly from: Stock; readonly each: Fraction }[];
}

export interface EconomicOrder {
  readonly quantity: Stock;
  /** Micro-units for one µg or piece at that quantity. */
  readonly each: Fraction;
  /** What keeping one for a year costs, and the root's own figure, before it is brought into its price's range. */
  readonly keepingEach: Fraction;
  readonly root: Stock;
  /** A year's goods, orders and keeping, micro-units, and all together. */
  readonly goods: Fraction;
  readonly ordering: Fraction;
  readonly kept: Fraction;
  readonly yearlyCost: Fraction;
}

/** The order that costs least a year; null where nothing is used, ordered for free or kept for free. @rule BUY-13 */
export function economicOrder(costs: OrderCosts): EconomicOrder | null {
  const { order, yearlyUse, keeping, prices } = costs;
  if (order <= 0n || yearlyUse <= 0n || keeping <= 0n) return null;
  const orders = prices.flatMap(({ from, each }, at): readonly EconomicOrder[] => {
    const keepingEach = times(each, shareOf(keeping));
    const best = nearestRoot(dividedBy(whole(2n * order * yearlyUse), keepingEach));
    const next = prices[at + 1]?.from;
    if (next !== undefined && best >= next) return [];
    const size = [best, from, 1n].reduce((a, b) => (a > b ? a : b));
    const goods = times(whole(yearlyUse), each);
    const ordering = ratio(order * yearlyUse, size);
    const kept = times(keepingEach, ratio(size, 2n));
    const yearlyCost = plus(plus(goods, ordering), kept);
    const root = quantity<Stock>(best);
    return [{ quantity: quantity<Stock>(size), each, keepingEach, root, goods, ordering, kept, yearlyCost }];
  });
  const isCheaper = (a: EconomicOrder, b: EconomicOrder) => compare(a.yearlyCost, b.yearlyCost) < 0;
  return orders.reduce<EconomicOrder | null>((a, b) => (a === null || isCheaper(b, a) ? b : a), null);
}

export interface DemandAndLead {
  /** µg or pieces used in a day, and the standard deviation of that. */
  readonly useOfDay: Fraction;
  readonly useDeviation: Fraction;
  /** Days, and their standard deviation. */
  readonly lead: Fraction;
  readonly leadDeviation: Fraction;
  /** The share of order cycles that should not run short: above 0, below 100 %. */
  readonly service: PartsPerMillion;
}

const MILLIONTHS = 1_000_000;

const square = (value: Fraction): Fraction => times(value, value);

/**
 * By how many standard deviations the service is above the mean, z, rounded up at the sixth decimal. Below one half the
 * textbooks' figure is negative: no stock is kept for safety then, and it is nothing.
 */
export function deviationsFor(service: PartsPerMillion): Fraction {
  const deviations = Math.ceil(normalQuantile(Number(service) / MILLIONTHS) * MILLIONTHS);
  return ratio(BigInt(Math.max(deviations, 0)), BigInt(MILLIONTHS));
}

/** The square of the deviation of what is used in a lead time, in µg² or pieces². */
export const varianceOverLead = ({ useOfDay, useDeviation, lead, leadDeviation }: DemandAndLead): Fraction =>
  plus(times(lead, square(useDeviation)), times(square(useOfDay), square(leadDeviation)));

/** @rule BUY-14 */
export const safetyStockFor = (demand: DemandAndLead): Stock =>
  quantity<Stock>(rootUp(times(varianceOverLead(demand), square(deviationsFor(demand.service)))));

/** What should be left when the next order goes out. @rule BUY-14 */
export const reorderPoint = (demand: DemandAndLead): Stock =>
  quantity<Stock>(roundedUp(times(demand.useOfDay, demand.lead)) + safetyStockFor(demand));

function rootUp(value: Fraction): bigint {
  const root = rootDown(roundedDown(value));
  return compare(whole(root * root), value) < 0 ? root + 1n : root;
}

/** The whole number nearest to the root: half a unit above one is decided by the square. */
function nearestRoot(value: Fraction): bigint {
  const root = rootDown(roundedDown(value));
  return compare(times(whole(4n), value), whole((2n * root + 1n) * (2n * root + 1n))) >= 0 ? root + 1n : root;
}
