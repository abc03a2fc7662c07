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
  /** Goods, orders and keeping, micro-units. */
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
    return [{ quantity: quantity<Stock>(size), each, yearlyCost: plus(plus(goods, ordering), kept) }];
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

/** Below one half the textbooks' figure is negative: no stock is kept for safety then. @rule BUY-14 */
export function safetyStockFor({ useOfDay, useDeviation, lead, leadDeviation, service }: DemandAndLead): Stock {
  const deviations = Math.ceil(normalQuantile(Number(service) / MILLIONTHS) * MILLIONTHS);
  if (deviations <= 0) return quantity<Stock>(0n);
  const square = (value: Fraction) => times(value, value);
  const variance = plus(times(lead, square(useDeviation)), times(square(useOfDay), square(leadDeviation)));
  const z = ratio(BigInt(deviations), BigInt(MILLIONTHS));
  return quantity<Stock>(rootUp(times(variance, square(z))));
}

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
