import { type BadFile, LEFT_OUT } from "./bench-workshop";

export const FORMULAS: readonly BadFile[] = [
  {
    rule: "FORMULA-1",
    says: "a formula without lines",
    changes: { "formulas[1].lines": [] },
    faults: ["formulas[1].lines: a formula needs at least one line"],
  },
  {
    rule: "FORMULA-1",
    says: "percents that come to less than 100",
    changes: { "formulas[1].lines[0].percent": "74.9999" },
    faults: [
      'formulas[1]: formula "base" (Base): the percents add up to 99.9999 %; without a qs line they must add up to 100 %',
    ],
  },
  {
    rule: "FORMULA-1",
    says: "percents that come to more than 100",
    changes: { "formulas[1].lines[0].percent": "75.0001" },
    faults: [
      'formulas[1]: formula "base" (Base): the percents add up to 100.0001 %; without a qs line they must add up to 100 %',
    ],
  },
  {
    rule: "FORMULA-1",
    says: "qs that comes to 0",
    changes: { "formulas[0].lines[0].percent": "70" },
    faults: ['formulas[0]: formula "balm" (Balm): qs comes out at 0 %; it must be above zero'],
  },
  {
    rule: "FORMULA-1",
    says: "qs that comes to less than 0",
    changes: { "formulas[0].lines[0].percent": "80" },
    faults: ['formulas[0]: formula "balm" (Balm): qs comes out at -10 %; it must be above zero'],
  },
  {
    rule: "FORMULA-1",
    says: "two lines of qs, and no sum beside it",
    changes: { "formulas[0].lines[0].percent": "qs" },
    faults: ['formulas[0].lines[2].percent: qs again; only one line of formula "balm" (Balm) can take what is left'],
  },
  {
    rule: "FORMULA-1",
    says: "QS is not qs",
    changes: { "formulas[0].lines[2].percent": "QS" },
    faults: ['formulas[0].lines[2].percent: unknown word "QS", write qs'],
  },
  {
    rule: "QTY-7",
    says: "a line of 0 %",
    changes: { "formulas[0].lines[0].percent": "0" },
    faults: ["formulas[0].lines[0].percent: 0 % is out of range: it must be above zero"],
  },
  {
    rule: "QTY-7",
    says: "a line of more than 100 %, and no sum beside it",
    changes: { "formulas[1].lines[0].percent": "175" },
    faults: ["formulas[1].lines[0].percent: 175 % is out of range: it must be at most 100"],
  },
  {
    rule: "QTY-7",
    says: "a percent with five decimals",
    changes: { "formulas[1].lines[1].percent": "25.00001" },
    faults: ["formulas[1].lines[1].percent: 25.00001 has more than 4 decimals"],
  },
  {
    rule: "QTY-7",
    says: "a percent as a number",
    changes: { "formulas[1].lines[1].percent": 25 },
    faults: ['formulas[1].lines[1].percent: must be a percent in double quotes, as "2.5", or "qs", not 25'],
  },
  {
    rule: "QTY-7",
    says: "a percent with its sign",
    changes: { "formulas[1].lines[1].percent": "25 %" },
    faults: [
      'formulas[1].lines[1].percent: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "25 %"',
    ],
  },
  {
    rule: "FORMULA-1",
    says: "a line that names nothing",
    changes: { "formulas[1].lines[0].material": LEFT_OUT },
    faults: ["formulas[1].lines[0]: material or formula is missing"],
  },
  {
    rule: "FORMULA-1",
    says: "a line that names two things",
    changes: { "formulas[0].lines[0].formula": "base" },
    faults: ["formulas[0].lines[0]: names both a material and a formula; keep one"],
  },
  {
    rule: "FORMULA-1",
    says: "a line of null",
    changes: { "formulas[0].lines[0].material": null },
    faults: ["formulas[0].lines[0].material: must be the id of a material in double quotes, not null"],
  },
  {
    rule: "FORMULA-1",
    says: "a counted material",
    changes: { "formulas[1].lines[1].material": "jar" },
    faults: ['formulas[1].lines[1].material: material "jar" (Jar 60) is counted and cannot be a percent by weight'],
  },
  {
    rule: "FORMULA-1",
    says: "a material that is not there",
    changes: { "formulas[1].lines[1].material": "gone" },
    faults: ['formulas[1].lines[1].material: no material "gone"; add it or correct the id'],
  },
  {
    rule: "FORMULA-1",
    says: "a premix that is not there",
    changes: { "formulas[0].lines[1].formula": "gone" },
    faults: ['formulas[0].lines[1].formula: no formula "gone"; add it or correct the id'],
  },
  {
    rule: "FORMULA-1",
    says: "a phase as a number",
    changes: { "formulas[0].lines[0].phase": 1 },
    faults: ['formulas[0].lines[0].phase: must be a phase in double quotes, as "A", not 1'],
  },
  {
    rule: "FORMULA-1",
    says: "an empty phase",
    changes: { "formulas[0].lines[0].phase": "" },
    faults: ["formulas[0].lines[0].phase: must not be empty; it has 1 to 200 characters"],
  },
  {
    rule: "FORMULA-1",
    says: "a line with an unknown key",
    changes: { "formulas[0].lines[0].grams": "20" },
    faults: ["formulas[0].lines[0].grams: unknown key; take it out"],
  },
  {
    rule: "FORMULA-1",
    says: "lines no list",
    changes: { "formulas[1].lines": "oil" },
    faults: ['formulas[1].lines: must be a list, not "oil"'],
  },
  {
    rule: "FILE-3",
    says: "a repeated formula",
    changes: { "formulas[2]": { id: "balm", name: "Again", lines: [{ material: "oil", percent: "100" }] } },
    faults: ['formulas[2].id: repeated id "balm"; formulas[0] has it already'],
  },
  {
    rule: "FORMULA-2",
    says: "a cycle of two",
    changes: { "formulas[1].lines[0]": { formula: "balm", percent: "75" } },
    faults: ["formulas[0]: cycle: balm > base > balm; take one of these premixes out"],
  },
  {
    rule: "FORMULA-2",
    says: "a formula in itself",
    changes: { "formulas[1].lines[0]": { formula: "base", percent: "75" } },
    faults: ["formulas[1]: cycle: base > base; take one of these premixes out"],
  },
];
