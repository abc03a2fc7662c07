import type { Metadata } from "next";
import Form from "next/form";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Field } from "@/app/_ui/field";
import { Opening } from "@/app/_ui/finding";
import { asSentence } from "@/app/_ui/sentence";
import { planForPage } from "@/app/plan-for-page";
import { type PlannedUse, plannedUse } from "@/lib/domain/buying/planned-use";
import { counted } from "@/lib/edge/counted";
import { readSuggestion, suggestionTyped } from "@/lib/edge/forms/suggestion-inputs";
import { idOfSegment, paidAddress, suggestedAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { beginsWith, HINTS, LABELS } from "../../_parts/suggestion-begins";
import { Suggestions } from "../../_parts/suggestions";
import { UseWorking } from "../../_parts/use-working";
import { BuyingCrumb } from "../../orders/_parts/buying-crumb";
import "../../buying.css";

export const metadata: Metadata = { title: "Safety stock and order size" };

interface Page {
  readonly params: Promise<{ readonly material: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** Textbook figures beside the plan's: suggestions, with what they are reckoned from to be changed. */
export default async function SuggestedPage({ params, searchParams }: Page): Promise<ReactNode> {
  const [found, id, parameters] = [await planForPage(), idOfSegment((await params).material), await searchParams];
  if (found === null) redirect("/");
  const outlook = found.plan.materials.find(({ material }) => material.id === id);
  if (outlook === undefined) notFound();
  const { material } = outlook;
  const { workshop } = found;
  const use = plannedUse(found.plan, material.id);
  const supplier = workshop.suppliers.find((each) => each.id === outlook.pricedOffer?.supplier) ?? null;
  const begins = beginsWith(use, supplier, material.measure, workshop.settings.currency);
  const typed = suggestionTyped(parameters, begins);
  const read = readSuggestion(typed, material.measure, workshop.settings.currency);
  const faults = "faults" in read ? read.faults : {};
  return (
    <>
      <Opening crumb={<BuyingCrumb />} title={`Safety stock and order size of ${material.name}`}>
        {saysOf(use)}
      </Opening>
      <div className="suggested">
        <Form
          action={suggestedAddress(material.id)}
          scroll={false}
          prefetch={false}
          className="buying-frame suggested-form"
          aria-labelledby="from"
        >
          <h2 id="from">Worked out from</h2>
          <div className="suggested-fields" key={JSON.stringify(typed)}>
            {LABELS(material.measure).map(({ field, label }) => (
              <Field
                key={field}
                label={label}
                name={field}
                autoComplete="off"
                defaultValue={typed[field]}
                hint={HINTS[field]}
                fault={faults[field] === undefined ? undefined : asSentence(faults[field])}
              />
            ))}
          </div>
          {use !== null && <UseWorking use={use} measure={material.measure} />}
          <div className="buying-frame-buttons">
            <button className="button">Work it out again</button>
            <Link className="button plain" href={suggestedAddress(material.id)}>
              As the plan has it
            </Link>
          </div>
        </Form>
        {"inputs" in read && (
          <Suggestions inputs={read.inputs} outlook={outlook} workshop={workshop} today={found.today} />
        )}
      </div>
      <p className="small paid-further">
        <Link href={materialAddress(material.id)}>On the shelf</Link> ·{" "}
        <Link href={paidAddress(material.id)}>What was paid for it</Link>
      </p>
    </>
  );
}

const saysOf = (use: PlannedUse | null): string =>
  use === null
    ? "No planned run uses it, so the use of a day is yours to write."
    : `Suggestions of the textbook, from what the planned runs use over ${counted(use.byWeek.length, "week", "weeks")}. They change nothing: what the plan buys follows the runs.`;
