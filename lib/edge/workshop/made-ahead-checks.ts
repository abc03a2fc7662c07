/** Premixes made ahead, held against one another: what makes what, and no way round. @rule AHEAD-1, AHEAD-2 */
import type { Formula, Product } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { called, referredTo } from "@/lib/edge/record-reading";
import { chainText } from "./formula-chains";
import type { FormulaIndex } from "./formulas";
import { type MaterialIndex, subjectOf } from "./materials";
import type { ProductIndex } from "./products";

/** What each product that makes a material says of it: a material weighed, made by it alone, of a formula that no other makes ahead. */
export function checkMadeInto(products: ProductIndex, materials: MaterialIndex, faults: FaultList): void {
  const [byMaterial, byFormula] = [new Map<string, string>(), new Map<string, string>()];
  for (const entry of products.byId.values()) {
    const { madeInto, formula } = entry.fields;
    if (madeInto === undefined || madeInto === null) continue;
    const path = `${entry.path}.madeInto`;
    const material = referredTo(materials, "material", madeInto, path, faults);
    const subject = subjectOf(material);
    if (subject.measure === "count") {
      faults.tell(path, `${subject.called} is counted; what a formula makes is weighed`);
    }
    const other = byMaterial.get(madeInto);
    if (other !== undefined)
      faults.tell(path, `${subject.called} is made by ${other} already; one product at most makes a material`);
    byMaterial.set(madeInto, other ?? entry.path);
    if (formula === undefined) continue;
    const ahead = byFormula.get(formula);
    if (ahead !== undefined)
      faults.tell(path, `${ahead} makes a material of this formula already; one product at most may`);
    byFormula.set(formula, ahead ?? entry.path);
  }
}

/**
 * Tells a formula that lies below itself where it is made ahead: as a premix, or as the material made of it. Cycles of
 * premixes alone are told with the formulas (FORMULA-2), and then nothing is told here.
 */
export function checkAheadCycles(
  formulas: readonly Formula[],
  products: readonly Product[],
  index: { readonly formulas: FormulaIndex; readonly products: ProductIndex; readonly materials: MaterialIndex },
  faults: FaultList,
): void {
  const makerOf = new Map(
    products.flatMap((product) => (product.madeInto === null ? [] : [[product.madeInto, product]])),
  );
  if (makerOf.size === 0) return;
  const linesOf = new Map(formulas.map(({ id, lines }) => [id, lines]));
  const done = new Set<string>();

  // On a stack of its own, so that no chain is too long for it.
  function walk(start: string): void {
    const trail: Step[] = [{ formula: start, through: null, at: 0 }];
    const onTrail = new Set([start]);
    for (let step = trail.at(-1); step !== undefined; step = trail.at(-1)) {
      const line = linesOf.get(step.formula)?.[step.at];
      step.at += 1;
      if (line === undefined) {
        done.add(step.formula);
        onTrail.delete(step.formula);
        trail.pop();
        continue;
      }
      const maker = line.of.kind === "material" ? makerOf.get(line.of.id) : undefined;
      const below = line.of.kind === "formula" ? line.of.id : maker?.formula;
      if (below === undefined || done.has(below)) continue;
      const next: Step = { formula: below, through: maker ?? null, at: 0 };
      if (onTrail.has(below)) tell([...trail.slice(trail.findIndex(({ formula }) => formula === below)), next]);
      else {
        trail.push(next);
        onTrail.add(below);
      }
    }
  }

  function tell(round: readonly Step[]): void {
    const maker = round.slice(1).find(({ through }) => through !== null)?.through;
    if (!maker) return;
    const entry = index.products.byId.get(maker.id);
    const material = index.materials.byId.get(maker.madeInto ?? "");
    if (!entry || !material) return;
    const path = chainText(round.map(({ formula }) => formula));
    faults.tell(
      `${entry.path}.madeInto`,
      `cycle: ${path}, through ${called("material", material)}, which is made ahead of one of them; take it out of that formula, or do not make it ahead`,
    );
  }

  for (const { id } of formulas) if (!done.has(id)) walk(id);
}

/** A formula on the way down, the product whose material led to it (null for a premix), and the line to go on with. */
interface Step {
  readonly formula: string;
  readonly through: Product | null;
  at: number;
}
