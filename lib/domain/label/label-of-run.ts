/** A label for what a run has made, and what is kept of it when its batch is released. @rule LABEL-1, LABEL-8, BENCH-9 */
import { type Batch, codeOf, standing } from "@/lib/domain/bench/batch";
import { PH } from "@/lib/domain/bench/asked-checks";
import { startedAs } from "@/lib/domain/bench/started-as";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { compositions } from "@/lib/domain/formula";
import { byId } from "@/lib/domain/index-by-id";
import type { DecimalText } from "@/lib/domain/quantity";
import type { Product } from "@/lib/domain/workshop";
import { formulasOfRun } from "./formulas-of-run";
import { codeContent } from "./gs1";
import type { KeptLabel } from "./kept-label";
import type { Label, LabelledBatch } from "./label";
import { type LabelDraft, labelDraft } from "./label-draft";
import { labelParts } from "./label-words";

export interface LabelOfRun {
  readonly label: Label;
  readonly product: Pick<Product, "name" | "fill" | "formula">;
  /** Null for a label that is looked at before there is anything to put it on, or of a lot that no run made. */
  readonly run: string | null;
  readonly batch: LabelledBatch | null;
  readonly today: Day;
}

/** The draft of a label, by the versions of formulas that the run was made by. */
export function labelOfRun(books: Books, { label, product, run, batch, today }: LabelOfRun): LabelDraft {
  const formulas = formulasOfRun(books, run);
  const formula = byId("formula", formulas)(product.formula);
  const parts = compositions(formulas)(formula.id);
  const added = books.workshop.materials.flatMap(({ id, name, composition }) => {
    const fraction = parts.get(id);
    return fraction === undefined ? [] : [{ id, name, composition, fraction }];
  });
  return labelDraft({ label, product, formula, added, batch, today });
}

/** The pH that was measured last, by itself or as a check of the formula; null where none was. @rule LABEL-8 */
export function measuredPh(batch: Batch): DecimalText | null {
  const last = batch.notes.findLast(
    (note) =>
      (note.kind === "acidity" && standing(batch, "acidity").includes(note)) ||
      (note.kind === "checked" && note.what === PH && standing(batch, "checked").includes(note)),
  );
  if (last?.kind === "acidity") return last.ph;
  return last?.kind === "checked" ? (last.found as DecimalText) : null;
}

/**
 * The labels of the product of a batch that is released, one for each market that was set up.
 * @param books  with the run of the batch among those that are closed
 */
export function labelsToKeep(books: Books, batch: Batch): readonly KeptLabel[] {
  const { workshop, desk } = books;
  const now = byId("product", workshop.products)(batch.run.product);
  const { product: name, fill } = startedAs(batch, workshop);
  const closed = standing(batch, "closed").at(-1);
  const madeOn = desk.closedRuns.find(({ run }) => run.id === batch.run.id)?.madeOn ?? batch.startedOn;
  const labelled: LabelledBatch = {
    code: codeOf(batch),
    madeOn,
    bestBefore: closed?.bestBefore ?? null,
    ph: measuredPh(batch),
  };
  const [paper] = workshop.papers;
  return workshop.labels
    .filter((label) => label.product === now.id)
    .map((label) => {
      const product = { name, fill, formula: batch.versions[0]?.formula ?? now.formula };
      const draft = labelOfRun(books, { label, product, run: batch.run.id, batch: labelled, today: madeOn });
      const content = codeContent(labelled.code, draft.bestBefore, draft.gtin);
      return {
        label: label.id,
        market: label.market,
        parts: labelParts(draft),
        code: label.code === null ? null : { ...content, kind: label.code },
        size: paper === undefined ? null : { width: paper.labelWidth, height: paper.labelHeight },
      };
    });
}
