import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { grouped } from "@/lib/domain/index-by-id";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { inARow, inWords, inWordsFirst } from "@/lib/edge/counted";
import { dayShown, minutesShown, weekdayShown } from "@/lib/edge/figures";
import { minutesTogether, shortOfWords } from "./run-words";

interface Finding {
  readonly runs: readonly RunOutlook[];
  /** Runs from before this week that are not closed. */
  readonly earlier: readonly RunOutlook[];
  /** The first run after the week, if there is one. */
  readonly next: RunOutlook | undefined;
  readonly today: Day;
}

const MOST_NAMED = 2;

/** How many runs, how long they take, which can be made and which not and why. */
export function WeekFinding({ runs, earlier, next, today }: Finding): ReactNode {
  const notClosed = earlier.length > 0 && (
    <>
      {" "}
      {inWordsFirst(earlier.length)} from before this week {earlier.length === 1 ? "is" : "are"} not closed.
    </>
  );
  if (runs.length === 0)
    return (
      <>
        No runs planned in this week.
        {next && ` The next is ${next.product.name}, ${dayShown(next.run.date, today)}.`}
        {notClosed}
      </>
    );
  const short = runs.filter(({ makeable }) => !makeable);
  const lacks = lacksOf(short);
  const named = lacks.slice(0, MOST_NAMED);
  const more = lacks.slice(MOST_NAMED).reduce((all, { runs: lacking }) => all + lacking.length, 0);
  return (
    <>
      {inWordsFirst(runs.length)} {runs.length === 1 ? "run" : "runs"}, <b>{minutesShown(minutesTogether(runs))}</b> at
      the bench. {standing(runs.length, short.length)}
      {named.map(({ words, runs: lacking }) => (
        <span key={words}>
          {" "}
          {inARow(runNames(lacking))} {lacking.length === 1 ? "is" : "are"}{" "}
          <span className="warn">short of {words}</span>.
        </span>
      ))}
      {more > 0 && ` ${inWordsFirst(more)} more cannot be made.`}
      {notClosed}
    </>
  );
}

/** The runs by what they are short of, in their order. */
function lacksOf(
  short: readonly RunOutlook[],
): readonly { readonly words: string; readonly runs: readonly RunOutlook[] }[] {
  return [...grouped(short, shortOfWords)].map(([words, runs]) => ({ words, runs }));
}

const MOST_RUNS_NAMED = 3;

function runNames(runs: readonly RunOutlook[]): readonly string[] {
  const names = runs.map(({ run, product }) => `${weekdayShown(run.date)}’s ${product.name}`);
  if (names.length <= MOST_RUNS_NAMED) return names;
  return [...names.slice(0, MOST_RUNS_NAMED - 1), `${inWords(names.length - MOST_RUNS_NAMED + 1)} more`];
}

function standing(runs: number, short: number): string {
  if (short === 0) return runs === 1 ? "It can be made." : "All can be made.";
  if (short === runs) return runs === 1 ? "It cannot be made." : "None can be made.";
  return `${inWordsFirst(runs - short)} can be made, ${inWords(short)} cannot.`;
}
