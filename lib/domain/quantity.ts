/**
 * Quantities: whole numbers that carry their unit in their type, and the units that a maker buys and weighs in.
 * @rule QTY-1 to QTY-7
 */
import { type Fraction, ratio, roundedHalfEven, times } from "./fraction";

declare const unitOf: unique symbol;

/** A whole number of one unit. Two units do not mix, and neither mixes with a bare bigint. */
export type Quantity<U extends string> = bigint & { readonly [unitOf]: U };

/** Mass in millionths of a gram: 1 g is 1_000_000n. */
export type Micrograms = Quantity<"microgram">;
/** Whole pieces of something counted. */
export type Pieces = Quantity<"piece">;
/** What the shelf holds of one material, in that material's own measure. */
export type Stock = Micrograms | Pieces;
/** Share by weight in millionths: 100 % is 1_000_000n. */
export type PartsPerMillion = Quantity<"part per million">;
/** Density at 20 °C in micrograms per millilitre: 1 g/mL is 1_000_000n. */
export type Density = Quantity<"microgram per millilitre">;
/** Filled units of a product: jars, tins, bottles. */
export type Units = Quantity<"unit">;
/** Packs of one offer. */
export type Packs = Quantity<"pack">;

export type Measure = "mass" | "count";

/** The largest figure that is stored or printed: every reader of JSON holds it exactly. @rule QTY-6 */
export const LARGEST_FIGURE = 2n ** 53n - 1n;

export const WHOLE = 1_000_000n as PartsPerMillion;

/** Names the unit of a whole number that was worked out. The one place where a bare bigint gains a unit. */
export const quantity = <Q extends bigint>(value: bigint): Q => value as Q;

export const sum = <Q extends bigint>(a: Q, b: Q): Q => quantity<Q>((a as bigint) + (b as bigint));
export const difference = <Q extends bigint>(a: Q, b: Q): Q => quantity<Q>((a as bigint) - (b as bigint));
export const smaller = <Q extends bigint>(a: Q, b: Q): Q => (a < b ? a : b);
export const larger = <Q extends bigint>(a: Q, b: Q): Q => (a > b ? a : b);

/** A share as an exact fraction of the whole. */
export const shareOf = (share: PartsPerMillion): Fraction => ({ over: share, under: WHOLE });

/** 1 − share, as an exact fraction. */
export const restOf = (share: PartsPerMillion): Fraction => ({ over: WHOLE - share, under: WHOLE });

/**
 * The units a quantity may be typed in, with their exact size: micrograms for a mass, nanolitres for a volume.
 * Sources: NIST SP 811 (2008) Appendix B.8; Weights and Measures Act 1985 (UK), Schedule 1. @rule QTY-2
 */
export const UNITS = {
  mg: { kind: "mass", size: { over: 1_000n, under: 1n } },
  g: { kind: "mass", size: { over: 1_000_000n, under: 1n } },
  kg: { kind: "mass", size: { over: 1_000_000_000n, under: 1n } },
  oz: { kind: "mass", size: { over: 28_349_523_125n, under: 1_000n } },
  lb: { kind: "mass", size: { over: 453_592_370n, under: 1n } },
  mL: { kind: "volume", size: { over: 1_000_000n, under: 1n } },
  L: { kind: "volume", size: { over: 1_000_000_000n, under: 1n } },
  "floz-us": { kind: "volume", size: { over: 295_735_295_625n, under: 10_000n } },
  "gal-us": { kind: "volume", size: { over: 3_785_411_784n, under: 1n } },
  "floz-uk": { kind: "volume", size: { over: 284_130_625n, under: 10n } },
  "gal-uk": { kind: "volume", size: { over: 4_546_090_000n, under: 1n } },
  each: { kind: "count", size: { over: 1n, under: 1n } },
} as const satisfies Record<string, { kind: "mass" | "volume" | "count"; size: Fraction }>;

export type Unit = keyof typeof UNITS;

/** A plain decimal as typed: ASCII digits, perhaps a point and more digits. Checked at the edge. @rule QTY-3 */
export type DecimalText = string & { readonly [unitOf]: "plain decimal" };

/** An amount as typed, kept beside what it comes to. */
export interface Amount {
  readonly number: DecimalText;
  readonly unit: Unit;
}

/** An amount as typed with the whole µg or pieces it comes to at the density it was read with. */
export interface Measured<Q extends Stock> {
  readonly typed: Amount;
  readonly quantity: Q;
}

/** The exact value of a plain decimal. */
export function decimalValue(text: DecimalText): Fraction {
  const point = text.indexOf(".");
  if (point < 0) return { over: BigInt(text), under: 1n };
  const decimals = text.slice(point + 1);
  return { over: BigInt(text.slice(0, point) + decimals), under: 10n ** BigInt(decimals.length) };
}

export type Reading =
  | { readonly kind: "read"; readonly quantity: Stock }
  | { readonly kind: "no density" }
  | { readonly kind: "wrong measure" }
  | { readonly kind: "not whole" }
  | { readonly kind: "out of range" };

/**
 * What a typed amount comes to in whole µg or pieces: exact arithmetic, rounded once, half to even.
 * @param density  of the material, or of the formula for a fill, overfill or heel; null where none is known
 * @returns `read`, or why it cannot be read: a volume without a density, pieces of something weighed (or the
 *          other way round), part of a piece, more than 2^53 − 1
 * @rule QTY-1, QTY-4, QTY-5, QTY-6
 */
export function readAmount(typed: Amount, measure: Measure, density: Density | null): Reading {
  const unit = UNITS[typed.unit];
  if ((unit.kind === "count") !== (measure === "count")) return { kind: "wrong measure" };
  const inUnit = times(decimalValue(typed.number), unit.size);
  if (unit.kind === "count") {
    return inUnit.over % inUnit.under === 0n ? inRange(inUnit.over / inUnit.under) : { kind: "not whole" };
  }
  if (unit.kind === "mass") return inRange(roundedHalfEven(inUnit));
  if (density === null) return { kind: "no density" };
  // nanolitres × µg per millilitre: a millilitre is a million nanolitres
  return inRange(roundedHalfEven(times(inUnit, ratio(density, 1_000_000n))));
}

const inRange = (value: bigint): Reading =>
  value > LARGEST_FIGURE ? { kind: "out of range" } : { kind: "read", quantity: quantity<Stock>(value) };
