import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import { forNewWork } from "@/lib/domain/desk";
import { percentOf } from "@/lib/domain/formula";
import { dividedBy, type Fraction, times, total, whole } from "@/lib/domain/fraction";
import { type PartsPerMillion, WHOLE } from "@/lib/domain/quantity";
import type { Formula } from "@/lib/domain/workshop";
import { gramsShown, massInFull, percentShown } from "@/lib/edge/figures";
import { readAims, type TypedAims, USUAL_TRIAL } from "@/lib/edge/forms/trial-aims";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { idOf, type Query, textIn, trialsPath } from "@/app/book/_parts/addresses";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { TrialAims } from "@/app/book/_parts/trial-aims-form";
import {
  aboutTrial,
  besidesThese,
  carriedLines,
  offTheShelf,
  READING_ASKED,
  weighedOf,
} from "@/app/book/_parts/trial-fields";
import { booksForPage } from "../../../../books-for-page";
import { keepTheTrial } from "../actions";

export const metadata: Metadata = { title: "A trial at the bench" };

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

/** A small batch that is not for sale: what to weigh for it, and room for what the balance showed. */
export default async function NewTrialPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ id }, query, { books, today }] = await Promise.all([params, searchParams, booksForPage()]);
  const { workshop } = books;
  const formula = workshop.formulas.find((one) => one.id === idOf(id));
  if (formula === undefined) notFound();
  const typed = {
    size: textIn(query, "size") || USUAL_TRIAL,
    line: textIn(query, "line"),
    percent: textIn(query, "percent"),
  };
  const reading = readAims(formula, typed);
  const nameOf = nameOfLine(workshop);
  const further = forNewWork(books.desk, "materials", workshop.materials).filter(({ measure }) => measure === "mass");
  const key = newId();
  const aims = reading.kind === "aims" ? reading.aims : [];
  const hintOf = (at: number): string => {
    const line = formula.lines[at];
    return line === undefined ? "" : aimShown(aims, at, percentOf(line, formula));
  };
  return (
    <>
      <Opening
        crumb={<Link href={trialsPath(formula.id)}>Trials of {formula.name}</Link>}
        title={`A trial of ${formula.name}`}
      >
        Weigh it, write down what the balance showed, and what came out. It is not for sale: a trial is no safety test.
      </Opening>
      <TrialAims formula={formula} nameOf={nameOf} typed={typed} fault={reading.kind === "refused" ? reading : null} />
      <AskingForm
        key={JSON.stringify(typed)}
        act={keepTheTrial}
        carried={{ formula: formula.id, ...carriedLines(formula.lines) }}
        kept={{ key }}
        className="asking-on-paper"
        fields={[
          ...aboutTrial({ name: nameGiven(typed, formula, nameOf), day: isoDate(today), notes: "" }),
          ...weighedOf(formula.lines, {
            nameOf,
            hintOf,
            weighedIn: nothingWeighed,
            size: aims.length === 0 ? null : massInFull(total(aims)),
          }),
          ...besidesThese(formula.lines, further),
          ...READING_ASKED.map((field) => ({ ...field, group: READ })),
          offTheShelf("yes"),
        ]}
        button="Keep the trial"
      />
    </>
  );
}

const READ = { title: "What came out", says: "more can be written down later: an hour, a day, a week after" };

const nothingWeighed = (): string => "";

/** `Weigh 7.00 g, which is 7.00 %; 6.00 % in the formula.` */
function aimShown(aims: readonly Fraction[], at: number, inFormula: PartsPerMillion): string {
  const [aim, all] = [aims[at], total(aims)];
  if (aim === undefined || all.over === 0n) return `${percentShown(inFormula)} in the formula`;
  const [is, was] = [percentShown(times(dividedBy(aim, all), whole(WHOLE))), percentShown(inFormula)];
  return `Weigh ${gramsShown(aim)}, which is ${is}${is === was ? " as in the formula" : `; ${was} in the formula`}.`;
}

function nameGiven({ line, percent }: TypedAims, formula: Formula, nameOf: ReturnType<typeof nameOfLine>): string {
  const varied = formula.lines[/^\d{1,4}$/.test(line) ? Number(line) : -1];
  return varied === undefined || percent.trim() === "" ? "" : `${nameOf(varied.of)} at ${percent.trim()} %`;
}
