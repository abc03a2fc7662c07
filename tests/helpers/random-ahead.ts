/** Invented workshops in which some premixes are made ahead. */
import fc from "fast-check";
import { chance, dateAfter, type Dice, diceFrom, perhaps, pick, several } from "./random-dice";
import { REAL_TODAY, type Roughly, workshops } from "./random-workshop";
import type { FileFormula, FileLot, FileMaterial, FileProduct, WorkshopFile } from "../second/file-shape";

const GRAMS = ["0.0005", "0.5", "4", "30", "100", "250", "1200", "5000", "20000"];

/** Whether a formula holds a formula or material, through premixes and what is made ahead of them as well. */
function holds(file: WorkshopFile, formula: string, wanted: string): boolean {
  const lines = file.formulas.find(({ id }) => id === formula)?.lines ?? [];
  return lines.some(({ material, formula: premix }) => {
    const made = premix ?? file.products.find(({ madeInto }) => madeInto === material)?.formula;
    return material === wanted || made === wanted || (made !== undefined && holds(file, made, wanted));
  });
}

function lotsOf(dice: Dice, material: string, today: string): FileLot[] {
  return several(dice.whole(0, 3), (at) => ({
    id: `${material}, lot ${String(at)}`,
    material,
    received: dateAfter(today, -dice.whole(0, 30)),
    ...perhaps(dice, "expires", 50, () => dateAfter(today, dice.whole(-3, 40))),
    remaining: `${pick(dice, GRAMS)} g`,
    value: pick(dice, ["0", "1.5", "12.345678"]),
  }));
}

/** One premix more that is made ahead, with lots of its material, and that material used elsewhere as well. */
function withOne(file: WorkshopFile, dice: Dice, premix: FileFormula, at: number): WorkshopFile {
  const id = `made ahead ${String(at)}`;
  const today = file.workshop.today ?? REAL_TODAY;
  const material: FileMaterial = { id, name: id, kind: "ingredient", measure: "mass" };
  const maker: FileProduct = {
    id: `maker ${String(at)}`,
    name: `Maker ${String(at)}`,
    formula: premix.id,
    fill: `${pick(dice, GRAMS)} g`,
    usualRun: dice.whole(1, 9),
    madeInto: id,
  };
  const orders = file.orders.map((order) =>
    chance(dice, 25)
      ? { ...order, lines: [...order.lines, { material: id, quantity: `${pick(dice, GRAMS)} g`, cost: "2" }] }
      : order,
  );
  const products = file.products.map((product) =>
    chance(dice, 15) ? { ...product, perRun: [...(product.perRun ?? []), { material: id, amount: "3.3 g" }] } : product,
  );
  const ahead: WorkshopFile = {
    ...file,
    version: 4,
    materials: [...file.materials, chance(dice, 25) ? { ...material, safetyStock: "20 g" } : material],
    lots: [...file.lots, ...lotsOf(dice, id, today)],
    orders,
    products: [...products, maker],
  };
  // As an ordinary material of another formula, where that goes round nowhere.
  const formulas = ahead.formulas.map((formula): FileFormula => {
    if (formula === premix || holds(ahead, premix.id, formula.id) || !chance(dice, 25)) return formula;
    const place = formula.lines.findIndex((line) => line.material !== undefined);
    const line = formula.lines[place];
    return line === undefined
      ? formula
      : { ...formula, lines: formula.lines.with(place, { ...line, material: id, formula: undefined }) };
  });
  return { ...ahead, formulas: formulas.map((formula) => ({ ...formula, lines: formula.lines.map(withoutNothing) })) };
}

const withoutNothing = (line: FileFormula["lines"][number]): FileFormula["lines"][number] =>
  Object.fromEntries(Object.entries(line).filter(([, value]) => value !== undefined)) as FileFormula["lines"][number];

/** The workshop with some of its premixes made ahead, and the maker's runs among the others. */
export function withMadeAhead(file: WorkshopFile, dice: Dice): WorkshopFile {
  const premixes = file.formulas.filter(({ id }) =>
    file.formulas.some(({ lines }) => lines.some(({ formula }) => formula === id)),
  );
  let ahead = file;
  for (const [at, { id }] of premixes.entries()) {
    const premix = ahead.formulas.find((formula) => formula.id === id);
    if (premix !== undefined && chance(dice, 75)) ahead = withOne(ahead, dice, premix, at);
  }
  const makers = ahead.products.filter(({ madeInto }) => typeof madeInto === "string");
  const runs = makers.map(({ id }, at) => ({
    id: `run of maker ${String(at)}`,
    product: id,
    date: dateAfter(file.workshop.today ?? REAL_TODAY, dice.whole(0, 10)),
    units: dice.whole(1, 5),
  }));
  return { ...ahead, runs: [...ahead.runs, ...runs] };
}

/** Invented workshops; most of those that have premixes make some ahead. */
export const aheadWorkshops = (roughly: Roughly = "small"): fc.Arbitrary<WorkshopFile> =>
  fc.tuple(workshops(roughly), fc.nat()).map(([file, seed]) => withMadeAhead(file, diceFrom(seed)));
