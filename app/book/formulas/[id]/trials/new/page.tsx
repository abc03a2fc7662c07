import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import { forNewWork } from "@/lib/domain/desk";
import { percentOf } from "@/lib/domain/formula";
import type { Fraction } from "@/lib/domain/fraction";
import type { Formula, Material } from "@/lib/domain/workshop";
import { gramsShown, percentShown } from "@/lib/edge/figures";
import { readAims, type TypedAims } from "@/lib/edge/forms/trial-aims";
import { FURTHER_LINES, ofAsText, ofField, phaseField, weighedField } from "@/lib/edge/forms/trial-form";
import { type AskedField, AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { idOf, type Query, textIn, trialsPath } from "@/app/book/_parts/addresses";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { TrialAims } from "@/app/book/_parts/trial-aims-form";
import { READING_ASKED } from "@/app/book/_parts/trial-fields";
import { booksForPage } from "../../../../books-for-page";
import { keepTheTrial } from "../actions";

export const metadata: Metadata = { title: "A trial at the bench" };

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

/** A small batch that is not for sale: what to weigh for it, and room for what the scale said. */
export default async function NewTrialPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ id }, query, { books, today }] = await Promise.all([params, searchParams, booksForPage()]);
  const { workshop } = books;
  const formula = workshop.formulas.find((one) => one.id === idOf(id));
  if (formula === undefined) notFound();
  const typed = { size: textIn(query, "size"), line: textIn(query, "line"), percent: textIn(query, "percent") };
  const reading = readAims(formula, typed);
  const nameOf = nameOfLine(workshop);
  const further = forNewWork(books.desk, "materials", workshop.materials).filter(({ measure }) => measure === "mass");
  const key = newId();
  return (
    <>
      <Opening
        crumb={<Link href={trialsPath(formula.id)}>Trials of {formula.name}</Link>}
        title={`A trial of ${formula.name}`}
      >
        Weigh it, write down what the scale said, and what came out. It is not for sale: a trial is no safety test.
      </Opening>
      <TrialAims formula={formula} nameOf={nameOf} typed={typed} fault={reading.kind === "refused" ? reading : null} />
      <AskingForm
        key={JSON.stringify(typed)}
        act={keepTheTrial}
        carried={{ formula: formula.id, ...carriedLines(formula), ...furtherPhases(formula) }}
        kept={{ key }}
        fields={[
          ...about(nameGiven(typed, formula, nameOf), isoDate(today)),
          ...weighed(formula, reading.kind === "aims" ? reading.aims : [], nameOf),
          ...besides(formula, further),
          ...READING_ASKED.map((field) => ({ ...field, group: READ })),
          SHELF,
        ]}
        button="Keep the trial"
      />
    </>
  );
}

const WEIGHED = { title: "As weighed", says: "what the scale said; leave out what did not go in" };
const FURTHER = { title: "Besides", says: "what the formula does not hold" };
const READ = { title: "What came out", says: "more can be written down later: an hour, a day, a week after" };

const aimShown = (aim: Fraction | undefined, percent: string): string =>
  aim === undefined ? `${percent} in the formula` : `Weigh ${gramsShown(aim)}; ${percent} in the formula.`;

/** A field for each line of the formula, with what to weigh for it. */
const weighed = (
  formula: Formula,
  aims: readonly Fraction[],
  nameOf: ReturnType<typeof nameOfLine>,
): readonly AskedField[] =>
  formula.lines.map((line, at) => ({
    name: weighedField(at),
    label: `${nameOf(line.of)}, g`,
    type: "text",
    value: "",
    hint: aimShown(aims[at], percentShown(percentOf(line, formula))),
    group: WEIGHED,
  }));

/** Room for what the formula does not hold. */
const besides = ({ lines }: Formula, materials: readonly Material[]): readonly AskedField[] =>
  furtherPlaces(lines.length).flatMap((at): readonly AskedField[] => [
    {
      name: ofField(at),
      label: "Something else",
      type: "record",
      value: "",
      options: materials.map(({ id, name }) => ({ value: ofAsText({ kind: "material", id }), label: name })),
      group: FURTHER,
    },
    { name: weighedField(at), label: "of it, g", type: "text", value: "", group: FURTHER },
  ]);

const furtherPlaces = (from: number): readonly number[] =>
  Array.from({ length: FURTHER_LINES }, (_, further) => from + further);

/** What each line is of, and its phase: the form says so itself, whatever becomes of the formula meanwhile. */
const carriedLines = (formula: Formula): Readonly<Record<string, string>> =>
  Object.fromEntries(
    formula.lines.flatMap(({ of, phase }, at) => [
      [ofField(at), ofAsText(of)],
      [phaseField(at), phase ?? ""],
    ]),
  );

const furtherPhases = ({ lines }: Formula): Readonly<Record<string, string>> =>
  Object.fromEntries(furtherPlaces(lines.length).map((at) => [phaseField(at), ""]));

function nameGiven({ line, percent }: TypedAims, formula: Formula, nameOf: ReturnType<typeof nameOfLine>): string {
  const varied = formula.lines[/^\d{1,4}$/.test(line) ? Number(line) : -1];
  return varied === undefined || percent.trim() === "" ? "" : `${nameOf(varied.of)} at ${percent.trim()} %`;
}

const about = (name: string, day: string): readonly AskedField[] => [
  { name: "name", label: "Called", type: "text", value: name },
  { name: "day", label: "Made on", type: "date", value: day },
  { name: "notes", label: "Notes (optional)", type: "text", value: "" },
];

const SHELF: AskedField = {
  name: "shelf",
  label: "What was weighed",
  type: "choice",
  value: "yes",
  options: [
    { value: "yes", label: "came off the shelf: take it off there too" },
    { value: "no", label: "is not to be taken off the shelf" },
  ],
};
