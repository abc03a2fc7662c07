import { dirname, join, resolve } from "node:path";
import ts from "typescript";
import { beforeAll, describe, expect, test } from "vitest";

const PROJECT = resolve(import.meta.dirname, "../..");

/** What every snippet begins with: one value of each unit, and functions that ask for one. */
const PREAMBLE = `
import { type Day, daysAfter, daysBetween } from "@/lib/domain/calendar";
import { type Fraction, whole } from "@/lib/domain/fraction";
import { type CurrencyCode, decimalsOf, type MicroUnits, totalMoney } from "@/lib/domain/money";
import { type DecimalText, decimalValue, type Density, difference, larger, type Measured, type Micrograms, type Packs,
  type PartsPerMillion, type Pieces, quantity, shareOf, type Stock, sum, type Units } from "@/lib/domain/quantity";
import type { Basis, PriceSource } from "@/lib/domain/plan-figures";
import type { Lot, Material, Workshop } from "@/lib/domain/workshop";
declare const mass: Micrograms; declare const count: Pieces; declare const share: PartsPerMillion;
declare const density: Density; declare const units: Units; declare const packs: Packs; declare const money: MicroUnits;
declare const day: Day; declare const stock: Stock; declare const fraction: Fraction; declare const text: DecimalText;
declare const currency: CurrencyCode; declare const lot: Lot; declare const material: Material;
declare const workshop: Workshop; declare const basis: Basis; declare const price: PriceSource;
declare const measured: Measured<Micrograms>;
export {};
`;

const NOT_ASSIGNABLE = 2322;
const NOT_AN_ARGUMENT = 2345;
const READ_ONLY = 2540;
const NO_OVERLAP = 2367;
const NO_SUCH_KEY = 2339;
const MIXED_ARITHMETIC = 2365;
const ENDS_WITHOUT_RETURN = 2366;
const POSSIBLY_NULL = 18047;
const LACKS_KEYS = 2739;

const MIX_UPS: readonly { readonly rule: string; readonly says: string; readonly code: number; readonly is: string }[] =
  [
    { rule: "QTY-1", says: "mass and pieces add up", code: NOT_AN_ARGUMENT, is: "sum(mass, count);" },
    { rule: "QTY-1", says: "pieces are taken from mass", code: NOT_AN_ARGUMENT, is: "difference(mass, count);" },
    { rule: "QTY-1", says: "mass is compared with pieces", code: NOT_AN_ARGUMENT, is: "larger(mass, count);" },
    { rule: "QTY-1", says: "pieces stand for mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = count;" },
    { rule: "QTY-1", says: "a bare whole number is mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = 5n;" },
    { rule: "QTY-1", says: "a number is mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = 5;" },
    {
      rule: "QTY-1",
      says: "a sum by hand is still mass",
      code: NOT_ASSIGNABLE,
      is: "const it: Micrograms = mass + mass;",
    },
    { rule: "QTY-1", says: "what the shelf holds is mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = stock;" },
    { rule: "QTY-1", says: "density is mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = density;" },
    {
      rule: "QTY-1",
      says: "a fill is typed in pieces",
      code: NOT_ASSIGNABLE,
      is: "const it: Measured<Pieces> = measured;",
    },
    {
      rule: "QTY-1",
      says: "an amount as typed is its mass",
      code: NOT_ASSIGNABLE,
      is: "const it: Micrograms = measured;",
    },
    { rule: "QTY-3", says: "any text is a plain decimal", code: NOT_AN_ARGUMENT, is: 'decimalValue("1e3");' },
    { rule: "QTY-4", says: "mass is mixed with a float", code: MIXED_ARITHMETIC, is: "const it = mass * 1.5;" },
    { rule: "QTY-4", says: "an exact fraction is mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = fraction;" },
    { rule: "QTY-7", says: "parts per million are mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = share;" },
    { rule: "QTY-7", says: "mass is a share", code: NOT_AN_ARGUMENT, is: "shareOf(mass);" },
    { rule: "QTY-7", says: "a bare whole number is a share", code: NOT_AN_ARGUMENT, is: "shareOf(50_000n);" },
    { rule: "MONEY-1", says: "money and mass add up", code: NOT_AN_ARGUMENT, is: "sum(money, mass);" },
    { rule: "MONEY-1", says: "mass is counted as money", code: NOT_ASSIGNABLE, is: "totalMoney([mass]);" },
    { rule: "MONEY-1", says: "a bare whole number is money", code: NOT_ASSIGNABLE, is: "const it: MicroUnits = 100n;" },
    { rule: "MONEY-1", says: "units are money", code: NOT_ASSIGNABLE, is: "const it: MicroUnits = units;" },
    { rule: "MONEY-2", says: "any text is a currency", code: NOT_AN_ARGUMENT, is: 'decimalsOf("pounds");' },
    { rule: "MONEY-3", says: "money is an exact fraction", code: LACKS_KEYS, is: "const it: Fraction = money;" },
    { rule: "NEED-1", says: "packs are units of product", code: NOT_ASSIGNABLE, is: "const it: Units = packs;" },
    { rule: "NEED-1", says: "units of product are pieces", code: NOT_ASSIGNABLE, is: "const it: Pieces = units;" },
    { rule: "DAY-1", says: "a number of days is a day", code: NOT_ASSIGNABLE, is: "const it: Day = 7;" },
    {
      rule: "DAY-1",
      says: "the days between are a day",
      code: NOT_ASSIGNABLE,
      is: "const it: Day = daysBetween(day, day);",
    },
    { rule: "DAY-1", says: "days are counted from a number", code: NOT_AN_ARGUMENT, is: "daysAfter(20_000, 1);" },
    { rule: "DAY-1", says: "a day by hand is still a day", code: NOT_ASSIGNABLE, is: "const it: Day = day + 1;" },
    { rule: "DAY-1", says: "an instant is a day", code: NOT_ASSIGNABLE, is: "const it: Day = new Date();" },
    { rule: "DAY-1", says: "a day is mass", code: NOT_ASSIGNABLE, is: "const it: Micrograms = day;" },
    { rule: "LOT-1", says: "a lot is changed where it stands", code: READ_ONLY, is: "lot.remaining = stock;" },
    { rule: "LOT-1", says: "a lot is put on the shelf's own list", code: NO_SUCH_KEY, is: "workshop.lots.push(lot);" },
    { rule: "LOT-1", says: "expiry is taken to be there", code: POSSIBLY_NULL, is: "const it = lot.expires - 1;" },
    {
      rule: "QTY-5",
      says: "a density is taken to be there",
      code: NOT_ASSIGNABLE,
      is: "const it: Density = material.density;",
    },
    { rule: "COST-1", says: "a basis that there is not", code: NO_OVERLAP, is: 'const it = basis === "last paid";' },
    {
      rule: "COST-3",
      says: "a kind of price is forgotten",
      code: ENDS_WITHOUT_RETURN,
      is: 'export function it(): string { switch (price.kind) { case "offer": return "a"; case "average": return "b"; } }',
    },
  ];

/** The same deeds with the right units: what shows that a snippet fails for its unit and for nothing else. */
const RIGHT: readonly { readonly says: string; readonly is: string }[] = [
  { says: "mass and mass", is: "export const it: Micrograms = sum(mass, difference(mass, larger(mass, mass)));" },
  { says: "pieces and pieces", is: "export const it: Pieces = sum(count, count);" },
  { says: "a named unit", is: "export const it: Micrograms = quantity<Micrograms>(5n);" },
  { says: "money", is: "export const it: MicroUnits = totalMoney([money, sum(money, money)]);" },
  { says: "shares and fractions", is: "export const it: Fraction = shareOf(share); export const one = whole(1n);" },
  { says: "days", is: "export const it: Day = daysAfter(day, daysBetween(day, day));" },
  {
    says: "text that was checked",
    is: "export const it = decimalValue(text); export const two = decimalsOf(currency);",
  },
  {
    says: "every kind of price",
    is: 'export function it(): string { switch (price.kind) { case "offer": return "a"; case "average": return "b"; case "shelf": return "c"; } }',
  },
];

describe("what must not compile", () => {
  let faults: ReadonlyMap<string, readonly number[]>;
  beforeAll(() => {
    faults = compile(new Map([...MIX_UPS, ...RIGHT].map(({ is }) => [is, PREAMBLE + is])));
  });

  test.each(MIX_UPS)("[$rule] refused: $says", ({ is, code }) => {
    expect(faults.get(is)).toEqual([code]);
  });

  test.each(RIGHT)("compiles: $says", ({ is }) => {
    expect(faults.get(is)).toEqual([]);
  });
});

/** Compiles snippets as if they were files of the project and gives the error codes of each. */
function compile(snippets: ReadonlyMap<string, string>): ReadonlyMap<string, readonly number[]> {
  const read = ts.readConfigFile(join(PROJECT, "tsconfig.json"), (path) => ts.sys.readFile(path));
  const parsed = ts.parseJsonConfigFileContent(read.config, ts.sys, PROJECT);
  // A snippet ends in a value that nobody uses; that is not the fault that is looked for.
  const options = { ...parsed.options, noUnusedLocals: false, incremental: false, types: [] };

  const paths = new Map(
    [...snippets.keys()].map((is, index) => [is, join(PROJECT, `tests/types/snippet-${String(index)}.ts`)]),
  );
  const texts = new Map([...paths].map(([is, path]) => [path, snippets.get(is) ?? ""]));
  const host = ts.createCompilerHost(options);
  const readFile = host.readFile.bind(host);
  const fileExists = host.fileExists.bind(host);
  const getSourceFile = host.getSourceFile.bind(host);
  host.fileExists = (path) => texts.has(resolve(path)) || fileExists(path);
  host.readFile = (path) => texts.get(resolve(path)) ?? readFile(path);
  host.getSourceFile = (path, languageVersion, ...rest) => {
    const text = texts.get(resolve(path));
    return text === undefined
      ? getSourceFile(path, languageVersion, ...rest)
      : ts.createSourceFile(path, text, languageVersion);
  };
  host.getCurrentDirectory = () => dirname(join(PROJECT, "package.json"));

  const program = ts.createProgram([...paths.values()], options, host);
  return new Map(
    [...paths].map(([is, path]) => {
      const source = program.getSourceFile(path);
      const found = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
      return [is, found.map(({ code }) => code)];
    }),
  );
}
