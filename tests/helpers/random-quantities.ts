/** Quantities of invented workshops, in every unit that a file may use. */
import { chance, type Dice, pick } from "./random-dice";
import { quantity } from "../second/exact";
import type { FileMaterial } from "../second/file-shape";

const GRAMS_BY_UNIT = { mg: 0.001, g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };
const MILLILITRES_BY_UNIT = {
  mL: 1,
  L: 1000,
  "floz-us": 29.5735295625,
  "gal-us": 3785.411784,
  "floz-uk": 28.4130625,
  "gal-uk": 4546.09,
};

/** About so many grams in some unit; a volume only where a density is known. At least 1 µg. */
export function massText(dice: Dice, grams: number, density: string | null | undefined): string {
  const isVolume = density !== null && density !== undefined && chance(dice, 35);
  const units = isVolume ? MILLILITRES_BY_UNIT : GRAMS_BY_UNIT;
  const [unit, size] = pick(dice, Object.entries(units));
  const number = (grams / size / (isVolume ? Number(density) : 1)).toFixed(dice.whole(0, 9));
  const text = `${number} ${unit}`;
  return quantity(text, density) > 0n ? text : `${grams.toFixed(3)}001 g`;
}

/** About so many grams, or that many pieces, of a material. */
export const stockText = (dice: Dice, about: number, material: FileMaterial): string =>
  material.measure === "count"
    ? `${String(Math.max(1, Math.round(about)))} each`
    : massText(dice, about, material.density);

const inFull = (amount: bigint, decimals: number): string => {
  const digits = amount.toString().padStart(decimals + 1, "0");
  return `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
};

/** So many µg or pieces, not one more or less, in grams or pieces. */
export const amountText = (amount: bigint, { measure }: Pick<FileMaterial, "measure">): string =>
  measure === "count" ? `${amount.toString()} each` : `${inFull(amount, 6)} g`;

/** So many µg or pieces, not one more or less, in some unit that can say it. */
export function exactText(dice: Dice, amount: bigint, material: FileMaterial): string {
  const inGrams = amountText(amount, material);
  return material.measure === "count"
    ? inGrams
    : pick(dice, [inGrams, `${inFull(amount, 3)} mg`, `${inFull(amount, 9)} kg`]);
}
