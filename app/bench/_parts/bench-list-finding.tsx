import Link from "next/link";
import type { ReactNode } from "react";
import type { Batch } from "@/lib/domain/bench/batch";
import type { Day } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { asSentence } from "@/app/_ui/sentence";
import { counted, inARow } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";

interface Bench {
  readonly toStart: readonly RunOutlook[];
  readonly open: readonly Batch[];
  readonly held: readonly Batch[];
  readonly today: Day;
}

/** What is to be made today, what is late, and what stands on the bench. */
export function BenchListFinding({ toStart, open, held, today }: Bench): ReactNode {
  const late = toStart.filter(({ run }) => run.date < today);
  const [ofToday, [next]] = [
    toStart.filter(({ run }) => run.date === today),
    toStart.filter(({ run }) => run.date > today),
  ];
  const batches = [
    ...(open.length > 0 ? [counted(open.length, "batch is open", "batches are open")] : []),
    ...(held.length > 0
      ? [counted(held.length, "batch waits", "batches wait")].map((it) => `${it} for a second look`)
      : []),
  ];
  return (
    <>
      {ofToday.length > 0 ? (
        <>
          Today: <b>{inARow(ofToday.map(runInWords))}</b>.
        </>
      ) : next !== undefined ? (
        <>
          Nothing is planned for today; next is{" "}
          <b>
            {runInWords(next)} on {dayShown(next.run.date, today)}
          </b>
          .
        </>
      ) : (
        late.length === 0 && (
          <>
            No run is planned: <Link href="/week?plan=run">plan one on the week</Link>, and it is started here.
          </>
        )
      )}{" "}
      {late.length > 0 && <span className="warn">{lateInWords(late, today)} </span>}
      {batches.length > 0 && <b>{asSentence(`${inARow(batches)}.`)}</b>}
    </>
  );
}

const runInWords = ({ run, product }: RunOutlook): string => `${unitsInWords(run.units)} of ${product.name}`;

function lateInWords(late: readonly RunOutlook[], today: Day): string {
  const [first] = late;
  if (first === undefined) return "";
  const of = `${first.product.name} of ${dayShown(first.run.date, today)}`;
  return late.length === 1
    ? `${of} is ${lateBy(first.run.date, today)}.`
    : `${asSentence(counted(late.length, "run is", "runs are"))} late, ${of} first.`;
}

/** `2 days late` */
export const lateBy = (date: Day, today: Day): string =>
  today - date === 1 ? "1 day late" : `${String(today - date)} days late`;
