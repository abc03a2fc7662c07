/** A basket problem in parts that do not touch each other, each smaller than the whole. @rule BUY-5 */
import type { BasketProblem, BasketSupplier } from "./basket-problem";

/**
 * Materials touch where they share a supplier that charges for shipping or asks for a smallest order; any other
 * supplier may be ordered from for each material by itself. The parts' least-cost baskets together are the whole's.
 * @returns the parts, in the order of their first materials
 */
export function componentsOf(problem: BasketProblem): readonly BasketProblem[] {
  const couplingById = new Map(problem.suppliers.map((supplier) => [supplier.id, couples(supplier)]));
  const partOf = new Map<string, string>(problem.materials.map(({ id }) => [id, id]));
  const rootOf = (id: string): string => {
    let root = id;
    for (let next = partOf.get(root); next !== undefined && next !== root; next = partOf.get(root)) root = next;
    partOf.set(id, root);
    return root;
  };
  const firstOfSupplier = new Map<string, string>();
  for (const { supplier, material } of problem.offers) {
    if (!couplingById.get(supplier)) continue;
    const first = firstOfSupplier.get(supplier);
    if (first === undefined) firstOfSupplier.set(supplier, material);
    else partOf.set(rootOf(material), rootOf(first));
  }
  const roots = [...new Set(problem.materials.map(({ id }) => rootOf(id)))];
  return roots.map((root) => {
    const materials = problem.materials.filter(({ id }) => rootOf(id) === root);
    const ids = new Set(materials.map(({ id }) => id));
    const offers = problem.offers.filter(({ material }) => ids.has(material));
    const used = new Set(offers.map(({ supplier }) => supplier));
    return { materials, offers, suppliers: problem.suppliers.filter(({ id }) => used.has(id)) };
  });
}

/** Whether buying one material from the supplier changes what another costs there. */
export const couples = ({ shipping, minimumOrder }: BasketSupplier): boolean =>
  shipping > 0n || (minimumOrder !== null && minimumOrder > 0n);
