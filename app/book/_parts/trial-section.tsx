import Link from "next/link";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { massOf, type Trial } from "@/lib/domain/formula-book/trials";
import { ratio, times, whole } from "@/lib/domain/fraction";
import { decimalValue, WHOLE } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { dayShown, massInFull, percentShown, quotientShown } from "@/lib/edge/figures";
import { timeAfterShown } from "@/lib/edge/forms/time-after";
import { postingAddress } from "@/lib/edge/ledger-address";
import { AskingForm } from "@/app/_ui/asking-form";
import { Ledger } from "@/app/_ui/ledger";
import { addTheReading, promoteTheTrial } from "@/app/book/formulas/[id]/trials/actions";
import { trialPath } from "./addresses";
import { READING_ASKED } from "./trial-fields";
import { OnPhone } from "./trials-ledger";

interface OfTrial {
  readonly trial: Trial;
  /** Among the trials of the page. */
  readonly place: number;
  /** Whether the posting that took it off the shelf was taken back. */
  readonly isTakenBack: boolean;
  readonly formula: Formula;
  readonly today: Day;
  readonly nameOf: (of: FormulaLine["of"]) => string;
}

/** One trial: what was weighed, what was read of it and when, room for more, and the way into the formula. */
export function TrialSection({ trial, place, isTakenBack, formula, today, nameOf }: OfTrial): ReactNode {
  // An id of a file may hold spaces, which would part it in two here.
  const heading = `trial-${String(place)}`;
  const carried = { trial: trial.id, formula: formula.id };
  return (
    <section className="matters trial" aria-labelledby={heading}>
      <h2 id={heading}>
        {trial.name}{" "}
        <small>
          {dayShown(trial.day, today, { year: true })};{" "}
          {trial.posting === null ? (
            "nothing was taken off the shelf"
          ) : (
            <>
              {isTakenBack ? "put back on the shelf after " : "taken off the shelf by "}
              <Link href={postingAddress(trial.posting)}>this posting</Link>
            </>
          )}
        </small>
      </h2>
      <div>
        {trial.notes !== null && <p>{trial.notes}</p>}
        <Weighed trial={trial} nameOf={nameOf} />
        <Readings trial={trial} />
        <details>
          <summary>Write down what it is like now</summary>
          <AskingForm
            key={String(trial.readings.length)}
            act={addTheReading}
            carried={carried}
            className="asking-in-a-row"
            fields={READING_ASKED}
            button="Add it"
          />
        </details>
        <details>
          <summary>Make it the next version of {formula.name}</summary>
          <AskingForm
            act={promoteTheTrial}
            carried={carried}
            className="asking-in-a-row"
            fields={[{ name: "why", label: "Why this one", type: "text", value: `Trial ${trial.name}` }]}
            button="Make it the next version"
          />
        </details>
        <p>
          <Link className="more" href={trialPath(formula.id, trial.id)}>
            Correct or remove {trial.name}
          </Link>
        </p>
      </div>
    </section>
  );
}

const WEIGHED_COLUMNS = [
  { name: "What went in", kind: "text" },
  { name: "Weighed", kind: "number" },
  { name: "Percent", kind: "number" },
] as const;

const Weighed = ({ trial, nameOf }: Pick<OfTrial, "trial" | "nameOf">): ReactNode => (
  <Ledger caption={`What was weighed for ${trial.name}`} columns={WEIGHED_COLUMNS} className="book-ledger">
    {trial.lines.map(({ of, weighed }, at) => (
      <tr key={at}>
        <th scope="row">{nameOf(of)}</th>
        <td className="number">{massInFull(weighed)}</td>
        <td className="number">{percentShown(times(ratio(weighed, massOf(trial.lines)), whole(WHOLE)))}</td>
      </tr>
    ))}
  </Ledger>
);

const READING_COLUMNS = [
  { name: "After", kind: "text" },
  { name: "pH", kind: "number" },
  { name: "Viscosity, mPa·s", kind: "number" },
  { name: "Appearance", kind: "text" },
] as const;

const Readings = ({ trial }: Pick<OfTrial, "trial">): ReactNode =>
  trial.readings.length === 0 ? (
    <p className="label">Nothing was read of it yet.</p>
  ) : (
    <Ledger caption={`What was read of ${trial.name}`} columns={READING_COLUMNS} className="book-ledger">
      {trial.readings.map(({ afterMinutes, ph, viscosity, appearance }, at) => (
        <tr key={at}>
          <th scope="row">{timeAfterShown(afterMinutes)}</th>
          <td className="number">
            <OnPhone says="pH " />
            {ph ?? "–"}
          </td>
          <td className="number">
            <OnPhone says="mPa·s " />
            {viscosity === null ? "–" : quotientShown(decimalValue(viscosity))}
          </td>
          <td>{appearance ?? "–"}</td>
        </tr>
      ))}
    </Ledger>
  );
