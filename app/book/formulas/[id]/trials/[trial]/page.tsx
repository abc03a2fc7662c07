import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import { forNewWork } from "@/lib/domain/desk";
import type { Trial } from "@/lib/domain/formula-book/trials";
import type { Formula, Material } from "@/lib/domain/workshop";
import { trialSeen, typedSeen } from "@/lib/edge/forms/trial-seen";
import { stockAsTyped } from "@/lib/edge/forms/typed-stock";
import { weighedField } from "@/lib/edge/forms/trial-form";
import { postingAddress } from "@/lib/edge/ledger-address";
import { readPosting } from "@/lib/store/ledger/ledger-answers";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { idOf, trialsPath } from "@/app/book/_parts/addresses";
import { DeedForm } from "@/app/book/_parts/deed-form";
import { nameOfLine } from "@/app/_ui/name-of-line";
import {
  aboutTrial,
  besidesThese,
  carriedLines,
  type LineAsked,
  nameAndNotes,
  offTheShelf,
  weighedOf,
} from "@/app/book/_parts/trial-fields";
import { booksForPage } from "../../../../books-for-page";
import { correctTheTrial, removeTheTrial } from "./actions";

export const metadata: Metadata = { title: "Correct a trial" };

interface Address {
  readonly params: Promise<{ readonly id: string; readonly trial: string }>;
}

/** What was typed of a trial, to be put right; and the trial taken out again. */
export default async function TrialPage({ params }: Address): Promise<ReactNode> {
  const [address, { books }] = await Promise.all([params, booksForPage()]);
  const { workshop, desk } = books;
  const trial = desk.trials.find(({ id }) => id === idOf(address.trial));
  const formula = workshop.formulas.find(({ id }) => id === idOf(address.id));
  if (trial === undefined || formula === undefined || trial.formula !== formula.id) notFound();
  const found = trial.posting === null ? null : await readPosting(trial.posting);
  const stands = found !== null && found.reversedBy === null;
  const further = forNewWork(desk, "materials", workshop.materials).filter(({ measure }) => measure === "mass");
  return (
    <>
      <Opening
        crumb={<Link href={trialsPath(formula.id)}>Trials of {formula.name}</Link>}
        title={`Correct ${trial.name}`}
      >
        {stands ? (
          <>
            What was weighed, and the day, are in the history, as{" "}
            <Link href={postingAddress(found.posting.id)}>its posting</Link>. Take that back first to put them right or
            to remove the trial; its name and notes can be put right as they are.
          </>
        ) : (
          <>Put right what was typed. What was read of it stays, and more can be written down beside it.</>
        )}
      </Opening>
      {stands ? (
        <NameAndNotes trial={trial} />
      ) : (
        <Everything trial={trial} formula={formula} further={further} nameOf={nameOfLine(workshop)} />
      )}
      {!stands && (
        <section className="matters" aria-labelledby="remove-trial">
          <h2 id="remove-trial">
            Remove it <small>with what was read of it</small>
          </h2>
          <div className="deeds">
            <DeedForm
              act={removeTheTrial.bind(null, formula.id, trial.id, trialSeen(trial))}
              label={`Remove ${trial.name}`}
            />
          </div>
        </section>
      )}
    </>
  );
}

const namedBy = (trial: Trial): Readonly<Record<string, string>> => ({ trial: trial.id, formula: trial.formula });

/** As it was when the form was opened, so that a refusal does not make a form that is out of date a good one. */
const keptOf = (trial: Trial): Readonly<Record<string, string>> => ({ key: newId(), seen: typedSeen(trial) });

/** While its posting stands; the form carries the rest as it is. */
const NameAndNotes = ({ trial }: { readonly trial: Trial }): ReactNode => (
  <AskingForm
    act={correctTheTrial}
    carried={{
      ...namedBy(trial),
      ...carriedLines(trial.lines),
      ...Object.fromEntries(trial.lines.map((line, at) => [weighedField(at), stockAsTyped(line.weighed, "mass")])),
      day: isoDate(trial.day),
      shelf: "no",
    }}
    kept={keptOf(trial)}
    className="asking-in-a-row"
    fields={nameAndNotes({ name: trial.name, notes: trial.notes ?? "" })}
    button="Keep the correction"
  />
);

function Everything({
  trial,
  formula,
  further,
  nameOf,
}: {
  readonly trial: Trial;
  readonly formula: Formula;
  readonly further: readonly Material[];
  readonly nameOf: ReturnType<typeof nameOfLine>;
}): ReactNode {
  const lines = linesAsked(trial, formula);
  const weighedIn = (at: number): string => {
    const weighed = trial.lines[at]?.weighed;
    return weighed === undefined ? "" : stockAsTyped(weighed, "mass");
  };
  return (
    <AskingForm
      act={correctTheTrial}
      carried={{ ...namedBy(trial), ...carriedLines(lines) }}
      kept={keptOf(trial)}
      fields={[
        ...aboutTrial({ name: trial.name, day: isoDate(trial.day), notes: trial.notes ?? "" }),
        ...weighedOf(lines, { nameOf, weighedIn, hintOf: (at) => (at < trial.lines.length ? "" : "in the formula") }),
        ...besidesThese(lines, further),
        offTheShelf("no"),
      ]}
      button="Keep the correction"
    />
  );
}

/** The trial's own lines, then those of the formula that it did without. */
const linesAsked = (trial: Trial, formula: Formula): readonly LineAsked[] => [
  ...trial.lines,
  ...formula.lines.filter(({ of }) => !trial.lines.some((line) => line.of.kind === of.kind && line.of.id === of.id)),
];
