/** By which versions a run is made that may draw premixes made ahead. @rule VERSION-2, VERSION-6 */
import { openedFrom } from "@/lib/domain/ahead-needs";
import type { Books, ClosedRun } from "@/lib/domain/desk";
import { byId } from "@/lib/domain/index-by-id";
import { aheadBook } from "@/lib/domain/made-ahead";
import type { Run } from "@/lib/domain/workshop";
import type { VersionUsed } from "./version-record";
import { versionsUsed } from "./versions";

/** What a run draws of a lot of a material. */
interface Drawn {
  readonly lot: string;
  readonly quantity: bigint;
}

export interface RunDrawing {
  readonly run: Run;
  readonly draws: readonly Drawn[];
}

/**
 * The lots that a run draws in place of premixes, and the premixes of which it opens nothing.
 * @rule AHEAD-3
 */
export function potsOfRun({ workshop }: Books, { run, draws }: RunDrawing) {
  const product = byId("product", workshop.products)(run.product);
  const opened = aheadBook(workshop)?.openedOf(product) ?? null;
  if (opened === null) return { lots: [], untouched: new Set<string>() };
  const materialOf = new Map(workshop.lots.map(({ id, material }) => [id, material]));
  const drawnOf = (material: string): readonly Drawn[] => draws.filter(({ lot }) => materialOf.get(lot) === material);
  const { given, untouched } = openedFrom(opened, run.units, ({ id }) =>
    drawnOf(id).reduce((sum, { quantity }) => sum + quantity, 0n),
  );
  return { lots: given.flatMap(({ id }) => drawnOf(id).map(({ lot }) => lot)), untouched };
}

/**
 * The versions of a run: those that stand of what it makes or opens, and those that its pots were made by.
 * @param makers  ids of the runs that took of the lots which it draws in place of premixes, or gave them
 * @rule VERSION-6
 */
export function versionsOfRun(books: Books, drawing: RunDrawing, makers: readonly string[]): readonly VersionUsed[] {
  const { workshop, desk } = books;
  const productOf = byId("product", workshop.products);
  const { lots, untouched } = potsOfRun(books, drawing);
  const inPots = new Set(lots);
  const potted = new Set(workshop.lots.filter(({ id }) => inPots.has(id)).map(({ material }) => material));
  const gave = ({ run }: ClosedRun): boolean =>
    makers.includes(run.id) && potted.has(productOf(run.product).madeInto ?? "");
  const used = [
    ...versionsUsed(books, productOf(drawing.run.product).formula, untouched),
    ...desk.closedRuns.filter(gave).flatMap(({ versions }) => versions),
  ];
  return [...new Map(used.map((version) => [`${String(version.number)} ${version.formula}`, version])).values()];
}
