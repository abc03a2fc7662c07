import "server-only";
import { notFound } from "next/navigation";
import type { Batch } from "@/lib/domain/bench/batch";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { codeContent } from "@/lib/domain/label/gs1";
import type { KeptLabel } from "@/lib/domain/label/kept-label";
import type { Label } from "@/lib/domain/label/label";
import type { LabelDraft } from "@/lib/domain/label/label-draft";
import { labelOfRun, measuredPh } from "@/lib/domain/label/label-of-run";
import { labelParts } from "@/lib/domain/label/label-words";
import type { FinishedLot, Product } from "@/lib/domain/workshop";
import type { LabelContent } from "@/lib/edge/label/kept-layout";
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
  readonly typed: LabelContent;
  /** As it was when the batch was released: that is what is printed of it from then on. @rule BENCH-9 */
  readonly kept: KeptLabel | null;
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
  const labelled = lot && {
    code: lot.id,
    madeOn: lot.made,
    bestBefore: lot.bestBefore,
    ph: batch && measuredPh(batch),
  };
  const draft = labelOfRun(books, { label, product, run, batch: labelled, today });
  const kept = batch?.labels.find((each) => each.label === label.id) ?? null;
  return { books, today, label, product, lots, lot, batch, draft, typed: contentOf(draft), kept };
}

/** What the label says as it is typed now. */
function contentOf(draft: LabelDraft): LabelContent {
  const { code, batchCode, bestBefore, gtin, market } = draft;
  const drawn = code && batchCode ? { ...codeContent(batchCode, bestBefore, gtin), kind: code } : null;
  return { market, parts: labelParts(draft), code: drawn };
}
