import Link from "next/link";
import type { ReactNode } from "react";
import { asSentence } from "@/app/_ui/sentence";
import { Sign } from "@/app/_ui/sign";
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { startAddress } from "@/lib/edge/bench-address";
import { counted } from "@/lib/edge/counted";
import { dayShown, stockShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { lateBy } from "./bench-list-finding";

interface Starting {
  readonly runs: readonly RunOutlook[];
  readonly today: Day;
  /** Whether starting the first of them is what is to be done on the page. */
  readonly isFirst: boolean;
}

const WEEK = 7;

/** What is planned, soonest first, each with the way to start it; what lies beyond the week is folded. */
export function ToStart({ runs, today, isFirst }: Starting): ReactNode {
  const end = daysAfter(today, WEEK);
  const [soon, later] = [runs.filter(({ run }) => run.date <= end), runs.filter(({ run }) => run.date > end)];
  return (
    <section className="bench-list" aria-labelledby="to-start">
      <h2 id="to-start">Planned, to be started</h2>
      {soon.length > 0 && <Runs runs={soon} today={today} isFirst={isFirst} />}
      {later.length > 0 && (
        <details className="opens">
          <summary>
            {counted(later.length, "run", "runs")} after {dayShown(end, today)}
          </summary>
          <Runs runs={later} today={today} isFirst={false} />
        </details>
      )}
    </section>
  );
}

const MOST_DRAWN = 20;

/** The first of them, and how many more there are. */
function Runs({ runs, today, isFirst }: Starting): ReactNode {
  const more = runs.length - MOST_DRAWN;
  return (
    <>
      <ul>
        {runs.slice(0, MOST_DRAWN).map((outlook, at) => (
          <OneRun key={outlook.run.id} outlook={outlook} today={today} isFirst={isFirst && at === 0} />
        ))}
      </ul>
      {more > 0 && (
        <p>
          {asSentence(counted(more, "more is", "more are"))} planned after these: see the <Link href="/week">week</Link>
          .
        </p>
      )}
    </>
  );
}

const OneRun = ({
  outlook: { run, product, makeable, short },
  today,
  isFirst,
}: {
  readonly outlook: RunOutlook;
  readonly today: Day;
  readonly isFirst: boolean;
}): ReactNode => (
  <li className="to-start">
    <span>
      {run.date === today ? (
        <b>Today</b>
      ) : run.date < today ? (
        <Sign sign="pennant" tone="wrong">
          {dayShown(run.date, today)}, {lateBy(run.date, today)}
        </Sign>
      ) : (
        <span className="soft">{dayShown(run.date, today)}</span>
      )}
    </span>
    <span>
      {product.name}, {unitsInWords(run.units)}
    </span>
    <span className="small">
      {!makeable && (
        <Sign sign="box" tone="wrong">
          {shortInWords(short)}
        </Sign>
      )}
    </span>
    <Link className={isFirst ? "button first" : "button"} href={startAddress(run.id)} prefetch={false}>
      Start
      <span className="unseen">
        {" "}
        {product.name}, {unitsInWords(run.units)}
      </span>
    </Link>
  </li>
);

/** What it is short of at its turn, and how much. */
function shortInWords(short: RunOutlook["short"]): string {
  const [first] = short;
  if (first === undefined) return "the shelf does not hold all of it";
  const of = `short ${stockShown(first.by, first.material.measure, "lacking")} of ${first.material.name}`;
  return short.length === 1 ? of : `${of}, and of ${counted(short.length - 1, "more", "more")}`;
}
