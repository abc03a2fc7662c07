import type { BadFile } from "./bench-workshop";

/** What the checks need to know: of materials, and of formulas. */
export const FORMULA_FACTS: readonly BadFile[] = [
  {
    rule: "BENCH-11",
    says: "checks of a batch in a version that does not know them",
    changes: { version: 4, "formulas[0].checks": [{ what: "Viscosity", from: "8000" }] },
    faults: [
      "formulas[0].checks: belongs to version 5 of the file, and this file says it is version 4; write 5 there or take the key out",
    ],
  },
  {
    rule: "BENCH-11",
    says: "a check of nothing, one that is asked twice, and limits the wrong way round",
    changes: {
      version: 5,
      "formulas[0].checks": [
        { what: "Viscosity", unit: "mPa·s" },
        { what: "Smell", looks: "none" },
        { what: "Smell", looks: "of roses" },
        { what: "Solids", from: "2", to: "1.5" },
      ],
    },
    faults: [
      "formulas[0].checks[0]: asks for nothing: give limits from or to, or say what is right where it is seen",
      'formulas[0].checks[2].what: "Smell" is asked for already',
      "formulas[0].checks[3].to: must not be below 2",
    ],
  },
  {
    rule: "CHECK-11",
    says: "pH 15",
    changes: { version: 4, "materials[0].phTo": "15", "formulas[0].phFrom": "14.00000000000000000001" },
    faults: [
      "materials[0].phTo: 15 is out of range: pH goes from 0 to 14",
      "formulas[0].phFrom: 14.00000000000000000001 is out of range: pH goes from 0 to 14",
    ],
  },
  {
    rule: "CHECK-5",
    says: "a window the wrong way round",
    changes: { version: 4, "materials[0].phFrom": "6.5", "materials[0].phTo": "6.25" },
    faults: ["materials[0].phFrom: pH 6.5 is above phTo, 6.25"],
  },
  {
    rule: "CHECK-11",
    says: "a temperature that can only be °F",
    changes: { version: 4, "formulas[0].phases": [{ name: "A", temperature: "158" }] },
    faults: [
      "formulas[0].phases[0].temperature: 158 is out of range: a temperature is in °C, at most 150; convert it if it was in °F",
    ],
  },
  {
    rule: "CHECK-9",
    says: "components off 100 %",
    changes: {
      version: 4,
      "materials[0].composition": [
        { inci: "Aqua", percent: "80" },
        { inci: "Glycerin", percent: "19.9999" },
      ],
    },
    faults: ["materials[0].composition: the components add up to 99.9999 %; they must add up to 100 %"],
  },
  {
    rule: "CHECK-9",
    says: "a component twice",
    changes: {
      version: 4,
      "materials[0].composition": [
        { inci: "Aqua", percent: "50" },
        { inci: "AQUA", percent: "50" },
      ],
    },
    faults: ["materials[0].composition[1].inci: AQUA stands there already; add the two up"],
  },
  {
    rule: "CHECK-2",
    says: "a maximum of a market that nobody knows, without a source",
    changes: {
      version: 4,
      "materials[0].limits": [{ market: "Mars", substance: "x", maximum: "0.5", copied: "2026-01-01" }],
    },
    faults: [
      'materials[0].limits[0].market: must be "EU" or "GB" or "US" or "CA" or "AU", not "Mars"',
      "materials[0].limits[0].source: missing; it must be a name in double quotes",
    ],
  },
  {
    rule: "CHECK-2",
    says: "the checks of a market that nobody could choose",
    changes: { version: 4, "formulas[0].market": "Mars" },
    faults: ['formulas[0].market: must be "EU" or "GB" or "US" or "CA" or "AU", not "Mars"'],
  },
  {
    rule: "CHECK-3",
    says: "a factor that is a percent",
    changes: {
      version: 4,
      "materials[0].limits": [
        { market: "EU", substance: "x", maximum: "0.5", source: "y", countsAs: "84.7", copied: "2026-01-01" },
      ],
    },
    faults: ["materials[0].limits[0].countsAs: 84.7 is out of range: it is grams counted for each gram, at most 3"],
  },
  {
    rule: "CHECK-1",
    says: "a phase twice",
    changes: { version: 4, "formulas[0].phases": [{ name: "A" }, { name: "A", temperature: "70" }] },
    faults: ['formulas[0].phases[1].name: phase "A" stands there already'],
  },
  {
    rule: "FILE-5",
    says: "what checks need in a file of version 3",
    changes: { version: 3, "materials[0].role": "water" },
    faults: [
      "materials[0].role: belongs to version 4 of the file, and this file says it is version 3; write 4 there or take the key out",
    ],
  },
];
