import "server-only";
import { notFound } from "next/navigation";
import { type Batch, standing } from "@/lib/domain/bench/batch";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { compositions } from "@/lib/domain/formula";
import { formulasOfRun } from "@/lib/domain/label/formulas-of-run";
import type { Label } from "@/lib/domain/label/label";
import { type LabelDraft, labelDraft } from "@/lib/domain/label/label-draft";
import type { FinishedLot, Product } from "@/lib/domain/workshop";
import { readTraceBack } from "@/lib/store/ledger/ledger-answers";
import { idOf, type Query, textIn } from "../_parts/addresses";
import { booksForPage } from "../books-for-page";

export interface LabelOnPage {
  readonly books: Books;
  readonly today: Day;
  readonly label: Label;
  readonly product: Product;
  /** The finished lots that it can be printed for, the newest first, and the one that is chosen. */
  readonly lots: readonly FinishedLot[];
  readonly lot: FinishedLot | null;
  /** The lot's batch at the bench, where it was weighed there. */
  readonly batch: Batch | null;
  readonly draft: LabelDraft;
}

/** The label of the address, for the finished lot that it names: by the versions that this was made by. */
export async function labelForPage(step: string, query: Query): Promise<LabelOnPage> {
  const { books, today } = await booksForPage();
  const label = books.workshop.labels.find(({ id }) => id === idOf(step));
  const product = books.workshop.products.find(({ id }) => id === label?.product);
  if (label === undefined || product === undefined) notFound();
  const lots = books.workshop.finished
    .filter((each) => each.product === product.id)
    .toSorted((a, b) => b.made - a.made);
  const lot = lots.find(({ id }) => id === textIn(query, "lot")) ?? null;
  const [run = null] = lot === null ? [] : (await readTraceBack(lot.id)).runs;
  const batch = books.desk.batches.find((each) => each.run.id === run) ?? null;
  const draft = draftFor({ books, today, label, product, lot, batch, run });
  return { books, today, label, product, lots, lot, batch, draft };
}

interface Drafted extends Pick<LabelOnPage, "books" | "today" | "label" | "product" | "lot" | "batch"> {
  readonly run: string | null;
}

function draftFor({ books, today, label, product, lot, batch, run }: Drafted): LabelDraft {
  const formulas = formulasOfRun(books, run);
  const formula = formulas.find(({ id }) => id === product.formula);
  if (formula === undefined) throw new Error("a product has a formula");
  const parts = compositions(formulas)(formula.id);
  const added = books.workshop.materials.flatMap(({ id, name, composition }) => {
    const fraction = parts.get(id);
    return fraction === undefined ? [] : [{ id, name, composition, fraction }];
  });
  const ph = batch === null ? null : (standing(batch, "acidity").at(-1)?.ph ?? null);
  const labelled = lot && { code: batch?.code ?? lot.id, madeOn: lot.made, bestBefore: lot.bestBefore, ph };
  return labelDraft({ label, product, formula, added, batch: labelled, today });
}
