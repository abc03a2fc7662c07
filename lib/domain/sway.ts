/**
 * How far what is kept of one unit sways when one input is a tenth less or a tenth more, everything else as it is.
 * Prices of materials are held: nothing is bought, drawn or planned again. Exact micro-units.
 * @rule SWAY-1 to SWAY-4
 */
import { compare, dividedBy, type Fraction, minus, ONE, plus, ratio, times, total, whole, ZERO } from "./fraction";
import type { MicroUnits } from "./money";
import type { CostUse, UnitCost } from "./plan-figures";
import { decimalValue, shareOf, WHOLE } from "./quantity";
import type { Material, Product, Settings } from "./workshop";

/** What is asked for one unit: to shops without tax and fee, to customers with tax inside. */
export interface Asked {
  readonly of: "shops" | "customers";
  readonly price: MicroUnits;
}

export type SwayInput =
  | { readonly kind: "price" }
  | { readonly kind: "units per run" }
  | { readonly kind: "labour rate" }
  | { readonly kind: "overhead rate" }
  /** A material has one price, whatever it is used as. */
  | { readonly kind: "material price"; readonly material: Material; readonly usedAs: readonly CostUse["as"][] }
  | { readonly kind: "process loss" };

export interface Sway {
  readonly input: SwayInput;
  /** What of one unit hangs on the input, exact micro-units: the change at both ends is worked out from it. */
  readonly of: Fraction;
  /** Which change of the input keeps less. */
  readonly worseWhen: "less" | "more";
  /** Change of what is kept, not above zero. */
  readonly worse: Fraction;
  /** Change of what is kept, not below zero. */
  readonly better: Fraction;
}

/** Change of what is kept where the input is a tenth less, and where it is a tenth more. */
interface Ends {
  readonly less: Fraction;
  readonly more: Fraction;
}

/**
 * The sway of every input, those that move nothing included, longest first by the larger end; of equals in the order
 * price, units per run, labour rate, overhead rate, materials by id, process loss.
 * @param cost      of one unit of the product, on any basis
 * @param settings  rates, tax and fee
 * @returns null where the cost is not known. Without process loss where a tenth more of it would leave nothing
 * @rule SWAY-1 to SWAY-4
 */
export function swayOfKept(cost: UnitCost, product: Product, asked: Asked, settings: Settings): readonly Sway[] | null {
  if (cost.perUnit === null || cost.ingredients === null) return null;
  const { ingredients } = cost;
  const sways = [
    swayOf({ kind: "price" }, keptOfPrice(asked, settings), ofIncome),
    swayOf({ kind: "units per run" }, sharedByRun(cost, ingredients, product, settings), ofUnits),
    swayOf({ kind: "labour rate" }, cost.labour, ofOutlay),
    swayOf({ kind: "overhead rate" }, cost.overhead, ofOutlay),
    ...cost.lines.map(({ material, uses, cost: outlay }) =>
      swayOf({ kind: "material price", material, usedAs: uses.map(({ as }) => as) }, outlay ?? ZERO, ofOutlay),
    ),
    ...ofLoss(product).map((ends) => swayOf({ kind: "process loss" }, ingredients, ends)),
  ];
  return sways
    .map((sway) => ({ sway, length: longer(sway) }))
    .sort((a, b) => compare(b.length, a.length))
    .map(({ sway }) => sway);
}

const negative = ({ over, under }: Fraction): Fraction => ({ over: -over, under });

function swayOf(input: SwayInput, of: Fraction, ends: (of: Fraction) => Ends): Sway {
  const { less, more } = ends(of);
  return compare(less, more) < 0
    ? { input, of, worseWhen: "less", worse: less, better: more }
    : { input, of, worseWhen: "more", worse: more, better: less };
}

function longer({ worse, better }: Sway): Fraction {
  const size = negative(worse);
  return compare(size, better) > 0 ? size : better;
}

/** A tenth of an amount that is paid out for each unit. @rule SWAY-1 */
function ofOutlay(amount: Fraction): Ends {
  const tenth = times(amount, ratio(1n, 10n));
  return { less: tenth, more: negative(tenth) };
}

/** A tenth of what comes in. @rule SWAY-2 */
function ofIncome(amount: Fraction): Ends {
  const { less: more, more: less } = ofOutlay(amount);
  return { less, more };
}

/** The price less the tax and the fee on it; the fee's fixed part stays whatever the price. @rule SWAY-2 */
const keptOfPrice = ({ of, price }: Asked, { tax, paymentFee }: Settings): Fraction =>
  of === "shops"
    ? whole(price)
    : times(whole(price), minus(dividedBy(ONE, plus(ONE, shareOf(tax))), shareOf(paymentFee)));

/**
 * What one unit carries of a run's own costs, s, becomes s ÷ 0.9 or s ÷ 1.1: the units are not rounded.
 * @rule SWAY-3
 */
const ofUnits = (shared: Fraction): Ends => ({
  less: negative(times(shared, ratio(1n, 9n))),
  more: times(shared, ratio(1n, 11n)),
});

/** What one unit carries of what a run costs whatever its size: the heel, the per-run items, the minutes of the run. */
function sharedByRun(cost: UnitCost, ingredients: Fraction, product: Product, settings: Settings): Fraction {
  const heel = product.heel?.quantity ?? 0n;
  const filled = product.usualRun * (product.fill.quantity + (product.overfill?.quantity ?? 0n));
  const perRun = cost.lines.flatMap(({ uses }) =>
    uses.flatMap((use) => (use.as === "per run" && use.cost !== null ? [use.cost] : [])),
  );
  const hours = dividedBy(decimalValue(product.labourMinutesPerRun), whole(60n * product.usualRun));
  const atRates = times(hours, whole(settings.labourPerHour + settings.overheadPerHour));
  return total([times(ingredients, ratio(heel, filled + heel)), ...perRun, atRates]);
}

/**
 * Ingredients cost i ÷ (1 − loss), so with another loss they change by i × (loss − other) ÷ (1 − other).
 * @returns nothing where a tenth more would lose all there is: then there is no such end to show
 * @rule SWAY-4
 */
function ofLoss({ processLoss }: Product): readonly ((ingredients: Fraction) => Ends)[] {
  const changed = (tenths: bigint): Fraction => ratio(processLoss, 10n * WHOLE - tenths * processLoss);
  if (10n * WHOLE <= 11n * processLoss) return [];
  return [
    (ingredients) => ({ less: times(ingredients, changed(9n)), more: negative(times(ingredients, changed(11n))) }),
  ];
}
