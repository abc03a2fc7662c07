/** What a batch was started as, and the formulas by which it is made. @rule BENCH-9, VERSION-2 */
import type { Books } from "@/lib/domain/desk";
import { versionsOf } from "@/lib/domain/formula-book/versions";
import { byId } from "@/lib/domain/index-by-id";
import { bulkOf, roundedUpFor } from "@/lib/domain/needs";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import type { Formula, Run, Workshop } from "@/lib/domain/workshop";
import type { Batch, StartedAs } from "./batch";

/** What is kept of a run when it is started as a batch. */
export function asStarted({ settings, products }: Workshop, run: Run): StartedAs {
  const product = byId("product", products)(run.product);
  return {
    workshop: settings.name,
    product: product.name,
    fill: product.fill,
    bulk: quantity<Micrograms>(roundedUpFor(bulkOf(product), run.units)),
    step: settings.balanceStep.quantity,
  };
}

/** As it was started; of a batch of before that was kept, as the Book has it now. */
export const startedAs = ({ as, run }: Batch, workshop: Workshop): StartedAs => as ?? asStarted(workshop, run);

/** What a formula of the batch was called when it was started; else what it is called now. */
export const formulaCalled = ({ versions }: Batch, { formulas }: Workshop, formula: string): string =>
  versions.find((used) => used.formula === formula)?.called ??
  formulas.find(({ id }) => id === formula)?.name ??
  formula;

/** The formula that the batch is made by: the first of its versions. */
export const formulaOfBatch = ({ versions, run }: Batch, { products }: Workshop): string =>
  versions[0]?.formula ?? byId("product", products)(run.product).formula;

/** That formula in the version by which the batch was started. @rule VERSION-2 */
export const formulaAsStarted = (books: Books, batch: Batch): Formula =>
  partAsStarted(books, batch, formulaOfBatch(batch, books.workshop));

/** The same of any formula that the batch is made by: a premix too. @rule VERSION-2 */
export function partAsStarted({ workshop, desk }: Books, batch: Batch, part: string): Formula {
  const formula = byId("formula", workshop.formulas)(part);
  const number = batch.versions.find((used) => used.formula === formula.id)?.number;
  return versionsOf(desk, formula).find((version) => version.number === number)?.as ?? formula;
}
