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
import { reorderPoint, safetyStockFor } from "@/lib/domain/buying/reorder-suggestions";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { counted } from "@/lib/edge/counted";
import { stockShown } from "@/lib/edge/figures";
import { readSuggestion, type SuggestionInputs, suggestionTyped } from "@/lib/edge/forms/suggestion-inputs";
import { idOfSegment, paidAddress, suggestedAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { beginsWith, HINTS, LABELS } from "../../_parts/suggestion-begins";
import { economicOf } from "../../_parts/suggestions-worked";
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
        {"inputs" in read && <Figures inputs={read.inputs} outlook={outlook} />}
        {saysOf(use)}
      </Opening>
      <div className="suggested">
        {"inputs" in read && (
          <Suggestions inputs={read.inputs} outlook={outlook} workshop={workshop} today={found.today} />
        )}
        <Form
          action={suggestedAddress(material.id)}
          scroll={false}
          prefetch={false}
          className="buying-frame suggested-form"
          aria-labelledby="from"
        >
          <h2 id="from">Worked out from</h2>
          <div className="suggested-fields" key={JSON.stringify(typed)}>
            {LABELS(material.measure, workshop.settings.currency).map(({ field, label }) => (
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
      </div>
      <p className="small paid-further">
        <Link href={materialAddress(material.id)}>On the shelf</Link> ·{" "}
        <Link href={paidAddress(material.id)}>What was paid for it</Link>
      </p>
    </>
  );
}

/** The textbook's figures first. */
function Figures({
  inputs,
  outlook: { material, pricedOffer },
}: {
  readonly inputs: SuggestionInputs;
  readonly outlook: MaterialOutlook;
}): ReactNode {
  const shown = (held: bigint): string => stockShown(held, material.measure, "lacking");
  const order = pricedOffer === null ? null : economicOf(inputs, pricedOffer);
  return (
    <>
      Keep <b>{shown(safetyStockFor(inputs.demand))}</b> back and order at <b>{shown(reorderPoint(inputs.demand))}</b>
      {order !== null && (
        <>
          , <b>{shown(order.quantity)}</b> at a time
        </>
      )}
      .{" "}
    </>
  );
}

const saysOf = (use: PlannedUse | null): string =>
  use === null
    ? "No planned run uses it, so the use of a day is yours to write."
    : `The figures are the textbook’s, from what the planned runs use over ${counted(use.byWeek.length, "week", "weeks")}; it changes nothing: what the plan buys follows the runs.`;
