/** Figures as they are written in files and reports: plain decimals without a trailing zero. */
import { type Fraction, roundedHalfEven, whole } from "@/lib/domain/fraction";
import type { Amount, Density, Measure, PartsPerMillion, Stock } from "@/lib/domain/quantity";

/** A whole number of parts as a decimal: 125 hundredths are "1.25", 120 are "1.2". */
export function decimalText(parts: bigint, decimals: number): string {
  const size = (parts < 0n ? -parts : parts).toString().padStart(decimals + 1, "0");
  const rest = size.slice(size.length - decimals).replace(/0+$/, "");
  const text = size.slice(0, size.length - decimals) + (rest === "" ? "" : `.${rest}`);
  return parts < 0n ? `-${text}` : text;
}

/** 25000n parts per million are "2.5". */
export const percentText = (share: PartsPerMillion): string => decimalText(share, 4);

/** g/mL. */
export const densityText = (density: Density): string => decimalText(density, 6);

export const amountText = ({ number, unit }: Amount): string => `${number} ${unit}`;

/** Whole µg in grams, or pieces: what is read again as the same quantity. */
export const stockText = (quantity: Stock, measure: Measure): string => exactStockText(whole(quantity), measure);

/** Exact µg or pieces with up to six decimals of a gram or piece, rounded once, half to even. @rule REPORT-1 */
export const exactStockText = (quantity: Fraction, measure: Measure): string =>
  measure === "mass"
    ? `${decimalText(roundedHalfEven(quantity), 6)} g`
    : `${decimalText(roundedHalfEven({ over: quantity.over * 1_000_000n, under: quantity.under }), 6)} each`;
