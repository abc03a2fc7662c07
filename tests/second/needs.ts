/** What a run uses of each material, in the second implementation. */
import { add, addAll, decimal, type Exact, exact, divide, multiply, percent, quantity, upward } from "./exact";
import type { FileMaterial, FileProduct, WorkshopFile } from "./file-shape";

/** The uses of one material by a run of n units, exact µg or pieces. `sure` leaves the spoilage of packaging out. */
export interface Uses {
  readonly ingredient: Exact;
  readonly packaging: Exact;
  readonly sure: Exact;
}

export const found = <T extends { readonly id: string }>(list: readonly T[], id: string): T => {
  const item = list.find((candidate) => candidate.id === id);
  if (item === undefined) throw new Error(`nothing is called ${id}`);
  return item;
};

const whole = (value: bigint): Exact => exact(value);
const rest = (share: Exact): Exact => exact(share[1] - share[0], share[1]);

/** The lines of a formula, each with its share of it. */
export function linesOf(file: WorkshopFile, formulaId: string) {
  const { lines } = found(file.formulas, formulaId);
  const typed = addAll(lines.filter((line) => line.percent !== "qs").map((line) => percent(line.percent)));
  return lines.map((line) => ({ line, share: line.percent === "qs" ? rest(typed) : percent(line.percent) }));
}

/** The share of each material in a formula, by material id: every path walked, nothing remembered. */
export function shares(file: WorkshopFile, formulaId: string): ReadonlyMap<string, Exact> {
  const sums = new Map<string, Exact>();
  for (const { line, share } of linesOf(file, formulaId)) {
    const parts = line.formula === undefined ? [[line.material, exact(1n)] as const] : [...shares(file, line.formula)];
    for (const [material, part] of parts)
      sums.set(material, add(sums.get(material) ?? exact(0n), multiply(share, part)));
  }
  return sums;
}

/** What the vessel must hold for so many units. */
export function bulkOf(file: WorkshopFile, product: FileProduct, units: bigint): Exact {
  const density = found(file.formulas, product.formula).density;
  const weighed = (text: string | null | undefined) =>
    whole(text === null || text === undefined ? 0n : quantity(text, density));
  const filled = multiply(whole(units), add(weighed(product.fill), weighed(product.overfill)));
  return divide(add(filled, weighed(product.heel)), rest(percent(product.processLoss)));
}

/** Every material that a run of `units` of the product uses, and how much. */
export function usesOf(
  file: WorkshopFile,
  product: FileProduct,
  share: ReadonlyMap<string, Exact>,
  units: bigint,
): ReadonlyMap<FileMaterial, Uses> {
  const bulk = bulkOf(file, product, units);
  const uses = new Map<FileMaterial, Uses>();
  const note = (id: string, as: "ingredient" | "packaging", planned: Exact, sure: Exact) => {
    const material = found(file.materials, id);
    const before = uses.get(material) ?? { ingredient: whole(0n), packaging: whole(0n), sure: whole(0n) };
    uses.set(material, { ...before, [as]: add(before[as], planned), sure: add(before.sure, sure) });
  };
  for (const [id, part] of share) note(id, "ingredient", multiply(bulk, part), multiply(bulk, part));
  for (const item of product.packaging ?? []) {
    const amount = whole(units * quantity(item.amount, found(file.materials, item.material).density));
    note(item.material, "packaging", divide(amount, rest(percent(item.spoilage))), amount);
  }
  for (const item of product.perRun ?? []) {
    const amount = whole(quantity(item.amount, found(file.materials, item.material).density));
    note(item.material, "packaging", amount, amount);
  }
  return uses;
}

export const needOf = (uses: Uses): bigint => upward(add(uses.ingredient, uses.packaging));
export const leastOf = (uses: Uses): bigint => upward(uses.sure);

/** Labour minutes of one unit in a usual run. */
export const minutesOf = (product: FileProduct): Exact =>
  add(
    divide(decimal(product.labourMinutesPerRun ?? "0"), whole(BigInt(product.usualRun))),
    decimal(product.labourMinutesPerUnit ?? "0"),
  );
