import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { stateOf } from "@/lib/domain/bench/batch";
import { whatIsMissing } from "@/lib/domain/label/asked-by-market";
import type { LabelSize } from "@/lib/domain/label/kept-label";
import { labelNotes } from "@/lib/domain/label/label-notes";
import { type LabelPaper, sheetsOf } from "@/lib/domain/label/paper";
import { counted, inARow, inWordsFirst } from "@/lib/edge/counted";
import { MARKET_IN_A_SENTENCE } from "@/lib/edge/forms/fact-words";
import { type LabelAsked, readLabelAsked } from "@/lib/edge/forms/label-asked";
import { keptLayout, type LabelContent, saidOnLabel } from "@/lib/edge/label/kept-layout";
import type { LabelLayout } from "@/lib/edge/label/label-layout";
import { Opening } from "@/app/_ui/finding";
import { newPath, type Query, recordPath, textIn } from "@/app/book/_parts/addresses";
import { AskedOfLabelList } from "@/app/book/_parts/asked-of-label";
import { LabelDrawing, SheetDrawing } from "@/app/_ui/label-drawing";
import { LabelForm } from "@/app/book/_parts/label-form";
import { PrintLabels } from "@/app/book/_parts/print-labels";
import { labelForPage, type LabelOnPage } from "../../label-for-page";
import "../../labels.css";

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

export const metadata: Metadata = { title: "A label" };

/** One label as it is printed: at its true size, what it still lacks, and a sheet of it. */
export default async function LabelPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ id: step }, query] = await Promise.all([params, searchParams]);
  const page = await labelForPage(step, query);
  const { label, product, draft, lots, lot, today } = page;
  const { papers } = page.books.workshop;
  const paper = papers.find(({ id }) => id === textIn(query, "paper")) ?? papers[0] ?? null;
  const asked = paper && readLabelAsked(textIn(query, "from"), textIn(query, "count"), paper);
  // What a batch was released with is what its jars bear.
  const printed = page.kept ?? page.typed;
  const layout = paper && keptLayout(printed, sizeOf(paper));
  const { missing, toJudge } = whatIsMissing(draft);
  const market = MARKET_IN_A_SENTENCE[label.market];
  return (
    <div className="label-page">
      <Opening
        crumb={<Link href={recordPath("labels", label.id)}>What is typed for it</Link>}
        title={`The label of ${product.name}`}
      >
        {missing.length === 0 ? (
          <>Of what {market} asks, all that the app can check is there. The rest is for you to judge.</>
        ) : (
          <>
            <b>
              {inWordsFirst(missing.length)} {missing.length === 1 ? "thing is" : "things are"} missing
            </b>{" "}
            that {market} asks of a label.
          </>
        )}
        {lot === null && " No batch is chosen yet."}
      </Opening>
      <Notices page={page} />
      <LabelForm
        label={label.id}
        lots={lots}
        lot={lot}
        papers={papers}
        paper={paper}
        asked={asked}
        query={query}
        today={today}
      />
      {paper && layout && (
        <Preview layout={layout} paper={paper} says={saidOnLabel(printed)}>
          {asked && <PrintLabels count={asked.count} />}
        </Preview>
      )}
      {paper === null && (
        <p className="done">
          There is no label sheet yet. <Link href={newPath("papers")}>Measure the sheet that you print on</Link>.
        </p>
      )}
      <AskedOfLabelList missing={missing} toJudge={toJudge} notes={labelNotes(draft)} today={today} />
      {paper && layout && asked && <Sheets layout={layout} paper={paper} asked={asked} title={draft.title} />}
    </div>
  );
}

/** What stands against taking it as it is. */
function Notices({ page: { batch, kept, typed, lot } }: { readonly page: LabelOnPage }): ReactNode {
  return (
    <>
      <p className="label">
        {kept === null && "This is a draft. "}Local rules and a qualified assessor decide what a label must say, and
        whether the product may be sold at all.
      </p>
      {batch !== null && stateOf(batch) !== "released" && (
        <p className="fault" role="status">
          Batch {batch.code} is not released. Label nothing of it until it is.
        </p>
      )}
      {kept && isOtherwise(kept, typed) && (
        <p className="done" role="status">
          This is the label that batch {lot?.id} was released with, as its record keeps it. What has changed since
          stands on the labels of the next batch.
        </p>
      )}
    </>
  );
}

const sizeOf = ({ labelWidth, labelHeight }: LabelPaper): LabelSize => ({ width: labelWidth, height: labelHeight });

const inNumbers = ({ labelWidth, labelHeight }: LabelPaper) => ({
  width: Number(labelWidth),
  height: Number(labelHeight),
});

/** Whether the label says something else, or draws another code, than what is typed now. */
const isOtherwise = (kept: LabelContent, { market, parts, code }: LabelContent): boolean =>
  JSON.stringify([kept.market, kept.parts, kept.code]) !== JSON.stringify([market, parts, code]);

function Preview({
  layout,
  paper,
  says,
  children,
}: {
  readonly layout: LabelLayout;
  readonly paper: LabelPaper;
  readonly says: string;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <section className="matters" aria-labelledby="preview">
      <h2 id="preview">
        True size{" "}
        <small>
          {paper.labelWidth} × {paper.labelHeight} mm, letters of {layout.points} points
        </small>
      </h2>
      <div>
        {layout.left.length > 0 && (
          <p className="fault" role="status">
            It is too long for its size. There is no room for {inARow(layout.left)}: take a larger label, or say less.
          </p>
        )}
        <div className="label-preview">
          <LabelDrawing layout={layout} size={inNumbers(paper)} says={says} />
        </div>
        {children}
      </div>
    </section>
  );
}

function Sheets({
  layout,
  paper,
  asked,
  title,
}: {
  readonly layout: LabelLayout;
  readonly paper: LabelPaper;
  readonly asked: LabelAsked;
  readonly title: string;
}): ReactNode {
  const sheets = sheetsOf(paper, asked.startAt, asked.count);
  return (
    <section className="matters label-sheets" aria-labelledby="sheets">
      <h2 id="sheets">
        To print{" "}
        <small>
          {counted(sheets.length, "sheet", "sheets")}; prints at true size, shown smaller here where the page is narrow:
          choose 100 % and no margins
        </small>
      </h2>
      <div>
        {sheets.map((numbers, at) => (
          <SheetDrawing
            key={at}
            layout={layout}
            paper={paper}
            numbers={numbers}
            says={`Sheet ${String(at + 1)}: ${counted(numbers.length, "label", "labels")} of ${title}`}
          />
        ))}
      </div>
    </section>
  );
}
