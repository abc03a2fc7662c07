import type { ReactNode } from "react";
import type { BenchDay } from "@/lib/domain/bench-hours";
import type { Day } from "@/lib/domain/calendar";
import { total, whole } from "@/lib/domain/fraction";
import { grouped } from "@/lib/domain/index-by-id";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { inARow, inWords, inWordsFirst } from "@/lib/edge/counted";
import { dayShown, minutesShown, weekdayShown } from "@/lib/edge/figures";
import { shortOfWords } from "./run-words";

interface Finding {
  readonly runs: readonly RunOutlook[];
  /** Runs from before this week that are not closed. */
  readonly earlier: readonly RunOutlook[];
  /** The first run after the week, if there is one. */
  readonly next: RunOutlook | undefined;
  readonly today: Day;
  readonly days: readonly BenchDay[];
  /** A run that cannot be made, and a day on which it could. */
  readonly better: { readonly run: RunOutlook; readonly day: Day } | null;
}

const MOST_NAMED = 2;

/** How many runs, how long they take, which can be made and which not and why. */
export function WeekFinding({ runs, earlier, next, today, days, better }: Finding): ReactNode {
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
      {inWordsFirst(runs.length)} {runs.length === 1 ? "run" : "runs"}, <BenchTime days={days} />.{" "}
      {standing(runs.length, short.length)}
      {named.map(({ words, runs: lacking }) => (
        <span key={words}>
          {" "}
          {inARow(runNames(lacking))} {lacking.length === 1 ? "is" : "are"}{" "}
          <span className="warn">short of {words}</span>.
        </span>
      ))}
      {more > 0 && ` ${inWordsFirst(more)} more cannot be made.`}
      {better && ` Moved to ${dayShown(better.day, today)}${movedRun(better.run, short)} could be made in full.`}
      {notClosed}
    </>
  );
}

/** Which run a sentence is about: `it` where one alone cannot be made. */
const movedRun = ({ run, product }: RunOutlook, short: readonly RunOutlook[]): string =>
  short.length === 1 ? " it" : `, ${weekdayShown(run.date)}’s ${product.name}`;

/** What the week's runs ask of the maker's hours. @rule BOOK-6 */
function BenchTime({ days }: { readonly days: readonly BenchDay[] }): ReactNode {
  const asked = <b>{minutesShown(total(days.map((day) => day.asked)))}</b>;
  const there = days.reduce((all, day) => all + (day.there ?? 0), 0);
  const full = days.filter(({ left }) => left !== null && left.over < 0n);
  if (days.every((day) => day.there === null)) return <>{asked} at the bench</>;
  return (
    <>
      {asked} of {minutesShown(whole(BigInt(there)))} at the bench
      {full.length > 0 && (
        <>
          ;{" "}
          <span className="warn">
            {inARow(full.map(({ day }) => weekdayShown(day)))} {full.length === 1 ? "asks" : "ask"} for more than there
            is
          </span>
        </>
      )}
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
