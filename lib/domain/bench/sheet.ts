/** What a batch is to be weighed as, frozen when it is started. @rule BENCH-1, WEIGH-1 to WEIGH-6 */
import { byId } from "@/lib/domain/index-by-id";
import { isUsable } from "@/lib/domain/lots";
import { bulkOf, exactFor } from "@/lib/domain/needs";
import type { Day } from "@/lib/domain/calendar";
import { weighUpWithPremixes } from "@/lib/domain/formula-book/weigh-up-premixes";
import type { Formula, FormulaLine, Run, Workshop } from "@/lib/domain/workshop";
import type { SheetLine } from "./batch";

/**
 * The lines of the sheet of a run: premixes that are made on the way first, then the formula. A premix of which enough
 * stands made ahead is weighed from its pot, as one line.
 * @param day  on which lots must be usable
 */
export function sheetFor(workshop: Workshop, run: Run, day: Day): readonly SheetLine[] {
  const product = byId("product", workshop.products)(run.product);
  const step = workshop.settings.balanceStep.quantity;
  const bulk = exactFor(bulkOf(product), run.units);
  const weighed = (formulas: readonly Formula[]) => weighUpWithPremixes(formulas, product.formula, bulk, step);
  const asked = weighed(workshop.formulas);
  const pots = potsThatCover(
    workshop,
    asked.flatMap(({ targets }) => targets),
    day,
  );
  const formulas = workshop.formulas.map((formula) => ({ ...formula, lines: formula.lines.map(fromPot(pots)) }));
  const called = namesOf(workshop);
  let key = 0;
  return [...weighed(formulas)].reverse().flatMap(({ formula, targets }) =>
    targets.map(({ line: { of, phase }, target, tolerance }) => ({
      key: String((key += 1)),
      part: formula.id,
      of,
      called: called(of),
      phase,
      target,
      tolerance,
    })),
  );
}

const namesOf =
  ({ materials, formulas }: Workshop) =>
  ({ kind, id }: FormulaLine["of"]): string =>
    kind === "material" ? byId("material", materials)(id).name : byId("formula", formulas)(id).name;

/** The material that each premix becomes, where the shelf holds all that the sheet asks of it. @rule AHEAD-3 */
function potsThatCover(
  { products, lots }: Workshop,
  targets: readonly { readonly line: FormulaLine; readonly target: bigint }[],
  day: Day,
): ReadonlyMap<string, string> {
  const pots = products.flatMap(({ formula, madeInto }): readonly (readonly [string, string])[] => {
    if (madeInto === null) return [];
    const asked = targets
      .filter(({ line: { of } }) => of.kind === "formula" && of.id === formula)
      .reduce((sum, { target }) => sum + target, 0n);
    const there = lots
      .filter((lot) => lot.material === madeInto && isUsable(lot, day))
      .reduce((sum, { remaining }) => sum + remaining, 0n);
    return asked > 0n && there >= asked ? [[formula, madeInto]] : [];
  });
  return new Map(pots);
}

const fromPot =
  (pots: ReadonlyMap<string, string>) =>
  (line: FormulaLine): FormulaLine => {
    const pot = line.of.kind === "formula" ? pots.get(line.of.id) : undefined;
    return pot === undefined ? line : { ...line, of: { kind: "material", id: pot } };
  };
