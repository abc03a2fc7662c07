/** What the checks of a formula can find, and how each is ranked. @rule CHECK-1 */
import type { Day } from "@/lib/domain/calendar";
import type { FormulaResult } from "@/lib/domain/formula-total";
import type { Fraction } from "@/lib/domain/fraction";
import type { DecimalText, Micrograms, PartsPerMillion } from "@/lib/domain/quantity";
import type { Formula, FormulaLine, Lot, Material } from "@/lib/domain/workshop";
import type { Market, Sheet, WayOfUse } from "./facts";

/** Errors stop a run; warnings can be accepted with a reason; notes are for reading. */
export type Severity = "error" | "warning" | "note";

export type Finding =
  | { readonly code: "does not add up"; readonly result: FormulaResult }
  | ({ readonly code: "over a legal maximum" } & LegalFinding)
  | ({ readonly code: "too hot for it" } & HeatFinding)
  | {
      readonly code: "outside its use range";
      readonly material: Material;
      readonly amount: Fraction;
      readonly side: "below" | "above";
      readonly bound: PartsPerMillion;
    }
  | { readonly code: "pH outside its window"; readonly material: Material; readonly target: PhRange }
  | { readonly code: "water and no preservative"; readonly water: readonly Material[] }
  | {
      readonly code: "balance too coarse";
      readonly formula: Formula;
      readonly line: FormulaLine;
      readonly target: Micrograms;
      readonly step: Micrograms;
    }
  | {
      readonly code: "lot expires before the product";
      readonly material: Material;
      readonly lot: Lot;
      readonly expires: Day;
      readonly bestBefore: Day;
    }
  | { readonly code: "no market"; readonly limited: readonly Material[] }
  | { readonly code: "no published maxima"; readonly market: Market }
  | {
      readonly code: "no limit held for this use";
      readonly substance: string;
      readonly heldFor: WayOfUse;
      readonly source: string;
    }
  | { readonly code: "nothing marked as water or preservative"; readonly unmarked: readonly Material[] }
  | { readonly code: "no target pH"; readonly material: Material }
  | ({ readonly code: "phase without a temperature" } & Omit<HeatFinding, "temperature">)
  | ({ readonly code: "a step is hotter" } & HeatFinding)
  | { readonly code: "lot is out of date"; readonly material: Material; readonly lot: Lot; readonly expires: Day }
  | { readonly code: "sheet to review"; readonly material: Material; readonly sheet: Sheet; readonly reviewBy: Day }
  | { readonly code: "caution"; readonly material: Material; readonly of: Caution };

export type Code = Finding["code"];
export type Caution = "flammable" | "allergen" | "eye hazard";

export interface LegalFinding {
  readonly market: Market;
  readonly use: WayOfUse | null;
  readonly substance: string;
  readonly amount: Fraction;
  readonly maximum: PartsPerMillion;
  readonly source: string;
  readonly copied: Day;
  /** Those that bring it in. */
  readonly materials: readonly Material[];
}

export interface HeatFinding {
  readonly material: Material;
  /** The formula whose phase it is: this one, or a premix. */
  readonly formula: Formula;
  readonly phase: string | null;
  readonly temperature: DecimalText;
  readonly addBelow: DecimalText;
}

export interface PhRange {
  readonly from: DecimalText;
  readonly to: DecimalText;
}

const SEVERITIES: Readonly<Record<Code, Severity>> = {
  "does not add up": "error",
  "over a legal maximum": "error",
  "too hot for it": "error",
  "outside its use range": "warning",
  "pH outside its window": "warning",
  "water and no preservative": "warning",
  "balance too coarse": "warning",
  "lot expires before the product": "warning",
  "no market": "note",
  "no published maxima": "note",
  "no limit held for this use": "note",
  "nothing marked as water or preservative": "note",
  "no target pH": "note",
  "phase without a temperature": "note",
  "a step is hotter": "note",
  "lot is out of date": "note",
  "sheet to review": "note",
  caution: "note",
};

export const severityOf = ({ code }: Finding): Severity => SEVERITIES[code];

const RANKS: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** Errors, then warnings, then notes; those of one rank as they were found. */
export const ranked = (findings: readonly Finding[]): readonly Finding[] =>
  findings.toSorted((a, b) => RANKS[severityOf(a)] - RANKS[severityOf(b)]);

/**
 * What a finding is told apart by, with its figures: a warning that was accepted and comes out otherwise is a new one.
 * @rule CHECK-8
 */
export function findingKey(finding: Finding): string {
  const parts: readonly (string | bigint | number | null)[] = keyParts(finding);
  return JSON.stringify([finding.code, ...parts.map((part) => (part === null ? null : String(part)))]);
}

function keyParts(finding: Finding): readonly (string | bigint | number | null)[] {
  switch (finding.code) {
    case "does not add up":
      return [finding.result.kind];
    case "over a legal maximum":
      return [finding.market, finding.substance, finding.maximum, asKey(finding.amount)];
    case "too hot for it":
    case "a step is hotter":
      return [finding.material.id, finding.formula.id, finding.phase, finding.temperature, finding.addBelow];
    case "phase without a temperature":
      return [finding.material.id, finding.formula.id, finding.phase, finding.addBelow];
    case "outside its use range":
      return [finding.material.id, finding.side, finding.bound, asKey(finding.amount)];
    case "pH outside its window":
      return [
        finding.material.id,
        finding.target.from,
        finding.target.to,
        finding.material.phFrom,
        finding.material.phTo,
      ];
    case "water and no preservative":
      return finding.water.map(({ id }) => id);
    case "balance too coarse":
      return [finding.formula.id, finding.line.of.kind, finding.line.of.id, finding.target, finding.step];
    case "lot expires before the product":
      return [finding.lot.id, finding.expires, finding.bestBefore];
    case "lot is out of date":
      return [finding.lot.id];
    case "no published maxima":
      return [finding.market];
    case "no limit held for this use":
      return [finding.substance, finding.heldFor];
    // About the formula as a whole, whichever materials are behind it.
    case "no market":
    case "nothing marked as water or preservative":
      return [];
    case "no target pH":
      return [finding.material.id];
    case "sheet to review":
      return [finding.material.id, finding.sheet.reference];
    case "caution":
      return [finding.material.id, finding.of];
  }
}

/** An exact share in billionths: its denominator differs with the way it was reckoned. */
const asKey = ({ over, under }: Fraction): bigint => (over * 1_000_000_000n) / under;
