/** One state of the search: what has been decided of each supplier, and the cheapest covers under those decisions. */
import { cheapestCover, type Cover, type Effort, WHOLE_WEIGHT } from "./material-covers";
import type { ScaledProblem, ScaledSupplier } from "./scaled-problem";

/**
 * `open`: not decided, counted without shipping and without a minimum. `closed`: not ordered from. `paying`: ordered
 * from, shipping counted. `free`: ordered from with goods that waive the shipping.
 */
export type Standing = "open" | "closed" | "paying" | "free";

export interface SearchNode {
  readonly standings: readonly Standing[];
  /** The cheapest cover of each material from the suppliers that are not closed. */
  readonly covers: readonly Cover[];
  /** Shipping that is decided. */
  readonly charge: number;
  /** No basket under these decisions costs less. */
  readonly bound: number;
}

/** Packs of each material's offers, chosen, and what that comes to with shipping. */
export interface Choice {
  readonly packs: readonly (readonly number[])[];
  readonly cost: number;
}

const IN_FULL = () => WHOLE_WEIGHT;

export const costOf = (covers: readonly Cover[]): number => covers.reduce((sum, { cost }) => sum + cost, 0);

/** The node with nothing decided, or null where some material cannot be covered. */
export function rootOf(problem: ScaledProblem, effort: Effort): SearchNode | null {
  const standings = problem.suppliers.map((): Standing => "open");
  const covers: Cover[] = [];
  for (const material of problem.materials) {
    const cover = cheapestCover(material, () => true, IN_FULL, effort);
    if (cover === null) return null;
    covers.push(cover);
  }
  return { standings, covers, charge: 0, bound: costOf(covers) };
}

/** Covers by material and the suppliers that they may come from: the same question comes up in many nodes. */
export type CoverMemory = Map<string, Cover | null>[];

export const coverMemoryOf = (problem: ScaledProblem): CoverMemory =>
  problem.materials.map(() => new Map<string, Cover | null>());

/** The node with one more supplier decided, or null where some material can then not be covered. */
export function decided(
  problem: ScaledProblem,
  node: SearchNode,
  supplier: number,
  standing: Standing,
  memory: CoverMemory,
  effort: Effort,
): SearchNode | null {
  const standings = node.standings.with(supplier, standing);
  const shipping = standing === "paying" ? (problem.suppliers[supplier]?.shipping ?? 0) : 0;
  const charge = node.charge + shipping;
  if (standing !== "closed") return { ...node, standings, charge, bound: node.bound + shipping };
  const isOpen = (place: number) => standings[place] !== "closed";
  const covers: Cover[] = [];
  for (const [at, material] of problem.materials.entries()) {
    const before = node.covers[at];
    if (before && !goodsFrom(problem, at, before, supplier)) {
      covers.push(before);
      continue;
    }
    const key = material.suppliers.map((place) => (isOpen(place) ? "1" : "0")).join("");
    let cover = memory[at]?.get(key);
    if (cover === undefined) {
      cover = cheapestCover(material, isOpen, IN_FULL, effort);
      if (effort.left >= 0) memory[at]?.set(key, cover);
    }
    if (cover === null) return null;
    covers.push(cover);
  }
  return { standings, covers, charge, bound: Math.max(node.bound, charge + costOf(covers)) };
}

/** What a cover buys from one supplier. */
export function goodsFrom(problem: ScaledProblem, material: number, { packs }: Pick<Cover, "packs">, supplier: number) {
  const offers = problem.materials[material]?.offers ?? [];
  let goods = 0;
  for (const [place, offer] of offers.entries()) {
    const taken = packs[place] ?? 0;
    if (taken > 0 && offer.supplier === supplier) goods += taken * priceAt(offer.steps, taken);
  }
  return goods;
}

export const priceAt = (
  steps: readonly { readonly from: number; readonly to: number; readonly price: number }[],
  packs: number,
): number => steps.find(({ from, to }) => from <= packs && packs <= to)?.price ?? 0;

/** What each supplier is bought from. */
export function goodsBySupplier(problem: ScaledProblem, packs: readonly (readonly number[])[]): readonly number[] {
  const goods = problem.suppliers.map(() => 0);
  for (const [at, { offers }] of problem.materials.entries()) {
    for (const [place, { supplier, steps }] of offers.entries()) {
      const taken = packs[at]?.[place] ?? 0;
      if (taken > 0) goods[supplier] = (goods[supplier] ?? 0) + taken * priceAt(steps, taken);
    }
  }
  return goods;
}

/** What the supplier's goods must reach under a decision. */
export function thresholdOf({ minimum, freeFrom }: ScaledSupplier, standing: Standing): number {
  return standing === "free" ? Math.max(minimum, freeFrom) : minimum;
}

/** Shipping that goods of this size would pay. */
export const shippingAt = ({ shipping, freeFrom }: ScaledSupplier, goods: number): number =>
  goods > 0 && goods < freeFrom ? shipping : 0;
