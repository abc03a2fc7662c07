/** One line of a pasted formula: a heading, or a name with how much of it. */
import type { Outcome } from "@/lib/edge/fields";
import { isRest, readTypedAmount, readTypedPercent } from "./typed-amount";
import { withoutEnds } from "./typed-number";

/** How much of something, as it was pasted. */
export type PastedAmount =
  /** A plain decimal; `signed` where a percent sign was beside it. */
  | { readonly kind: "number"; readonly number: string; readonly signed: boolean }
  /** In the file's spelling, as `12 g`. */
  | { readonly kind: "weight or volume"; readonly amount: string }
  | { readonly kind: "rest" }
  | { readonly kind: "none" }
  /** There is one, but it cannot be read for sure. */
  | { readonly kind: "unclear"; readonly why: string };

export type PastedText =
  | { readonly kind: "nothing" }
  | { readonly kind: "phase"; readonly phase: string }
  | { readonly kind: "line"; readonly name: string; readonly phase: string | null; readonly amount: PastedAmount };

const LONGEST_LINE = 300;
const NOTHING: PastedText = { kind: "nothing" };

/**
 * Reads one line of text.
 * @param isName  whether a text is the name of something known, for names that end in a number ("Polysorbate 20")
 */
export function readPastedLine(pasted: string, isName: (text: string) => boolean): PastedText {
  const text = withoutMarks(pasted.slice(0, LONGEST_LINE));
  if (text === "" || isHeadOfColumns(text) || isTotal(text)) return NOTHING;
  const heading = headingOf(text);
  if (heading !== undefined) return heading.rest === "" ? heading : inPhase(heading.phase, heading.rest, isName);
  const cells = text
    .split(/\t|\s+\|\s+|;/)
    .map(withoutEnds)
    .filter((cell) => cell !== "");
  return cells.length > 1 ? readCells(cells, isName) : readText(text, null, isName);
}

const inPhase = (phase: string, rest: string, isName: (text: string) => boolean): PastedText => {
  const line = readText(rest, phase, isName);
  return line.kind === "line" && line.amount.kind !== "none" ? line : { kind: "phase", phase };
};

/** Without bullets, numbering, and the marks of a note or a table at its ends. */
const withoutMarks = (pasted: string): string =>
  withoutEnds(pasted.replace(/\*\*|__|`/g, ""))
    .replace(/^(?:[-–—•·▪◦‣∙*#>|]+\s+|\d{1,3}[.)]\s+(?=[\p{L}]))+/u, "")
    .replace(/^\|\s*|\s*\|$/g, "")
    .trim();

/** The first row of a table: names of columns and no figure. */
const isHeadOfColumns = (text: string): boolean =>
  /^(phase|ingredients?|materials?|raw materials?|name|inci( name)?|trade name)\b/i.test(text) &&
  !/\d/.test(text) &&
  /%|\bpercent|\bw\/w\b|\bwt\b|\bamount|\bweight|\bgrams?\b|^(ingredients?|materials?|raw materials?|inci( name)?):?$/i.test(
    text,
  );

const isTotal = (text: string): boolean => /^(grand )?(sub-?)?(total|sum)s?\b/i.test(text);

interface Heading {
  readonly kind: "phase";
  readonly phase: string;
  /** What stands behind the phase on the same line, where that may be a line of the formula. */
  readonly rest: string;
}

/** `PHASE A`, `Phase B: oils`, `Oil phase`, `[A]`, `A:`. */
function headingOf(text: string): Heading | undefined {
  const [, word = "", behind = ""] =
    /^(?:phase|part|stage)\s*[:.-]?\s*([a-z]\d?|\d{1,2}|[ivx]{1,4})\b\s*(.*)$/i.exec(text.replace(/\t/g, " ")) ?? [];
  if (word !== "") return { kind: "phase", phase: word.toUpperCase(), rest: behind.replace(/^[:.)–—-]+\s*/, "") };
  const [, letter = ""] = /^[[(]?([A-Za-z]\d?)[\])]?\s*[:.)]?$/.exec(text) ?? [];
  if (letter !== "") return { kind: "phase", phase: letter.toUpperCase(), rest: "" };
  const [, named = ""] = /^([\p{L} -]{2,40} phase)\s*(?:\([^)]*\))?\s*:?\s*(?:\d[\d.,]*\s*%)?$/iu.exec(text) ?? [];
  return named === "" ? undefined : { kind: "phase", phase: named, rest: "" };
}

/** A row of a spreadsheet: perhaps a phase, a name, and the first cell that is a percent, or else any figure. */
function readCells(cells: readonly string[], isName: (text: string) => boolean): PastedText {
  const [first = "", second = ""] = cells;
  const phase = /^(?:phase\s*)?([a-z]\d?)$/i.exec(first)?.[1]?.toUpperCase() ?? null;
  const others = phase === null || second === "" ? cells : cells.slice(1);
  const read = others.map((cell) => ({ cell, amount: amountOf(cell) }));
  const figures = read.flatMap(({ amount }) => amount ?? []);
  const amount =
    figures.find(({ kind }) => kind === "rest") ??
    figures.find((figure) => figure.kind === "number" && figure.signed) ??
    figures.find(({ kind }) => kind === "number" || kind === "unclear") ??
    figures[0];
  const name = read.find((one) => one.amount === undefined)?.cell;
  if (name === undefined) return NOTHING;
  return amount === undefined ? readText(name, phase, isName) : { kind: "line", name, phase, amount };
}

const NUMBER = String.raw`[+−-]?(?:\d{1,3}(?:[\s'’]\d{3})+(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)`;
const PERCENT = String.raw`(?:%|percent\b|pct\b)\s*(?:w\/w|wt)?`;
const UNIT = String.raw`(?:mg|kg|grams?|g|fl\.?\s?oz|oz|lbs?|ml|l)\b\.?`;
const REST = String.raw`(?:q\.?\s?s\.?(?=[\s)]|$)|quantum satis)(?:\s*(?:to|ad|up to)\s*100\s*%?)?|(?:to|ad|up to)\s*100\s*%?`;
const RANGE = String.raw`${NUMBER}\s*(?:[-–—]|to)\s*\d[\d.,]*`;
const AMOUNT = String.raw`(?:${REST}|(?:${RANGE}|${NUMBER})\s*(?:${PERCENT}|${UNIT})?)`;
const AT_END = new RegExp(String.raw`^(.+?)(?:\s+[-–—=:]+\s*|\s*[:=,]\s*|\s+|\s*\(\s*)(${AMOUNT})\s*\)?$`, "iu");
const AT_START = new RegExp(
  String.raw`^(${REST}|(?:${RANGE}|${NUMBER})\s*(?:${PERCENT}|${UNIT}))\s*[-–—:,]*\s*(?:of\s+)?(.+)$`,
  "iu",
);
const BARE_AT_START = new RegExp(String.raw`^(${NUMBER})\s+(?=\p{L})(.+)$`, "iu");

/** A name with its amount behind or before it. */
function readText(text: string, phase: string | null, isName: (text: string) => boolean): PastedText {
  const bare: PastedText = { kind: "line", name: text, phase, amount: { kind: "none" } };
  const behind = AT_END.exec(text);
  if (behind !== null && !isPartOfName(text, behind[2] ?? "", isName))
    return lineOf(behind[1], behind[2], phase) ?? bare;
  const before = AT_START.exec(text) ?? BARE_AT_START.exec(text);
  if (before !== null) return lineOf(before[2], before[1], phase) ?? bare;
  return bare;
}

function lineOf(name: string | undefined, figure: string | undefined, phase: string | null): PastedText | undefined {
  const amount = amountOf(figure ?? "");
  const clean = withoutEnds(withoutLeaders(name ?? ""));
  return amount === undefined || clean === "" ? undefined : { kind: "line", name: clean, phase, amount };
}

/** Without what leads from a name to its figure, as dots do in a printed list. */
const withoutLeaders = (name: string): string =>
  name
    .replace(/[\s,:=…_–—-]+$/u, "")
    .replace(/(?:\s*\.){2,}$/u, "")
    .replace(/[\s,:=–—-]+$/u, "");

/** Families of surfactants, polymers and colours whose names end in a number (INCI nomenclature). */
const NUMBERED =
  /\b(polysorbate|ceteareth|steareth|laureth|oleth|ceteth|trideceth|peg|ppg|poloxamer|polyquaternium|quaternium|ci|vitamin b)[\s-]*\d+$/i;

/** A number without a sign or unit may be the end of a name. */
const isPartOfName = (text: string, figure: string, isName: (text: string) => boolean): boolean =>
  /^\d+$/.test(figure) && (NUMBERED.test(text) || isName(text));

/** The figure of a cell or of the end of a line; undefined where it is none. */
function amountOf(figure: string): PastedAmount | undefined {
  if (isRest(figure)) return { kind: "rest" };
  if (new RegExp(`^${RANGE}\\s*(?:${PERCENT})?$`, "iu").test(figure)) {
    return { kind: "unclear", why: `"${figure}" is a range; write one percent` };
  }
  const percent = new RegExp(`^(${NUMBER})\\s*(${PERCENT})?$`, "iu").exec(figure);
  if (percent !== null) {
    return asAmount(readTypedPercent(percent[1] ?? ""), (number) => ({
      kind: "number",
      number,
      signed: percent[2] !== undefined,
    }));
  }
  if (!new RegExp(`^${NUMBER}\\s*${UNIT}$`, "iu").test(figure)) return undefined;
  return asAmount(readTypedAmount(figure), (amount) => ({ kind: "weight or volume", amount }));
}

const asAmount = (read: Outcome<string>, make: (value: string) => PastedAmount): PastedAmount =>
  "value" in read ? make(read.value) : { kind: "unclear", why: read.fault };
