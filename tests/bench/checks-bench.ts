/** How long the checks, the expansion and the weigh-up of one formula take, which run with every key that is pressed. */
import type { Day } from "@/lib/domain/calendar";
import { checksOf, type Checked } from "@/lib/domain/formula-book/checks";
import { expansionOf } from "@/lib/domain/formula-book/expansion";
import { weighUpWithPremixes } from "@/lib/domain/formula-book/weigh-up-premixes";
import { whole } from "@/lib/domain/fraction";
import { type Micrograms, type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import type { Formula, FormulaLine, Lot, Material } from "@/lib/domain/workshop";
import { day, decimal, formula, lot, material } from "../helpers/notation";
import { line, medianTime } from "./median-time";

/** Lines of the formula, of which so many are premixes; each of those holds ten materials and the next premix. */
const LINES = 25;
const PREMIXES = 6;
const MATERIALS = 80;
const LOTS_EACH = 4;

/** So often in one measurement, since once is too short to be timed. */
const REPEATS = 50;

const today: Day = day("2026-11-25");

const materialAt = (at: number): Material =>
  material(`m${String(at)}`, {
    role: at === 0 ? "water" : at === 1 ? "preservative" : "neither",
    useMin: quantity<PartsPerMillion>(1_000n),
    useMax: quantity<PartsPerMillion>(50_000n),
    addBelow: at % 3 === 0 ? decimal("60") : null,
    phFrom: at % 4 === 0 ? decimal("4") : null,
    phTo: at % 4 === 0 ? decimal("6") : null,
    composition: [
      { inci: "Benzyl Alcohol", share: quantity<PartsPerMillion>(400_000n) },
      { inci: `Part ${String(at)}`, share: quantity<PartsPerMillion>(600_000n) },
    ],
    allergen: at % 5 === 0,
  });

const lineOf = (of: FormulaLine["of"], ppm: bigint, phase: string): FormulaLine => ({
  of,
  percent: quantity<PartsPerMillion>(ppm),
  phase,
});

/** Adds up: the last line takes what is left. */
const closed = (of: Formula, lines: readonly FormulaLine[]): Formula => ({
  ...of,
  market: "EU",
  use: "leave-on",
  phFrom: decimal("5"),
  phTo: decimal("5.5"),
  keepsDays: 540,
  phases: ["A", "B"].map((name) => ({ name, temperature: decimal("70") })),
  lines: lines.map((each, at) => (at === lines.length - 1 ? { ...each, percent: "qs" as const } : each)),
});

function benchFormulas(): readonly Formula[] {
  const premixes = Array.from({ length: PREMIXES }, (_, at) => {
    const held = Array.from({ length: 10 }, (_each, place) =>
      lineOf({ kind: "material", id: `m${String((at * 11 + place) % MATERIALS)}` }, 50_000n, "A"),
    );
    const next = at + 1 === PREMIXES ? [] : [lineOf({ kind: "formula", id: `p${String(at + 1)}` }, 100_000n, "B")];
    return closed(formula(`p${String(at)}`, {}), [...next, ...held]);
  });
  const lines = Array.from({ length: LINES }, (_, at) =>
    at < PREMIXES
      ? lineOf({ kind: "formula", id: `p${String(at)}` }, 30_000n, "A")
      : lineOf({ kind: "material", id: `m${String((at * 3) % MATERIALS)}` }, 20_000n, at % 2 === 0 ? "A" : "B"),
  );
  return [closed(formula("top", {}), lines), ...premixes];
}

export function benchChecks(): void {
  const formulas = benchFormulas();
  const [top] = formulas;
  if (top === undefined) throw new Error("there is a formula");
  const materials = Array.from({ length: MATERIALS }, (_, at) => materialAt(at));
  const lots: readonly Lot[] = materials.flatMap(({ id }) =>
    Array.from({ length: LOTS_EACH }, (_, at) =>
      lot(`${id}-${String(at)}`, id, "100", "1", { expires: day("2027-06-01") }),
    ),
  );
  const batch = quantity<Micrograms>(5_000_000_000n);
  const checked: Checked = { formulas, materials, lots, today, step: quantity<Micrograms>(100_000n), batch };
  const each = (deed: () => unknown): number =>
    medianTime(() => {
      for (let time = 0; time < REPEATS; time += 1) deed();
    }) / REPEATS;
  const found = checksOf(top, checked).length;
  const inIt = expansionOf(top, formulas).length;
  const words = `${String(LINES)} lines, ${String(PREMIXES)} premixes in one another, ${String(inIt)} materials`;
  console.log(
    line(
      "checks of one formula",
      each(() => checksOf(top, checked)),
      `${words}, ${String(found)} findings`,
    ),
  );
  console.log(
    line(
      "its expansion",
      each(() => expansionOf(top, formulas)),
    ),
  );
  console.log(
    line(
      "its weigh-up with its premixes",
      each(() => weighUpWithPremixes(formulas, "top", whole(batch), checked.step)),
    ),
  );
}
