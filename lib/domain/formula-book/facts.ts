/** What the checks need to know of a material and of a formula, beyond what the plan is made of. @rule CHECK-1 */
import type { Day } from "@/lib/domain/calendar";
import type { DecimalText, PartsPerMillion } from "@/lib/domain/quantity";

/** Where a product is to be sold. Its legal maxima are looked up there, and nowhere if nobody chose. */
export const MARKETS = ["EU", "GB", "US", "CA", "AU"] as const;
export type Market = (typeof MARKETS)[number];

export const WAYS_OF_USE = ["leave-on", "rinse-off"] as const;
export type WayOfUse = (typeof WAYS_OF_USE)[number];

/** What a material does that a check asks for. Null in a record where nobody has said. */
export const ROLES = ["water", "preservative", "neither"] as const;
export type Role = (typeof ROLES)[number];

export const SHEET_KINDS = ["safety", "analysis"] as const;

export interface MaterialFacts {
  readonly role: Role | null;
  /** The pH in which it works or keeps; null where that side is open. */
  readonly phFrom: DecimalText | null;
  readonly phTo: DecimalText | null;
  /** By INCI names, adding up to the whole; empty where nobody has said. @rule CHECK-9 */
  readonly composition: readonly Component[];
  /** The legal maxima that the maker has looked up. */
  readonly limits: readonly LegalLimit[];
  readonly flammable: boolean;
  readonly allergen: boolean;
  readonly eyeHazard: boolean;
  readonly sheets: readonly Sheet[];
}

export interface Component {
  readonly inci: string;
  readonly share: PartsPerMillion;
}

/** The most of a substance that a market allows, as its maker copied it. */
export interface LegalLimit {
  readonly market: Market;
  /** Null where it holds for whatever use. */
  readonly use: WayOfUse | null;
  /** What is limited. Materials with the same substance are counted together. */
  readonly substance: string;
  readonly maximum: PartsPerMillion;
  /** Grams of the substance in a gram of the material: the share in a blend, a salt as its acid. */
  readonly countsAs: DecimalText;
  readonly source: string;
  /** The day on which it was copied. */
  readonly copied: Day;
}

/** A sheet that the supplier sent, and when it is to be looked at again. */
export interface Sheet {
  readonly kind: (typeof SHEET_KINDS)[number];
  readonly reference: string;
  readonly reviewBy: Day | null;
}

export interface FormulaFacts {
  readonly market: Market | null;
  readonly use: WayOfUse | null;
  /** The pH that is aimed at. */
  readonly phFrom: DecimalText | null;
  readonly phTo: DecimalText | null;
  /** How long the product keeps from the day on which it is made. */
  readonly keepsDays: number | null;
  /** In the order in which they are made. A line names its phase. */
  readonly phases: readonly Phase[];
  readonly steps: readonly Step[];
  /** What is looked at before a batch is released, beside the pH. @rule BENCH-11 */
  readonly checks: readonly FormulaCheck[];
}

/** Something to be measured or seen of a batch: a figure between limits, or what it should look like. */
export interface FormulaCheck {
  /** As Viscosity, Appearance. Unlike every other of the formula. */
  readonly what: string;
  /** The limits, both of them allowed; null where that side is open. */
  readonly from: DecimalText | null;
  readonly to: DecimalText | null;
  /** Of a figure, as mPa·s. */
  readonly unit: string | null;
  /** What is right where it is seen, as smooth and white. */
  readonly looks: string | null;
}

export interface Phase {
  readonly name: string;
  /** °C at which its lines go in. */
  readonly temperature: DecimalText | null;
}

export interface Step {
  /** Null for a step of the whole. */
  readonly phase: string | null;
  readonly text: string;
  /** °C that is aimed at. */
  readonly temperature: DecimalText | null;
  readonly minutes: DecimalText | null;
  readonly caution: string | null;
}

/** Of a material of which nobody has said any of it. */
export const NO_MATERIAL_FACTS: MaterialFacts = {
  role: null,
  phFrom: null,
  phTo: null,
  composition: [],
  limits: [],
  flammable: false,
  allergen: false,
  eyeHazard: false,
  sheets: [],
};

/** Of a formula that is lines alone. */
export const NO_FORMULA_FACTS: FormulaFacts = {
  market: null,
  use: null,
  phFrom: null,
  phTo: null,
  keepsDays: null,
  phases: [],
  steps: [],
  checks: [],
};
