import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import type { SheetLine } from "@/lib/domain/bench/batch";
import { checksAsked } from "@/lib/domain/bench/asked-checks";
import { formulaAsStarted, formulaCalled } from "@/lib/domain/bench/started-as";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";
import { batchAddress } from "@/lib/edge/bench-address";
import { askedInWords } from "@/lib/edge/bench-words";
import { dayShown, gramsShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { batchForPage, type BatchOnPage } from "../../batch-for-page";
import { decimalsOf } from "../../bench-on-page";
import "../../bench.css";

interface Page {
  readonly params: Promise<{ readonly batch: string }>;
}

export async function generateMetadata({ params }: Page): Promise<Metadata> {
  return { title: `Weigh sheet ${(await batchForPage((await params).batch)).code}` };
}

/** The weigh sheet on paper: black on white, room for a pen, the batch on every sheet. */
export default async function SheetPage({ params }: Page): Promise<ReactNode> {
  const found = await batchForPage((await params).batch);
  const { batch, as, code, today } = found;
  const formula = formulaAsStarted(found, batch);
  return (
    <div className="bench-sheet bench-printed">
      <p className="paper-head">
        Batch {code}, {as.product}
      </p>
      <Opening crumb={<Link href={batchAddress(batch.run.id)}>Batch {code}</Link>} title="Weigh sheet">
        {as.product}, {unitsInWords(batch.run.units)}, started {dayShown(batch.startedOn, today, { year: true })} by{" "}
        {batch.startedBy}. Print it on A4 or Letter; what is written on it is typed in on the page of the batch
        afterwards.
      </Opening>
      <p className="bench-caution">
        Gloves and goggles with preservatives; hot vessels burn; clean, dry containers; taste nothing. (Common practice;
        local rules and the safety sheets come first.)
      </p>
      {partsOf(batch.lines).map(({ part, lines }) => (
        <PaperPart key={part} found={found} part={part} lines={lines} />
      ))}
      {formula.steps.length > 0 && (
        <section aria-labelledby="steps">
          <h2 id="steps">Steps</h2>
          <ol className="paper-steps">
            {formula.steps.map(({ text, temperature, minutes, caution }, at) => (
              <li key={at}>
                {text}
                {temperature !== null && `, ${temperature}${NO_BREAK}°C`}
                {minutes !== null && `, ${String(minutes)}${NO_BREAK}min`}
                {caution !== null && `. ${caution}`} <u className="paper-blank" />
              </li>
            ))}
          </ol>
        </section>
      )}
      <section className="paper-checks" aria-label="To be filled in">
        {blanksOf(checksAsked(formula)).map((label) => (
          <p key={label}>
            {label} <u className="paper-blank" />
          </p>
        ))}
      </section>
    </div>
  );
}

/** What the formula asks, each with its limits; else what is looked at anyway. */
const blanksOf = (checks: readonly FormulaCheck[]): readonly string[] => [
  ...checks.map((check) => `${check.what} (${askedInWords(check)})`),
  ...["pH", "Appearance"].filter((what) => checks.every((check) => check.what !== what)),
  "Meter calibrated on",
  "Units filled",
  "Left over, g",
  "Made by",
  "Checked by",
];

const partsOf = (lines: readonly SheetLine[]) =>
  [...new Set(lines.map(({ part }) => part))].map((part) => ({
    part,
    lines: lines.filter((line) => line.part === part),
  }));

function PaperPart({
  found: { batch, workshop, as },
  part,
  lines,
}: {
  readonly found: BatchOnPage;
  readonly part: string;
  readonly lines: readonly SheetLine[];
}): ReactNode {
  const decimals = decimalsOf(as.step);
  const grams = (amount: bigint): string => gramsShown(amount, decimals);
  return (
    <table className="paper">
      <caption>{formulaCalled(batch, workshop, part)}</caption>
      <thead>
        <tr>
          {["Phase", "What", "Weigh", "May be off by", "Weighed, g", "Lot"].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map(({ key, phase, called, target, tolerance }) => (
          <tr key={key}>
            <td>{phase}</td>
            <th scope="row">{called}</th>
            <td className="number paper-target">{grams(target)}</td>
            <td className="number">±{grams(tolerance)}</td>
            <td className="paper-blank-cell" />
            <td className="paper-blank-cell" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
