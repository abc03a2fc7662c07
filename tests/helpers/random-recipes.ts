/** Formulas, products and runs of invented workshops. */
import {
  chance,
  dateAfter,
  decimalText,
  type Dice,
  idsFor,
  percentText,
  perhaps,
  pick,
  several,
  shuffled,
} from "./random-dice";
import { massText, stockText } from "./random-quantities";
import type { FileFormula, FileMaterial, FileProduct, FileRun } from "../second/file-shape";

const WHOLE = 1_000_000;

/** Splits the whole into so many parts above zero, some of them as small as a part per million. */
function split(dice: Dice, parts: number): number[] {
  let rest = WHOLE;
  const shares = several(parts - 1, (index) => {
    const most = rest - (parts - 1 - index);
    const share = Math.min(
      most,
      chance(dice, 15) ? 1 : chance(dice, 50) ? dice.whole(1, 99) * 1000 : dice.whole(1, most),
    );
    rest -= share;
    return share;
  });
  return shuffled(dice, [...shares, rest]);
}

/** Formulas in file order; a formula uses only those made before it, so that there is no cycle. */
export function randomFormulas(
  dice: Dice,
  count: number,
  weighed: readonly FileMaterial[],
  mostLines: number,
): FileFormula[] {
  const depths = new Map<string, number>();
  const formulas: FileFormula[] = [];
  const isChain = mostLines <= 6 && chance(dice, 8);
  for (const [index, id] of idsFor(dice, "f", count).entries()) {
    const premixes = formulas.filter((formula) => (depths.get(formula.id) ?? 0) < 8);
    let depth = 0;
    const shares = split(dice, isChain ? 2 : dice.whole(1, mostLines));
    const qs = chance(dice, 45) ? dice.whole(0, shares.length - 1) : -1;
    const lines = shares.map((share, line) => {
      const percent = line === qs ? "qs" : percentText(dice, share);
      const phase = perhaps(dice, "phase", 50, () => pick(dice, ["A", "B", "cool down"]));
      const isPremix = premixes.length > 0 && (isChain ? line === 0 : chance(dice, mostLines > 6 ? 5 : 30));
      const premix = isPremix ? (isChain ? premixes.at(-1) : pick(dice, premixes)) : undefined;
      if (premix === undefined) return { material: pick(dice, weighed).id, percent, ...phase };
      depth = Math.max(depth, (depths.get(premix.id) ?? 0) + 1);
      return { formula: premix.id, percent, ...phase };
    });
    depths.set(id, depth);
    const density = perhaps(dice, "density", 50, () => pick(dice, ["0.98", "1", "1.012345", "0.9", "1.20"]));
    formulas.push({ id, name: `Formula ${String(index)}`, ...density, lines });
  }
  return shuffled(dice, formulas);
}

const SHARES_LOST = [30_000, 125_000, 1, 333_333, 990_000, 20_000, 0];

export function randomProduct(
  dice: Dice,
  id: string,
  formulas: readonly FileFormula[],
  materials: readonly FileMaterial[],
): FileProduct {
  const formula = pick(dice, formulas);
  const grams = pick(dice, [0.0005, 4.5, 15, 30, 50, 100, 200, 250]);
  const some = (most: number) => shuffled(dice, materials).slice(0, dice.whole(0, Math.min(most, materials.length)));
  const amount = (material: FileMaterial) =>
    stockText(dice, material.measure === "count" ? dice.whole(1, 3) : dice.whole(1, 40) / 10, material);
  return {
    id,
    name: `Product ${id}`,
    formula: formula.id,
    fill: massText(dice, grams, formula.density),
    ...perhaps(dice, "overfill", 40, () => pick(dice, ["0 g", "1 g", massText(dice, grams / 50, formula.density)])),
    ...perhaps(dice, "processLoss", 50, () => percentText(dice, pick(dice, SHARES_LOST))),
    ...perhaps(dice, "heel", 40, () => pick(dice, ["0 g", massText(dice, grams / 3, formula.density)])),
    usualRun: pick(dice, [1, 3, 7, 10, 12, 24, 48, dice.whole(1, 500)]),
    ...perhaps(dice, "packaging", 75, () =>
      some(3).map((material) => ({
        material: material.id,
        amount: amount(material),
        ...perhaps(dice, "spoilage", 60, () => percentText(dice, pick(dice, SHARES_LOST))),
      })),
    ),
    ...perhaps(dice, "perRun", 45, () =>
      some(2).map((material) => ({ material: material.id, amount: amount(material) })),
    ),
    ...perhaps(dice, "labourMinutesPerRun", 60, () => decimalText(dice, 90, 3)),
    ...perhaps(dice, "labourMinutesPerUnit", 60, () =>
      pick(dice, ["0", "1.5", "0.333333333333", decimalText(dice, 4, 4)]),
    ),
    ...perhaps(dice, "priceToShops", 50, () => decimalText(dice, 20, 2)),
    ...perhaps(dice, "priceToCustomers", 50, () => decimalText(dice, 40, 6)),
  };
}

export function randomRun(
  dice: Dice,
  id: string,
  products: readonly FileProduct[],
  today: string,
  days: number,
): FileRun {
  const when = pick(dice, [
    -dice.whole(1, 20),
    0,
    dice.whole(0, 7),
    dice.whole(0, days),
    dice.whole(0, days),
    days,
    days + dice.whole(1, 40),
  ]);
  const product = pick(dice, products);
  return {
    id,
    product: product.id,
    date: dateAfter(today, when),
    ...perhaps(dice, "sequence", 50, () => dice.whole(0, 2)),
    units: pick(dice, [
      1,
      product.usualRun,
      product.usualRun,
      dice.whole(1, 60),
      dice.whole(1, 60),
      dice.whole(1, 900),
    ]),
  };
}
