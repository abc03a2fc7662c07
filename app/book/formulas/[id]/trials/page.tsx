import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { comparedTrials } from "@/lib/domain/formula-book/compared-trials";
import { type Trial, variedIn } from "@/lib/domain/formula-book/trials";
import { counted } from "@/lib/edge/counted";
import { Opening } from "@/app/_ui/finding";
import { asSentence } from "@/app/_ui/sentence";
import { idOf, newTrialPath, type Query, recordPath, textIn } from "@/app/book/_parts/addresses";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { TrialCharts } from "@/app/book/_parts/trial-charts";
import { TrialSection } from "@/app/book/_parts/trial-section";
import { TrialsLedger } from "@/app/book/_parts/trials-ledger";
import { readPosting } from "@/lib/store/ledger/ledger-answers";
import { booksForPage } from "../../../books-for-page";

export const metadata: Metadata = { title: "Trials of a formula" };

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

/** The trials of a formula beside one another: what was varied, what came of it, and what a unit would cost. */
export default async function TrialsPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ id }, query, { books, today }] = await Promise.all([params, searchParams, booksForPage()]);
  const { workshop } = books;
  const formula = workshop.formulas.find((one) => one.id === idOf(id));
  if (formula === undefined) notFound();
  const trials = books.desk.trials.filter((trial) => trial.formula === formula.id);
  const takenBack = await takenBackOf(trials);
  const products = workshop.products.filter((product) => product.formula === formula.id);
  const product = products.find((one) => one.id === textIn(query, "product")) ?? products[0] ?? null;
  const [varied, nameOf] = [variedIn(trials), nameOfLine(workshop)];
  const priced = product && ({ product, basis: "replacement" } as const);
  const compared = comparedTrials(workshop, today, trials, varied, priced);
  const about = {
    varied: varied && nameOf(varied),
    product: product?.name ?? null,
    currency: workshop.settings.currency,
  };
  return (
    <>
      <Opening
        crumb={<Link href={recordPath("formulas", formula.id)}>{formula.name}</Link>}
        title={`Trials of ${formula.name}`}
        beside={
          <p className="in-a-row">
            <Link className="button first" href={newTrialPath(formula.id)}>
              A trial at the bench
            </Link>
          </p>
        }
      >
        <TrialsFinding count={trials.length} varied={about.varied} />
      </Opening>
      {trials.length > 0 && <TrialsLedger compared={compared} about={about} today={today} />}
      {varied !== null && <TrialCharts compared={compared} about={about} />}
      {trials.map((trial, place) => (
        <TrialSection
          key={trial.id}
          trial={trial}
          place={place}
          isTakenBack={takenBack.has(trial.id)}
          formula={formula}
          today={today}
          nameOf={nameOf}
        />
      ))}
    </>
  );
}

const TrialsFinding = ({ count, varied }: { readonly count: number; readonly varied: string | null }): ReactNode =>
  count === 0 ? (
    <>None yet. A trial is a small batch that is not for sale, as it was weighed and as it came out.</>
  ) : (
    <>
      <b>{asSentence(counted(count, "trial", "trials"))}</b>
      {varied !== null && (
        <>
          {" "}
          in which <b>{varied}</b> was varied
        </>
      )}
      .
    </>
  );

/** The trials of which what was taken off the shelf was put back, by id. */
async function takenBackOf(trials: readonly Trial[]): Promise<ReadonlySet<string>> {
  const drawn = trials.flatMap(({ id, posting }) => (posting === null ? [] : [{ id, posting }]));
  const found = await Promise.all(drawn.map(({ posting }) => readPosting(posting)));
  return new Set(drawn.filter((_, at) => found[at]?.reversedBy).map(({ id }) => id));
}
