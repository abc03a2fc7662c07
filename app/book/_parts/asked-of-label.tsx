import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import type { Asked, LabelSource } from "@/lib/domain/label/asked-by-market";
import { asSentence } from "@/app/_ui/sentence";

/** What a label still lacks, what only a person can judge, and what is common practice. */
export const AskedOfLabelList = ({
  missing,
  toJudge,
  notes,
}: {
  readonly missing: readonly Asked[];
  readonly toJudge: readonly Asked[];
  readonly notes: readonly string[];
}): ReactNode => (
  <>
    {missing.length > 0 && (
      <Points id="missing" title="Missing" gist="from the label" points={missing} rank="warning" />
    )}
    <Points id="judge" title="For you to judge" gist="no program can tell" points={toJudge} rank="note" />
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
}: {
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
    <ul className="findings">
      {points.map(({ says, source }) => (
        <li className={`found ${rank}`} key={says}>
          <p>{asSentence(says)}.</p>
          <p className="label">{sourceShown(source)}</p>
        </li>
      ))}
    </ul>
  </section>
);

function sourceShown({ law, read, on }: LabelSource): string {
  return read === "memory"
    ? `${law}; from memory, not read: look it up.`
    : `${law}, read in ${read} of ${isoDate(on)}.`;
}
