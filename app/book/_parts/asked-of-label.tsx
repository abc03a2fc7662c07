import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { Asked } from "@/lib/domain/label/asked-by-market";
import { inARow } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { asSentence } from "@/app/_ui/sentence";

/** What a label still lacks, what only a person can judge, and what is common practice. */
export const AskedOfLabelList = ({
  missing,
  toJudge,
  notes,
  today,
}: {
  readonly today: Day;
  readonly missing: readonly Asked[];
  readonly toJudge: readonly Asked[];
  readonly notes: readonly string[];
}): ReactNode => (
  <>
    {missing.length > 0 && (
      <Points id="missing" title="Missing" gist="from the label" points={missing} rank="warning" today={today} />
    )}
    <Points id="judge" title="For you to judge" gist="no program can tell" points={toJudge} rank="note" today={today} />
    {notes.length > 0 && (
      <section className="matters" aria-labelledby="practice">
        <h2 id="practice">
          Common practice <small>no source</small>
        </h2>
        <ul className="findings">
          {notes.map((note) => (
            <li className="found note" key={note}>
              <p>{note}</p>
            </li>
          ))}
        </ul>
      </section>
    )}
  </>
);

const Points = ({
  id,
  title,
  gist,
  points,
  rank,
  today,
}: {
  readonly today: Day;
  readonly id: string;
  readonly title: string;
  readonly gist: string;
  readonly points: readonly Asked[];
  readonly rank: "warning" | "note";
}): ReactNode => (
  <section className="matters" aria-labelledby={id}>
    <h2 id={id}>
      {title} <small>{gist}</small>
    </h2>
    <div>
      <ul className="findings">
        {points.map(({ says, source }) => (
          <li className={`found ${rank}`} key={says}>
            <p>{asSentence(says)}.</p>
            <p className="label">
              {source.law}
              {source.read === "memory" && " (from memory)"}
            </p>
          </li>
        ))}
      </ul>
      <p className="label">{howTheyWereRead(points, today)}</p>
    </div>
  </section>
);

/** How the laws that are named were read, once for all of them. */
function howTheyWereRead(points: readonly Asked[], today: Day): string {
  const read = points.filter(({ source }) => source.read !== "memory");
  const as = [...new Set(read.map(({ source }) => `${source.read} of ${dayShown(source.on, today, DATED)}`))];
  return [
    ...(as.length > 0 ? [`The laws named were read in ${inARow(as)}.`] : []),
    ...(read.length < points.length ? ["What is marked as from memory was not read: look it up."] : []),
  ].join(" ");
}

const DATED = { weekday: false, year: true } as const;
