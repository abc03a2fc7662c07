/**
 * Net content in metric and, for the United States, in customary units first. What is converted is rounded down, so
 * that no label promises more than is in the jar: three significant digits, at most two decimals (common practice).
 * 21 CFR 701.13 and the Fair Packaging and Labeling Act, from memory; conversions by NIST SP 811. @rule LABEL-4
 */
import { compare, type Fraction, ratio, roundedDown, times, whole } from "@/lib/domain/fraction";
import { type Amount, decimalValue, type Unit, UNITS } from "@/lib/domain/quantity";
import type { LabelMarket } from "./label";

export interface ContentFigure {
  readonly number: string;
  readonly unit: "g" | "kg" | "mL" | "L" | "oz" | "lb" | "fl oz" | "pt" | "qt" | "gal";
}

export interface NetContent {
  readonly metric: ContentFigure;
  /** Null outside the United States. */
  readonly customary: ContentFigure | null;
  /** The same in the larger unit, which stands in brackets from a pound up to four, or a pint up to a gallon. */
  readonly larger: ContentFigure | null;
  /** Whether it is stated as a weight or as a measure of liquid. */
  readonly by: "weight" | "volume";
}

const GRAM = UNITS.g.size;
const OUNCE = UNITS.oz.size;
const MILLILITRE = UNITS.mL.size;
const FLUID_OUNCE = UNITS["floz-us"].size;

/** @param fill  as typed, by weight or by volume: a liquid is sold by measure, a cream by weight */
export function netContent(fill: Amount, market: LabelMarket): NetContent {
  const { kind, size } = UNITS[fill.unit];
  if (kind === "count") throw new Error("a fill is a mass or a volume");
  const inSmallest = times(decimalValue(fill.number), size);
  const by = kind === "mass" ? "weight" : "volume";
  const metric = metricOf(fill, inSmallest, by);
  if (market !== "US") return { metric, customary: null, larger: null, by };
  const ounces = divided(inSmallest, by === "weight" ? OUNCE : FLUID_OUNCE);
  return { metric, ...(by === "weight" ? inOunces(ounces) : inFluidOunces(ounces)), by };
}

const METRIC: ReadonlySet<Unit> = new Set<Unit>(["g", "kg", "mL", "L"]);

/** What was typed in metric stands as it was typed. */
function metricOf(fill: Amount, inSmallest: Fraction, by: NetContent["by"]): ContentFigure {
  if (METRIC.has(fill.unit)) return { number: fill.number, unit: fill.unit as ContentFigure["unit"] };
  const small = divided(inSmallest, by === "weight" ? GRAM : MILLILITRE);
  const [one, thousand] = by === "weight" ? (["g", "kg"] as const) : (["mL", "L"] as const);
  return compare(small, whole(1000n)) < 0 ? figure(small, one) : figure(divided(small, whole(1000n)), thousand);
}

type Customary = Pick<NetContent, "customary" | "larger">;

function inOunces(ounces: Fraction): Customary {
  const pounds = divided(ounces, whole(16n));
  if (compare(ounces, whole(16n)) < 0) return { customary: figure(ounces, "oz"), larger: null };
  if (compare(ounces, whole(64n)) < 0) return { customary: figure(ounces, "oz"), larger: figure(pounds, "lb") };
  return { customary: figure(pounds, "lb"), larger: null };
}

function inFluidOunces(ounces: Fraction): Customary {
  if (compare(ounces, whole(16n)) < 0) return { customary: figure(ounces, "fl oz"), larger: null };
  if (compare(ounces, whole(128n)) >= 0)
    return { customary: figure(divided(ounces, whole(128n)), "gal"), larger: null };
  const isPints = compare(ounces, whole(32n)) < 0;
  const larger = isPints ? figure(divided(ounces, whole(16n)), "pt") : figure(divided(ounces, whole(32n)), "qt");
  return { customary: figure(ounces, "fl oz"), larger };
}

const divided = (a: Fraction, b: Fraction): Fraction => ratio(a.over * b.under, a.under * b.over);

/** Three significant digits, at most two decimals, rounded down. What is too small for two decimals is 0. */
function figure(value: Fraction, unit: ContentFigure["unit"]): ContentFigure {
  const digits = roundedDown(value).toString().length;
  const decimals = value.over < value.under ? 2 : Math.min(2, Math.max(0, 3 - digits));
  const scale = 10n ** BigInt(decimals);
  const scaled = roundedDown(times(value, whole(scale)));
  const step = 10n ** BigInt(Math.max(0, digits - 3));
  const kept = (scaled / step) * step;
  const text = kept.toString().padStart(decimals + 1, "0");
  const point = text.length - decimals;
  const rest = text.slice(point).replace(/0+$/, "");
  return { number: rest === "" ? text.slice(0, point) : `${text.slice(0, point)}.${rest}`, unit };
}
