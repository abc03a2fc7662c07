/**
 * The figures of emulsifier, preservatives, actives and pH are common practice, without a source: a cationic emulsifier
 * blend at 5 to 7 %; one preservative at 0.75 to 1.5 %, added below 80 °C, best below pH 6; another at 0.5 to 1 %, added
 * below 40 °C; heat-sensitive actives below 40 °C; a rinse-off conditioner at pH 4 to 4.5.
 */
import { describe, expect, test } from "vitest";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { MARKETS } from "@/lib/domain/formula-book/facts";
import { type Finding, findingKey, severityOf } from "@/lib/domain/formula-book/findings";
import type { Formula, Lot, Material } from "@/lib/domain/workshop";
import { day, decimal, formula, g, limit, lot, material, percent } from "@/tests/helpers/notation";
import { processorMs } from "../../helpers/processor-time";

const today = day("2026-11-25");

const ON_THE_BENCH = [
  material("water", { role: "water" }),
  material("emulsifier", { role: "neither", useMin: percent("5"), useMax: percent("7") }),
  material("active", { role: "neither", addBelow: decimal("40") }),
  material("oil", { role: "neither" }),
  material("first", {
    role: "preservative",
    useMin: percent("0.75"),
    useMax: percent("1.5"),
    addBelow: decimal("80"),
    phTo: decimal("6"),
  }),
  material("second", {
    role: "preservative",
    useMin: percent("0.5"),
    useMax: percent("1"),
    addBelow: decimal("40"),
    phFrom: decimal("3"),
    phTo: decimal("8"),
  }),
];

const PHASES = [
  { name: "A", temperature: decimal("75") },
  { name: "C", temperature: decimal("35") },
];

/** A conditioner from `{ water: "qs A", first: "1 C" }`: percent and phase. */
function conditioner(lines: Readonly<Record<string, string>>, given: Partial<Formula> = {}): Formula {
  const split = Object.entries(lines).map(([of, words]) => [of, ...words.split(" ")] as const);
  const of = formula("f", Object.fromEntries(split.map(([id, share = ""]) => [id, share])));
  return {
    ...of,
    phFrom: decimal("4"),
    phTo: decimal("4.5"),
    phases: PHASES,
    lines: of.lines.map((line, at) => ({ ...line, phase: split[at]?.[2] ?? null })),
    ...given,
  };
}

interface Beside {
  readonly formulas?: readonly Formula[];
  readonly materials?: readonly Material[];
  readonly lots?: readonly Lot[];
  readonly batch?: string;
}

const found = (of: Formula, { formulas = [], materials = ON_THE_BENCH, lots = [], batch }: Beside = {}) =>
  checksOf(of, { formulas, materials, lots, today, step: g("0.1"), batch: batch === undefined ? null : g(batch) });

/** As `error too hot for it: second`. */
const inShort = (finding: Finding): string => {
  const about = "material" in finding ? `: ${finding.material.id}` : "";
  return `${severityOf(finding)} ${finding.code}${about}`;
};

const GOOD = { water: "qs A", emulsifier: "6 A", first: "1 A" };

describe("what is found about a formula", () => {
  interface Case {
    readonly rule: string;
    readonly says: string;
    readonly of: Formula;
    readonly beside?: Beside;
    readonly finds: readonly string[];
  }
  test.each<Case>([
    { rule: "CHECK-1", says: "nothing where all is well", of: conditioner(GOOD), finds: [] },
    {
      rule: "CHECK-1",
      says: "a sum off 100 % is an error, and the rest is still looked at",
      of: conditioner({ water: "93 A", emulsifier: "8 A", first: "1 A" }),
      finds: ["error does not add up", "warning outside its use range: emulsifier"],
    },
    {
      rule: "CHECK-1",
      says: "two lines that take what is left",
      of: conditioner({ water: "qs A", oil: "qs A" }),
      finds: ["error does not add up"],
    },
    { rule: "CHECK-1", says: "no lines", of: conditioner({}), finds: ["error does not add up"] },
    {
      rule: "CHECK-4",
      says: "above the use range",
      of: conditioner({ ...GOOD, emulsifier: "7.0001 A" }),
      finds: ["warning outside its use range: emulsifier"],
    },
    {
      rule: "CHECK-4",
      says: "at the ends of the use range",
      of: conditioner({ ...GOOD, emulsifier: "7 A" }),
      finds: [],
    },
    {
      rule: "CHECK-4",
      says: "below it, over a premix and a line together",
      of: conditioner({ ...GOOD, emulsifier: "4 A", "=half": "1.98 A" }),
      beside: { formulas: [formula("half", { emulsifier: "50", oil: "50" })] },
      finds: ["warning outside its use range: emulsifier"],
    },
    {
      rule: "CHECK-5",
      says: "a target pH above a window",
      of: conditioner(GOOD, { phFrom: decimal("5.5"), phTo: decimal("6.1") }),
      finds: ["warning pH outside its window: first"],
    },
    {
      rule: "CHECK-5",
      says: "exactly at its end",
      of: conditioner(GOOD, { phFrom: null, phTo: decimal("6") }),
      finds: [],
    },
    {
      rule: "CHECK-5",
      says: "no target, and a material with a window",
      of: conditioner(GOOD, { phFrom: null, phTo: null }),
      finds: ["note no target pH: first"],
    },
    {
      rule: "CHECK-6",
      says: "water, also in a premix, and no preservative",
      of: conditioner({ oil: "qs A", "=wet": "10 A" }),
      beside: { formulas: [formula("wet", { water: "50", oil: "50" })] },
      finds: ["warning water and no preservative"],
    },
    { rule: "CHECK-6", says: "no water needs none", of: conditioner({ oil: "qs A" }), finds: [] },
    {
      rule: "CHECK-6",
      says: "materials of which nobody has said",
      of: conditioner({ oil: "qs A" }),
      beside: { materials: [material("oil")] },
      finds: ["note nothing marked as water or preservative"],
    },
    {
      rule: "CHECK-7",
      says: "a phase at the addition limit",
      of: conditioner(
        { ...GOOD, active: "1 C" },
        {
          phases: [
            { name: "A", temperature: decimal("75") },
            { name: "C", temperature: decimal("40") },
          ],
        },
      ),
      finds: ["error too hot for it: active"],
    },
    { rule: "CHECK-7", says: "just below it", of: conditioner({ ...GOOD, active: "1 C" }), finds: [] },
    {
      rule: "CHECK-7",
      says: "what a premix holds, in the phase that it goes into",
      of: conditioner({ ...GOOD, "=cool": "1 A" }),
      beside: {
        formulas: [
          {
            ...formula("cool", { active: "10", oil: "90" }),
            phases: PHASES,
            lines: conditioner({ active: "10 C", oil: "90 C" }).lines,
          },
        ],
      },
      finds: ["error too hot for it: active"],
    },
    {
      rule: "CHECK-7",
      says: "what was in a hot phase of the premix",
      of: conditioner({ ...GOOD, "=hot": "1 C" }),
      beside: {
        formulas: [
          { ...formula("hot", {}), phases: PHASES, lines: conditioner({ active: "10 A", oil: "90 C" }).lines },
        ],
      },
      finds: ["error too hot for it: active"],
    },
    {
      rule: "CHECK-7",
      says: "a phase whose temperature nobody has said",
      of: conditioner({ ...GOOD, active: "1 D" }),
      finds: ["note phase without a temperature: active"],
    },
    {
      rule: "CHECK-7",
      says: "a step that goes above the limit",
      of: conditioner(
        { ...GOOD, active: "1 C" },
        { steps: [{ phase: "C", text: "Warm it up", temperature: decimal("45"), minutes: null, caution: null }] },
      ),
      finds: ["note a step is hotter: active"],
    },
    {
      rule: "CHECK-2",
      says: "over a maximum that the maker copied, two materials with the substance together",
      of: conditioner({ ...GOOD, one: "0.4 A", two: "0.4 A" }, { market: "GB", use: "leave-on" }),
      beside: {
        materials: [
          ...ON_THE_BENCH,
          material("one", { limits: [limit("GB", { use: "leave-on" })], role: "neither" }),
          material("two", {
            limits: [limit("GB", { substance: " substance", countsAs: decimal("0.3") })],
            role: "neither",
          }),
        ],
      },
      finds: ["error over a legal maximum", "error over a legal maximum", "note no published maxima"],
    },
    {
      rule: "CHECK-2",
      says: "the maxima of another market say nothing",
      of: conditioner({ ...GOOD, one: "0.6 A" }, { market: "US" }),
      beside: { materials: [...ON_THE_BENCH, material("one", { limits: [limit("GB")], role: "neither" })] },
      finds: ["note no published maxima"],
    },
    ...MARKETS.map((market) => ({
      rule: "CHECK-2",
      says: `whether published maxima are held for ${market}`,
      of: conditioner(GOOD, { market }),
      finds: market === "EU" ? [] : ["note no published maxima"],
    })),
    {
      rule: "CHECK-2",
      says: "nothing of a market before anything goes in",
      of: conditioner({}, { market: "US" }),
      finds: ["error does not add up"],
    },
    {
      rule: "CHECK-2",
      says: "a market that nobody chose is said, not guessed",
      of: conditioner({ ...GOOD, one: "0.6 A" }),
      beside: { materials: [...ON_THE_BENCH, material("one", { limits: [limit("GB")], role: "neither" })] },
      finds: ["note no market"],
    },
    {
      rule: "WEIGH-3",
      says: "a balance too coarse for a small batch",
      of: conditioner(GOOD),
      beside: { batch: "100" },
      finds: ["warning balance too coarse"],
    },
    {
      rule: "WEIGH-3",
      says: "and fine enough for a larger one",
      of: conditioner(GOOD),
      beside: { batch: "500" },
      finds: [],
    },
    {
      rule: "CHECK-10",
      says: "lots that expire before the product, and one that is out of date",
      of: conditioner(GOOD, { keepsDays: 365 }),
      beside: {
        lots: [
          lot("L1", "first", "10", "1", { expires: day("2026-11-24") }),
          lot("L2", "first", "10", "1", { expires: day("2027-11-24") }),
          lot("L3", "first", "10", "1", { expires: day("2027-11-25") }),
          lot("L4", "oil", "10", "1", { expires: day("2027-01-01") }),
        ],
      },
      finds: ["warning lot expires before the product: first", "note lot is out of date: first"],
    },
    {
      rule: "CHECK-10",
      says: "a sheet that should have been looked at again",
      of: conditioner({ ...GOOD, oily: "1 A" }),
      beside: {
        materials: [
          ...ON_THE_BENCH,
          material("oily", {
            role: "neither",
            flammable: true,
            sheets: [
              { kind: "safety", reference: "old", reviewBy: day("2026-11-24") },
              { kind: "analysis", reference: "new", reviewBy: today },
            ],
          }),
        ],
      },
      finds: ["note sheet to review: oily", "note caution: oily"],
    },
  ])("[$rule] $says", ({ of, beside, finds }) => {
    expect(found(of, beside).map(inShort)).toEqual(finds);
  });

  test("[CHECK-7] the first preservative swapped for the second moves to the cool phase's checks", () => {
    expect(found(conditioner({ ...GOOD })).map(inShort)).toEqual([]);
    expect(found(conditioner({ water: "qs A", emulsifier: "6 A", second: "1 A" })).map(inShort)).toEqual([
      "error too hot for it: second",
    ]);
    expect(found(conditioner({ water: "qs A", emulsifier: "6 A", second: "1 C" })).map(inShort)).toEqual([]);
  });

  test("[CHECK-8] a warning whose figure changes is another one", () => {
    const key = (share: string) => found(conditioner({ ...GOOD, emulsifier: `${share} A` })).map(findingKey);
    expect(key("8")).toEqual(key("8"));
    expect(key("8")).not.toEqual(key("8.1"));
  });
});

test("[CHECK-1] a formula of 25 lines with premixes is checked in less than 5 ms", () => {
  const ids = Array.from({ length: 40 }, (_, at) => `m${String(at)}`);
  const materials = ids.map((id, at) =>
    material(id, {
      role: at === 0 ? "water" : "neither",
      useMax: percent("1"),
      addBelow: decimal("40"),
      phTo: decimal("6"),
      composition: [{ inci: "Sodium Benzoate", share: percent("100") }],
      limits: [limit("EU"), limit("GB")],
    }),
  );
  const premix = (id: string, from: number): Formula =>
    formula(id, { ...Object.fromEntries(ids.slice(from, from + 10).map((one) => [one, "1"])), m0: "qs" });
  const premixes = [premix("p1", 1), premix("p2", 11), premix("p3", 21)];
  const lines = {
    ...Object.fromEntries(ids.slice(1, 22).map((one) => [one, "2"])),
    "=p1": "5",
    "=p2": "5",
    "=p3": "5",
    m0: "qs",
  };
  const of: Formula = { ...formula("f", lines), market: "EU", phases: PHASES, phTo: decimal("7"), keepsDays: 365 };
  expect(of.lines).toHaveLength(25);
  const lots = ids.map((id) => lot(`L-${id}`, id, "10", "1", { expires: day("2027-01-01") }));
  const checked = () => found(of, { formulas: premixes, materials, lots, batch: "1000" });
  const times = Array.from({ length: 30 }, () => processorMs(checked));
  expect(checked().length).toBeGreaterThan(60);
  expect(Math.min(...times)).toBeLessThan(5);
});
