/** Materials that go into a phase hotter than they bear. @rule CHECK-7 */
import type { Composition } from "@/lib/domain/formula";
import { compare } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import type { Formula, Material } from "@/lib/domain/workshop";
import type { Finding } from "./findings";

interface Names {
  readonly formulaOf: (id: string) => Formula;
  readonly materialOf: (id: string) => Material;
}

/**
 * Looks at every phase of the formula and of each premix below it. What a premix holds is as warm as the phase it goes
 * into, and was as warm as the phase of the premix.
 * @rule CHECK-7
 */
export function heatFindings(
  top: Formula,
  compositionOf: (formulaId: string) => Composition,
  { formulaOf, materialOf }: Names,
): readonly Finding[] {
  const findings: Finding[] = [];
  const entered = new Set<string>();

  function enter(formula: Formula): void {
    if (entered.has(formula.id)) return;
    entered.add(formula.id);
    for (const { of, phase } of formula.lines) {
      const ids = of.kind === "material" ? [of.id] : [...compositionOf(of.id).keys()];
      for (const id of ids) findings.push(...inPhase(materialOf(id), formula, phase));
      if (of.kind === "formula") enter(formulaOf(of.id));
    }
  }
  enter(top);
  return findings;
}

function inPhase(material: Material, formula: Formula, phase: string | null): readonly Finding[] {
  const { addBelow } = material;
  if (addBelow === null) return [];
  const about = { material, formula, phase, addBelow };
  const temperature = formula.phases.find(({ name }) => name === phase)?.temperature ?? null;
  if (temperature === null) return [{ code: "phase without a temperature", ...about }];
  if (isAtOrAbove(temperature, addBelow)) return [{ code: "too hot for it", ...about, temperature }];
  return formula.steps
    .filter((step) => step.phase === phase && step.temperature !== null && isAtOrAbove(step.temperature, addBelow))
    .slice(0, 1)
    .map((step): Finding => ({ code: "a step is hotter", ...about, temperature: step.temperature ?? temperature }));
}

export const isAtOrAbove = (temperature: DecimalText, limit: DecimalText): boolean =>
  compare(decimalValue(temperature), decimalValue(limit)) >= 0;
