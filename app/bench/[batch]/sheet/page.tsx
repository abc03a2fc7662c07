import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { checksAsked, type CheckFound, checksFound } from "@/lib/domain/bench/asked-checks";
import { formulaAsStarted } from "@/lib/domain/bench/started-as";
import { linesWeighed } from "@/lib/domain/bench/weights";
import { batchAddress } from "@/lib/edge/bench-address";
import { ALWAYS_CARE, askedInWords, heatOf } from "@/lib/edge/bench-words";
import { weightShown } from "@/lib/edge/bench-weights";
import { countShown, dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { PaperPhases } from "../../_parts/paper-phases";
import { batchForPage, type BatchOnPage } from "../../batch-for-page";
import { cautionsOf, decimalsOf, materialsOf } from "../../bench-on-page";
import { paperPhases } from "../../paper-sheet";
import { stepsOfTheWhole } from "../../sheet-lines";
import "../../bench.css";

interface Page {
  readonly params: Promise<{ readonly batch: string }>;
}

export async function generateMetadata({ params }: Page): Promise<Metadata> {
  return { title: `Weigh sheet ${(await batchForPage((await params).batch)).code}` };
}

/** The weigh sheet on paper: black on white, room for a pen, the batch on every sheet, what is weighed filled in. */
export default async function SheetPage({ params }: Page): Promise<ReactNode> {
  const found = await batchForPage((await params).batch);
  const { batch, as, code } = found;
  const formula = formulaAsStarted(found, batch);
  const phases = paperPhases(found);
  const steps = stepsOfTheWhole(formula, phases);
  return (
    <div className={batch.lines.length > FEW ? "bench-sheet bench-printed long" : "bench-sheet bench-printed"}>
      <p className="paper-head">
        {as.workshop} · weigh sheet · batch {code}, {as.product}
      </p>
      <SheetHead found={found} />
      <p className="paper-care">
        <b>Take care.</b> {[...cautionsOf(found.workshop, materialsOf(batch), formula), ALWAYS_CARE].join(" ")}
      </p>
      <PaperPhases phases={phases} decimals={decimalsOf(as.step)} />
      <p className="paper-total">
        <b>All that is weighed</b> <b>{weightShown(sizeOf(found), decimalsOf(as.step))}</b>
      </p>
      {steps.map((step) => (
        <p key={step.at} className="paper-step">
          <span className="paper-box" /> {[step.text, heatOf(step)].filter(Boolean).join(" ")}
        </p>
      ))}
      <section className="paper-checks" aria-label="To be filled in">
        {blanksOf(checksFound(batch, checksAsked(formula)), found).map(({ label, filled }) => (
          <p key={label}>
            {label} <u className="paper-blank">{filled}</u>
          </p>
        ))}
      </section>
    </div>
  );
}

/** So many lines fit a page with room between them. */
const FEW = 9;

/** All that comes off the shelf for it, µg: a premix that is poured in was weighed where it was made. */
const sizeOf = ({ batch }: BatchOnPage): bigint =>
  batch.lines.filter(({ of }) => of.kind === "material").reduce((sum, { target }) => sum + target, 0n);

function SheetHead({ found }: { readonly found: BatchOnPage }): ReactNode {
  const { batch, as, code, today } = found;
  const lines = linesWeighed(batch);
  const done = lines.filter(({ state }) => state === "done").length;
  const facts = [
    ["Batch", code],
    ["Size", weightShown(sizeOf(found), 0)],
    ["Expect", unitsInWords(batch.run.units)],
    ["Started", dayShown(batch.startedOn, today, { year: true, weekday: false })],
  ] as const;
  return (
    <header className="paper-opening">
      <div>
        <p className="crumb">
          <Link href={batchAddress(batch.run.id)}>Batch {code}</Link> · weigh sheet
        </p>
        <h1>{as.product}</h1>
      </div>
      <dl className="paper-facts">
        {facts.map(([name, fact]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{fact}</dd>
          </div>
        ))}
      </dl>
      <p className="finding screen-only">
        <b>
          {countShown(done)} of {countShown(lines.length)} {lines.length === 1 ? "line" : "lines"}
        </b>{" "}
        {done === 1 ? "is" : "are"} weighed and filled in. It prints on A4 or Letter; what is written on it is typed in
        on the page of the batch afterwards.
      </p>
    </header>
  );
}

interface Blank {
  readonly label: string;
  readonly filled: string | null;
}

/** What the formula asks, each with its limits, and what was found; else what is looked at anyway. */
const blanksOf = (checks: readonly CheckFound[], { batch }: BatchOnPage): readonly Blank[] => [
  ...checks.map(({ check, note }) => ({
    label: `${check.what}, ${askedInWords(check)}`,
    filled: note === null ? null : note.kind === "checked" ? note.found : note.ph,
  })),
  ...["pH", "Appearance"]
    .filter((what) => checks.every(({ check }) => check.what !== what))
    .map((label) => ({ label, filled: null })),
  ...["Meter calibrated on", `Filled, of ${countShown(batch.run.units)}`, "Left over, g", "Made by", "Checked by"].map(
    (label) => ({ label, filled: null }),
  ),
];
