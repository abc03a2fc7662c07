/** What a plan says: the shapes that `plan` gives and that pages, the report and tests read. */
import type { Day } from "./calendar";
import type { Fraction } from "./fraction";
import type { MicroUnits } from "./money";
import type { Packs, Stock, Units } from "./quantity";
import type { Formula, Lot, Material, Offer, Product, Run } from "./workshop";

export interface Plan {
  readonly today: Day;
  /** today + horizonDays, the last day that is looked at in `materials`. */
  readonly lastDay: Day;
  /** In the order of the workshop's products. */
  readonly costs: readonly ProductCost[];
  /** In the order of the workshop's runs. */
  readonly runs: readonly RunOutlook[];
  /** In the order of the workshop's materials. */
  readonly materials: readonly MaterialOutlook[];
}

export const BASES = ["replacement", "shelf", "average"] as const;
export type Basis = (typeof BASES)[number];

export interface ProductCost {
  readonly product: Product;
  /** What a usual run makes in the vessel, µg: what is filled, what stays behind and what is lost. Exact. */
  readonly bulk: Fraction;
  readonly byBasis: Readonly<Record<Basis, UnitCost>>;
}

/** The cost of one unit. Money is exact micro-units; null where a material that it needs has no price. */
export interface UnitCost {
  readonly basis: Basis;
  readonly perUnit: Fraction | null;
  readonly ingredients: Fraction | null;
  readonly packaging: Fraction | null;
  readonly labour: Fraction;
  readonly overhead: Fraction;
  /** Minutes at the bench for one unit: its share of the run's and its own. */
  readonly minutes: Fraction;
  /** Each material that has no price, by id. */
  readonly unpriced: readonly Material[];
  /** One line a material, by material id. */
  readonly lines: readonly CostLine[];
}

export interface CostLine {
  readonly material: Material;
  /** For one unit, all uses together, exact µg or pieces. */
  readonly quantity: Fraction;
  readonly cost: Fraction | null;
  readonly uses: readonly CostUse[];
  readonly price: Price | null;
}

/** One way in which a product uses a material. Quantities for one unit, exact µg or pieces. */
export interface CostUse {
  readonly as: "ingredient" | "packaging" | "per run";
  readonly quantity: Fraction;
  readonly cost: Fraction | null;
}

/** The price of a material: exact micro-units for one µg or piece, and where it came from. */
export interface Price {
  readonly each: Fraction;
  readonly from: PriceSource;
}

export type PriceSource =
  | { readonly kind: "offer"; readonly offer: Offer; readonly packs: Packs; readonly packPrice: MicroUnits }
  | { readonly kind: "average"; readonly value: MicroUnits; readonly quantity: Stock }
  | {
      readonly kind: "shelf";
      readonly draws: readonly { readonly lot: Lot; readonly quantity: Fraction; readonly value: Fraction }[];
      /** What the shelf lacks, at replacement. */
      readonly topUp: { readonly quantity: Fraction; readonly price: Price } | null;
    };

/** Can it be made, and how many at most: section by section of the shelf as it will be at the run's turn. */
export interface RunOutlook {
  readonly run: Run;
  readonly product: Product;
  /** The day on which it draws: its date, or today where that has passed. */
  readonly day: Day;
  readonly makeable: boolean;
  readonly mostUnits: Units;
  readonly limiting: Material;
  /** Each material whose least is not there, by id. */
  readonly short: readonly RunShortage[];
  /** What the run asks of each material, by id. */
  readonly draws: readonly RunDraw[];
}

export interface RunShortage {
  readonly material: Material;
  readonly by: Stock;
}

export interface RunDraw {
  readonly material: Material;
  readonly need: Stock;
  readonly least: Stock;
  /** Usable at the run's turn. */
  readonly there: Stock;
  /** What it takes: nothing where the run cannot be made. */
  readonly drawn: Stock;
  /** The part of the need that is drawn instead of a premix made ahead; null for none. */
  readonly insteadOf: InsteadOf | null;
}

/** So much of a material instead of as much of the premix that it was made of. @rule AHEAD-3 */
export interface InsteadOf {
  readonly premix: Formula;
  readonly quantity: Stock;
}

/** What becomes of a material if every run goes ahead. */
export interface MaterialOutlook {
  readonly material: Material;
  /** Usable at the start of today, before arrivals. */
  readonly onHand: Stock;
  readonly shortOn: Day | null;
  readonly belowSafetyOn: Day | null;
  /** May be larger than any figure that is stored. */
  readonly shortBy: Stock;
  readonly toBuy: Stock;
  /** The offer that the order day and the replacement price go by, or null where there is none. */
  readonly pricedOffer: Offer | null;
  /** The offers that a purchase may be made from. */
  readonly offersConsidered: readonly Offer[];
  readonly firstArrival: Day;
  /** belowSafetyOn less the safety days. */
  readonly neededBy: Day | null;
  readonly orderBy: Day | null;
  readonly daysLate: number | null;
  /** Lots written off within the horizon with something left, by lot id. */
  readonly expiring: readonly Expiry[];
  /** The balance at the end of today and of each later day, up to the last, on which it changes. */
  readonly balances: readonly Balance[];
  /** Every change of the shelf up to the last day, in the order in which it happens. */
  readonly events: readonly ShelfEvent[];
  /** Every lot of the material, here or on order within the horizon, in draw order. */
  readonly ladder: readonly LadderLot[];
}

/** What stands at the end of a day, until the next day on which something happens. */
export interface Balance {
  readonly day: Day;
  /** Usable on the shelf less what is owed. Below zero while something is owed. */
  readonly balance: bigint;
}

export interface Expiry {
  readonly lot: string;
  /** The day after its expiry. */
  readonly on: Day;
  readonly quantity: Stock;
}

/**
 * One change. `shelf` and `owed` are what stands after it. Both are above zero only between an arrival and the
 * settling that follows it. What goes out of date on a day goes at once, so that each such event shows the shelf
 * without any of it.
 */
export type ShelfEvent = {
  readonly day: Day;
  readonly shelf: Stock;
  readonly owed: Stock;
} & (
  | { readonly kind: "written off"; readonly lot: string; readonly quantity: Stock }
  | { readonly kind: "arrived"; readonly lot: string; readonly quantity: Stock }
  /** What was owed to earlier runs, taken from what has just come in. */
  | { readonly kind: "settled"; readonly quantity: Stock }
  | {
      readonly kind: "drawn";
      readonly run: Run;
      readonly need: Stock;
      /** What the shelf could not give. */ readonly lacking: Stock;
    }
);

export interface LadderLot {
  readonly lot: string;
  readonly received: Day;
  readonly expires: Day | null;
  /** Null for a lot that is still on order. */
  readonly value: MicroUnits | null;
  readonly quantity: Stock;
  /** Drawn within the horizon, by runs or to settle what was owed. */
  readonly used: Stock;
  /** Written off within the horizon. */
  readonly lost: Stock;
  readonly order: string | null;
}
