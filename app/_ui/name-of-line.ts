/** How a line of a formula is named: by its material, or by its premix. */
import type { FormulaLine, Workshop } from "@/lib/domain/workshop";

export function nameOfLine({
  materials,
  formulas,
}: Pick<Workshop, "materials" | "formulas">): (of: FormulaLine["of"]) => string {
  const byKind = {
    material: new Map(materials.map(({ id, name }) => [id, name])),
    formula: new Map(formulas.map(({ id, name }) => [id, name])),
  };
  return ({ kind, id }) => byKind[kind].get(id) ?? id;
}
