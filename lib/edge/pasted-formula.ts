/**
 * A formula pasted as lines of text, from a note or a spreadsheet: each line's name matched to what the workshop knows,
 * and what is unsure asked. Nothing is chosen silently, and nothing is kept before somebody has looked. @rule FORMULA-1
 */
import { type Amount, type PartsPerMillion, quantity, readAmount, UNITS, WHOLE } from "@/lib/domain/quantity";
import type { Formula, Material } from "@/lib/domain/workshop";
import { type NameMatch, nameMatcher } from "@/lib/edge/forms/name-matching";
import { type PastedAmount, readPastedLine } from "@/lib/edge/forms/pasted-line";
import { percentText } from "@/lib/edge/written-figures";

/** Something of the workshop that a line can be of. */
export interface Known {
  readonly kind: "material" | "formula";
  readonly id: string;
  readonly name: string;
}

export interface PastedLine {
  readonly phase: string | null;
  /** As it was pasted. */
  readonly name: string;
  /** A plain decimal, `qs`, or null where there is none that can be kept as it is. */
  readonly percent: string | null;
  /** In µg, where the line gives a weight; as text, so that a page can hand it back. */
  readonly weight: string | null;
  readonly match: NameMatch<Known>;
  /** What has to be asked before the line can be kept, in a sentence; null where nothing has. */
  readonly asks: string | null;
}

export interface PastedFormula {
  readonly lines: readonly PastedLine[];
  /** Sentences about the whole: lines left out, figures that look like grams. */
  readonly says: readonly string[];
  /** True where the figures look like weights: they can be turned into percents, if that is what they are. */
  readonly looksLikeGrams: boolean;
}

type KnownMaterial = Pick<Material, "id" | "name" | "measure">;
type KnownFormula = Pick<Formula, "id" | "name">;

/** More lines than any formula has. */
export const MOST_LINES = 500;
/** Text beyond this is not looked at. */
const MOST_CHARACTERS = 2_000_000;

/** @param workshop  the materials and formulas that lines are matched to; what is counted cannot be in a formula */
export function readPastedFormula(
  pasted: string,
  workshop: { readonly materials: readonly KnownMaterial[]; readonly formulas: readonly KnownFormula[] },
): PastedFormula {
  const known: readonly Known[] = [
    ...workshop.materials
      .filter(({ measure }) => measure === "mass")
      .map(({ id, name }) => ({ kind: "material", id, name }) as const),
    ...workshop.formulas.map(({ id, name }) => ({ kind: "formula", id, name }) as const),
  ];
  const match = nameMatcher(known);
  const isName = (text: string): boolean => match(text).kind === "exact";
  const texts = pasted
    .slice(0, MOST_CHARACTERS)
    .split(/\r\n?|\n|\u2028|\u2029/)
    .filter((text) => text.trim() !== "");
  let phase: string | null = null;
  const found: { readonly name: string; readonly phase: string | null; readonly amount: PastedAmount }[] = [];
  for (const text of texts.slice(0, MOST_LINES)) {
    const line = readPastedLine(text, isName);
    if (line.kind === "phase") phase = line.phase;
    if (line.kind === "line") {
      phase = line.phase ?? phase;
      found.push({ ...line, phase });
    }
  }
  const looksLikeGrams = areWeights(found.map(({ amount }) => amount));
  const lines = found.map(({ name, phase, amount }) => ({
    phase,
    name,
    match: match(name),
    ...figureOf(amount, looksLikeGrams),
  }));
  return { lines, looksLikeGrams, says: saysOf(texts.length, pasted.length, looksLikeGrams) };
}

function saysOf(texts: number, characters: number, looksLikeGrams: boolean): readonly string[] {
  const leftOut = texts - MOST_LINES;
  return [
    ...(leftOut > 0
      ? [
          `The first ${String(MOST_LINES)} lines were read; ${String(leftOut)} more ${leftOut === 1 ? "was" : "were"} left out.`,
        ]
      : []),
    ...(characters > MOST_CHARACTERS
      ? [
          `Only the first ${String(MOST_CHARACTERS)} characters were looked at; ${String(characters - MOST_CHARACTERS)} were left out.`,
        ]
      : []),
    ...(looksLikeGrams ? ["These look like grams: turn them into percents?"] : []),
  ];
}

const HUNDRED_AND_A_BIT = 101_000_000n;

/** Weights are written at some lines and a percent at none; or bare numbers come to well over a hundred. */
function areWeights(amounts: readonly PastedAmount[]): boolean {
  const signed = amounts.some((amount) => amount.kind === "number" && amount.signed);
  if (signed) return false;
  if (amounts.some((amount) => amount.kind === "weight or volume" && microgramsOf(amount.amount) !== null)) return true;
  const bare = amounts.flatMap((amount) =>
    amount.kind === "number" ? [microgramsOf(`${amount.number} g`) ?? 0n] : [],
  );
  return bare.reduce((total, one) => total + one, 0n) > HUNDRED_AND_A_BIT;
}

type Figure = Pick<PastedLine, "percent" | "weight" | "asks">;
const NO_FIGURE: Figure = { percent: null, weight: null, asks: null };

function figureOf(amount: PastedAmount, looksLikeGrams: boolean): Figure {
  switch (amount.kind) {
    case "rest":
      return { ...NO_FIGURE, percent: "qs" };
    case "none":
      return { ...NO_FIGURE, asks: "no percent here; write one, or qs for what is left" };
    case "unclear":
      return { ...NO_FIGURE, asks: amount.why };
    case "number":
      return looksLikeGrams ? weightOf(`${amount.number} g`, true) : { ...NO_FIGURE, percent: amount.number };
    case "weight or volume":
      return weightOf(amount.amount, looksLikeGrams);
  }
}

function weightOf(amount: string, looksLikeGrams: boolean): Figure {
  const micrograms = microgramsOf(amount);
  if (micrograms === null) return { ...NO_FIGURE, asks: `${amount} is no weight; write a percent by weight` };
  if (looksLikeGrams) return { ...NO_FIGURE, weight: micrograms.toString() };
  return { ...NO_FIGURE, weight: micrograms.toString(), asks: `${amount} is a weight; write it as a percent` };
}

/** What a weight in the file's spelling comes to, or null where it is none or too large to be kept. */
function microgramsOf(amount: string): bigint | null {
  const [number, unit] = amount.split(" ") as [Amount["number"], Amount["unit"]];
  if (UNITS[unit].kind !== "mass" || number.length > 60) return null;
  const reading = readAmount({ number, unit }, "mass", null);
  return reading.kind === "read" ? reading.quantity : null;
}

export type InPercents =
  | { readonly kind: "percents"; readonly lines: readonly PastedLine[] }
  | { readonly kind: "refused"; readonly why: string };

/**
 * Weights as percents of their sum, each rounded to four decimals so that they add up to exactly 100: the largest
 * remainders are rounded up, ties to the earlier line. @rule FORMULA-1
 */
export function weightsAsPercents(lines: readonly PastedLine[]): InPercents {
  const without = lines.filter(({ weight }) => weight === null);
  const [first] = without;
  if (first !== undefined) {
    const why = first.percent === "qs" ? "takes what is left, and of how much is not said" : "has no weight";
    return { kind: "refused", why: `"${first.name}" ${why}; write its weight, or write percents` };
  }
  const weights = lines.map(({ weight }) => BigInt(weight ?? 0));
  const total = weights.reduce((sum, weight) => sum + weight, 0n);
  if (total === 0n) return { kind: "refused", why: "there is no weight to take percents of" };
  const shares = weights.map((weight) => ({ whole: (weight * WHOLE) / total, rest: (weight * WHOLE) % total }));
  const missing = WHOLE - shares.reduce((sum, { whole }) => sum + whole, 0n);
  const byRest = shares
    .map(({ rest }, at) => ({ rest, at }))
    .sort((a, b) => Number(b.rest > a.rest) - Number(b.rest < a.rest) || a.at - b.at);
  const roundedUp = new Set(byRest.slice(0, Number(missing)).map(({ at }) => at));
  const percents = shares.map(({ whole }, at) => quantity<PartsPerMillion>(whole + (roundedUp.has(at) ? 1n : 0n)));
  const nothing = lines.find((_, at) => percents[at] === 0n);
  if (nothing !== undefined) {
    return { kind: "refused", why: `"${nothing.name}" comes to less than 0.0001 %; take it out or write percents` };
  }
  return {
    kind: "percents",
    lines: lines.map((line, at) => ({
      ...line,
      percent: percentText(percents[at] ?? quantity<PartsPerMillion>(0n)),
      asks: null,
    })),
  };
}
