/** Two formulas side by side, in percent and in what they make one unit of a product cost. @rule BOOK-5 */
import type { Day } from "./calendar";
import { byCodePoint } from "./code-point-order";
import { costOf } from "./costing";
import { type Composition, compositions } from "./formula";
import { type Fraction, minus } from "./fraction";
import { byId, grouped } from "./index-by-id";
import { usesOf } from "./needs";
import type { Basis, UnitCost } from "./plan-figures";
import { type PriceBook, priceBook } from "./prices";
import { type Measured, type Micrograms, quantity, readAmount, UNITS } from "./quantity";
import type { Formula, Material, Product, Workshop } from "./workshop";

export type FormulaComparison =
  | {
      readonly kind: "compared";
      /** Every material of either formula, premixes opened, by material id. */
      readonly rows: readonly ComparedMaterial[];
      readonly first: UnitCost;
      readonly second: UnitCost;
      /** What the second costs more for one unit; below zero where it costs less, null where one is not known. */
      readonly dearerBy: Fraction | null;
    }
  /** The product is filled by volume, and this formula has no density. @rule QTY-5 */
  | { readonly kind: "no density"; readonly formula: Formula }
  /** The product's volumes cannot be kept at this formula's density. @rule QTY-6 */
  | { readonly kind: "out of range"; readonly formula: Formula };

export interface ComparedMaterial {
  readonly material: Material;
  /** Null where the formula does without it. */
  readonly first: ComparedPart | null;
  readonly second: ComparedPart | null;
}

export interface ComparedPart {
  /** Share of the finished mass. Exact. */
  readonly fraction: Fraction;
  /** For one unit, with all that is lost. Exact µg, and micro-units or null without a price. */
  readonly quantity: Fraction;
  readonly cost: Fraction | null;
}

/**
 * Two formulas that are not in the workshop as they are here, an earlier version and the one that stands, say, compared
 * as if they were.
 * @rule BOOK-5
 */
export function compareBesides(
  workshop: Workshop,
  today: Day,
  [first, second]: readonly [Formula, Formula],
  asked: Pick<ToCompare, "product" | "basis">,
): FormulaComparison {
  // Ids that nothing refers to, and no formula has: ids of records hold no control characters. What holds the formula
  // goes on holding the one that stands.
  const [one, other] = [
    { ...first, id: "\u0001first" },
    { ...second, id: "\u0001second" },
  ];
  const both = { ...workshop, formulas: [...workshop.formulas, one, other] };
  return compareFormulas(both, today, { ...asked, first: one.id, second: other.id });
}

/** Which formulas of the workshop are compared, in which product. */
export interface ToCompare {
  readonly product: Product;
  readonly first: string;
  readonly second: string;
  readonly basis: Basis;
}

/**
 * Prices the product as it would be with each of two formulas of the workshop.
 * What is filled by volume is read again at each formula's own density.
 * @rule BOOK-5
 */
export function compareFormulas(workshop: Workshop, today: Day, asked: ToCompare): FormulaComparison {
  const formulaOf = byId("formula", workshop.formulas);
  const compositionOf = compositions(workshop.formulas);
  const [first, second] = [asked.first, asked.second].map((id) =>
    priced(formulaOf(id), compositionOf(id), workshop, today, asked),
  ) as [PricedResult, PricedResult];
  if (first.kind !== "priced") return first;
  if (second.kind !== "priced") return second;
  const ids = [...new Set([...first.composition.keys(), ...second.composition.keys()])].sort(byCodePoint);
  const materialOf = byId("material", workshop.materials);
  const { perUnit: one } = first.cost;
  const { perUnit: other } = second.cost;
  return {
    kind: "compared",
    rows: ids.map((id) => ({ material: materialOf(id), first: partOf(first, id), second: partOf(second, id) })),
    first: first.cost,
    second: second.cost,
    dearerBy: one && other && minus(other, one),
  };
}

interface Priced {
  readonly kind: "priced";
  readonly composition: Composition;
  readonly cost: UnitCost;
}

type PricedResult = Priced | Exclude<FormulaComparison, { readonly kind: "compared" }>;

function priced(
  formula: Formula,
  composition: Composition,
  workshop: Workshop,
  today: Day,
  { product, basis }: ToCompare,
): PricedResult {
  const filled = filledWith(product, formula);
  if (filled.kind !== "filled") return filled;
  const offersByMaterial = grouped(workshop.offers, ({ material }) => material);
  const lotsByMaterial = grouped(workshop.lots, ({ material }) => material);
  const bookOf = (id: string): PriceBook =>
    priceBook(offersByMaterial.get(id) ?? [], lotsByMaterial.get(id) ?? [], today);
  const uses = usesOf(filled.product, composition, byId("material", workshop.materials));
  const { byBasis } = costOf(filled.product, uses, bookOf, workshop.settings);
  return { kind: "priced", composition, cost: byBasis[basis] };
}

function partOf({ composition, cost }: Priced, id: string): ComparedPart | null {
  const fraction = composition.get(id);
  const use = cost.lines.find(({ material }) => material.id === id)?.uses.find(({ as }) => as === "ingredient");
  return fraction && use ? { fraction, quantity: use.quantity, cost: use.cost } : null;
}

type Filled =
  | { readonly kind: "filled"; readonly product: Product }
  | { readonly kind: "no density" | "out of range"; readonly formula: Formula };

/** The product filled with another formula: its volumes read again at that formula's density. @rule QTY-1 */
function filledWith(product: Product, formula: Formula): Filled {
  const [fill, overfill, heel] = [product.fill, product.overfill, product.heel].map((typed) =>
    readAgain(typed, formula),
  );
  for (const reading of [fill, overfill, heel])
    if (reading === "no density" || reading === "out of range") return { kind: reading, formula };
  // An amount that was there is there again, so only the fill, which always is, needs to be more than nothing.
  if (!isMeasured(fill) || fill.quantity === 0n) return { kind: "out of range", formula };
  return {
    kind: "filled",
    product: {
      ...product,
      formula: formula.id,
      fill,
      overfill: isMeasured(overfill) ? overfill : null,
      heel: isMeasured(heel) ? heel : null,
    },
  };
}
type ReadAgain = Measured<Micrograms> | "no density" | "out of range" | null;

const isMeasured = (reading: ReadAgain | undefined): reading is Measured<Micrograms> =>
  typeof reading === "object" && reading !== null;

function readAgain(measured: Measured<Micrograms> | null, { density }: Formula): ReadAgain {
  if (measured === null || UNITS[measured.typed.unit].kind !== "volume") return measured;
  const reading = readAmount(measured.typed, "mass", density);
  switch (reading.kind) {
    case "read":
      return { ...measured, quantity: quantity<Micrograms>(reading.quantity) };
    case "no density":
    case "out of range":
      return reading.kind;
    case "wrong measure":
    case "not whole":
      throw new Error("a volume that was read before cannot be read as a mass");
  }
}
