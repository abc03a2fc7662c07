/** Formulas: their lines, and what the percents of one come to. Chains of premixes are in formula-chains.ts. */
import { difference, type PartsPerMillion, quantity, sum, WHOLE } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { id, name, orElse, phase, reference } from "@/lib/edge/fields";
import { density, percentOrQs } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import {
  called,
  complete,
  type Entry,
  type Index,
  indexById,
  readEntries,
  records,
  referredTo,
} from "@/lib/edge/record-reading";
import { percentText } from "@/lib/edge/written-figures";
import { type Subject, UNKNOWN_SUBJECT } from "./amounts";
import { checkChains } from "./formula-chains";
import { FORMULA_FACTS, readFormulaFacts } from "./formula-facts";
import { material, type MaterialIndex, materialNamed, subjectOf } from "./materials";

/** Everything of a formula but its id: what a version of one is as well. */
export const FORMULA_CONTENT = { name, density: orElse(density, null), lines: records, ...FORMULA_FACTS };
const FORMULA = { id, ...FORMULA_CONTENT };
/** The material or the premix that a line is of. */
export const OF_LINE = { material: material.optional(), formula: reference("formula").optional() };
const LINE = { ...OF_LINE, percent: percentOrQs, phase: orElse(phase, null) };

export type FormulaEntry = Entry<typeof FORMULA>;
export type FormulaIndex = Index<FormulaEntry>;

export interface FormulasReading {
  readonly formulas: readonly Formula[];
  readonly index: FormulaIndex;
}

/** The formulas, each held against FORMULA-1, and all of them together against FORMULA-2. */
export function readFormulas(
  list: readonly Json[] | undefined,
  materials: MaterialIndex,
  faults: FaultList,
  percents: "add up" | "left open" = "add up",
): FormulasReading {
  const entries = readEntries(list, FORMULA, "formulas", faults);
  const index = indexById(list, entries, faults);
  const premixesOf = new Map<FormulaEntry, readonly FormulaEntry[]>();
  const formulas = entries.flatMap((entry) => {
    const { premixes, ...content } = readContent(entry, materials, index, faults, percents);
    premixesOf.set(entry, premixes);
    return complete({ ...entry.fields, ...content }) ?? [];
  });
  checkChains(entries, premixesOf, faults);
  return { formulas, index };
}

/** The lines and lists of a formula, or of a version of one, held against FORMULA-1. */
export function readContent(
  entry: Entry<typeof FORMULA_CONTENT>,
  materials: MaterialIndex,
  formulas: FormulaIndex,
  faults: FaultList,
  percents: "add up" | "left open" = "add up",
) {
  const lineEntries = readEntries(entry.fields.lines, LINE, `${entry.path}.lines`, faults);
  const premixes = new Set<FormulaEntry>();
  const lines = lineEntries.map((line) => {
    const of = readComponent(line, materials, formulas, faults);
    if (of?.premix !== undefined) premixes.add(of.premix);
    return complete({ of: of?.of, percent: line.fields.percent, phase: line.fields.phase });
  });
  if (percents === "add up" && lineEntries.length === entry.fields.lines?.length)
    checkPercents(entry, lineEntries, faults);
  const facts = readFormulaFacts(entry.path, entry.fields, faults);
  return { premixes: [...premixes], lines: lines.filter((line) => line !== undefined), ...facts };
}

/** What an amount of the product made by the formula is measured by. */
export const formulaSubject = (entry: FormulaEntry | undefined): Subject =>
  entry === undefined
    ? { ...UNKNOWN_SUBJECT, measure: "mass", called: "what a formula makes" }
    : { measure: "mass", density: entry.fields.density, called: called("formula", entry) };

interface Component {
  readonly of: FormulaLine["of"] | undefined;
  readonly premix?: FormulaEntry | undefined;
}

/** The material measured by mass, or the premix, that a line is of. @rule FORMULA-1 */
export function readComponent(
  { path, source, fields }: Entry<typeof OF_LINE>,
  materials: MaterialIndex,
  formulas: FormulaIndex,
  faults: FaultList,
): Component | undefined {
  const [hasMaterial, hasFormula] = [source.has("material"), source.has("formula")];
  if (hasMaterial === hasFormula) {
    const fault = hasMaterial ? "names both a material and a formula; keep one" : "material or formula is missing";
    faults.tell(path, fault);
    return undefined;
  }
  if (hasFormula) {
    const premix = referredTo(formulas, "formula", fields.formula, `${path}.formula`, faults);
    return { of: fields.formula === undefined ? undefined : { kind: "formula", id: fields.formula }, premix };
  }
  const entry = materialNamed(materials, fields.material, path, faults);
  if (entry?.fields.measure === "count") {
    faults.tell(`${path}.material`, `${subjectOf(entry).called} is counted and cannot be a percent by weight`);
  }
  return { of: fields.material === undefined ? undefined : { kind: "material", id: fields.material } };
}

/** The percents add up to exactly 100, or one line takes what is left and that is above zero. @rule FORMULA-1 */
function checkPercents(
  entry: Entry<typeof FORMULA_CONTENT>,
  lines: readonly Entry<typeof LINE>[],
  faults: FaultList,
): void {
  if (lines.length === 0) {
    faults.tell(`${entry.path}.lines`, "a formula needs at least one line");
    return;
  }
  const qs = lines.filter(({ fields }) => fields.percent === "qs");
  for (const { path } of qs.slice(1)) {
    faults.tell(`${path}.percent`, `qs again; only one line of ${called("formula", entry)} can take what is left`);
  }
  const percents = lines.map(({ fields }) => fields.percent).filter((percent) => percent !== "qs");
  if (qs.length > 1 || percents.includes(undefined)) return;
  const total = (percents as readonly PartsPerMillion[]).reduce(sum, quantity<PartsPerMillion>(0n));
  const rest = difference(WHOLE, total);
  if (qs.length === 0 && rest !== 0n) {
    faults.tell(
      entry.path,
      `${called("formula", entry)}: the percents add up to ${percentText(total)} %; without a qs line they must add up to 100 %`,
    );
  }
  if (qs.length === 1 && rest <= 0n) {
    faults.tell(
      entry.path,
      `${called("formula", entry)}: qs comes out at ${percentText(rest)} %; it must be above zero`,
    );
  }
}
