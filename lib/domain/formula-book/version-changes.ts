/** What one version of a formula has otherwise than another. @rule VERSION-1 */
import type { PartsPerMillion } from "@/lib/domain/quantity";
import type { FormulaLine } from "@/lib/domain/workshop";
import type { FormulaContent } from "./version-record";

export type VersionChange =
  | { readonly kind: "put in" | "taken out"; readonly line: FormulaLine }
  | {
      readonly kind: "percent";
      readonly of: FormulaLine["of"];
      readonly before: PartsPerMillion | "qs";
      readonly after: PartsPerMillion | "qs";
    }
  | {
      readonly kind: "phase";
      readonly of: FormulaLine["of"];
      readonly before: string | null;
      readonly after: string | null;
    }
  | {
      readonly kind: "temperature";
      readonly phase: string;
      readonly before: string | null;
      readonly after: string | null;
    }
  | { readonly kind: "fact"; readonly fact: FactName; readonly before: string | null; readonly after: string | null }
  | { readonly kind: "order of lines" | "phases" | "steps" | "checks" };

/** Facts that are one word or figure. */
export const FACT_NAMES = ["density", "market", "use", "phFrom", "phTo", "keepsDays"] as const;
export type FactName = (typeof FACT_NAMES)[number];

/** Every change from one to the other: lines, phases, facts, steps, checks. Lines of one thing are paired in their order. */
export function versionChanges(before: FormulaContent, after: FormulaContent): readonly VersionChange[] {
  const lines = lineChanges(before.lines, after.lines);
  const moved = keptOrder(before.lines, after.lines) !== keptOrder(after.lines, before.lines);
  const temperatures = temperatureChanges(before, after);
  const phases = temperatures.length === 0 && namesOf(before) !== namesOf(after);
  const steps = JSON.stringify(before.steps) !== JSON.stringify(after.steps);
  const checks = JSON.stringify(before.checks) !== JSON.stringify(after.checks);
  return [
    ...lines,
    ...(moved ? [{ kind: "order of lines" } as const] : []),
    ...temperatures,
    ...(phases ? [{ kind: "phases" } as const] : []),
    ...FACT_NAMES.flatMap((fact): readonly VersionChange[] => {
      const [was, is] = [textOf(before[fact]), textOf(after[fact])];
      return was === is ? [] : [{ kind: "fact", fact, before: was, after: is }];
    }),
    ...(steps ? [{ kind: "steps" } as const] : []),
    ...(checks ? [{ kind: "checks" } as const] : []),
  ];
}

const textOf = (value: string | bigint | number | null): string | null => (value === null ? null : String(value));

/** What a line is of, and the how manieth of that it is. */
const placesOf = (lines: readonly FormulaLine[]): ReadonlyMap<string, FormulaLine> => {
  const met = new Map<string, number>();
  return new Map(
    lines.map((line) => {
      const of = `${line.of.kind} ${line.of.id}`;
      const nth = met.get(of) ?? 0;
      met.set(of, nth + 1);
      return [`${String(nth)} ${of}`, line];
    }),
  );
};

/** The order of those that both have. */
function keptOrder(lines: readonly FormulaLine[], others: readonly FormulaLine[]): string {
  const there = placesOf(others);
  return JSON.stringify([...placesOf(lines).keys()].filter((place) => there.has(place)));
}

const namesOf = ({ phases }: FormulaContent): string => JSON.stringify(phases.map(({ name }) => name));

function lineChanges(before: readonly FormulaLine[], after: readonly FormulaLine[]): readonly VersionChange[] {
  const [was, is] = [placesOf(before), placesOf(after)];
  const kept = [...is].flatMap(([place, line]): readonly VersionChange[] => {
    const old = was.get(place);
    if (old === undefined) return [{ kind: "put in", line }];
    const { of } = line;
    return [
      ...(old.percent === line.percent
        ? []
        : [{ kind: "percent", of, before: old.percent, after: line.percent } as const]),
      ...(old.phase === line.phase ? [] : [{ kind: "phase", of, before: old.phase, after: line.phase } as const]),
    ];
  });
  const gone = [...was].filter(([place]) => !is.has(place)).map(([, line]) => ({ kind: "taken out", line }) as const);
  return [...gone, ...kept];
}

function temperatureChanges(before: FormulaContent, after: FormulaContent): readonly VersionChange[] {
  const was = new Map(before.phases.map(({ name, temperature }) => [name, temperature]));
  const is = new Map(after.phases.map(({ name, temperature }) => [name, temperature]));
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((phase): readonly VersionChange[] => {
    const [old, now] = [was.get(phase) ?? null, is.get(phase) ?? null];
    return old === now ? [] : [{ kind: "temperature", phase, before: old, after: now }];
  });
}
