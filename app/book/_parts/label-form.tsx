import Form from "next/form";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { type LabelPaper, labelsOnASheet } from "@/lib/domain/label/paper";
import type { FinishedLot } from "@/lib/domain/workshop";
import { dayShown } from "@/lib/edge/figures";
import type { LabelAsked } from "@/lib/edge/forms/label-asked";
import { Field } from "@/app/_ui/field";
import { labelPath, type Query, textIn } from "./addresses";

interface Asking {
  readonly label: string;
  readonly lots: readonly FinishedLot[];
  readonly lot: FinishedLot | null;
  readonly papers: readonly LabelPaper[];
  readonly paper: LabelPaper | null;
  readonly asked: LabelAsked | null;
  readonly query: Query;
  readonly today: Day;
}

/** Which batch, on which paper, from which label on; asked by address, so that it needs no script. */
export const LabelForm = ({ label, lots, lot, papers, paper, asked, query, today }: Asking): ReactNode => (
  <Form action={labelPath(label)} scroll={false} prefetch={false} className="label-form">
    <div className="field">
      <label htmlFor="label-lot">Batch</label>
      <select id="label-lot" name="lot" defaultValue={lot?.id ?? ""} key={lot?.id ?? ""}>
        <option value="">{lots.length === 0 ? "None was made yet" : "Choose a finished lot"}</option>
        {lots.map(({ id, made }) => (
          <option key={id} value={id}>
            {id}, made {dayShown(made, today, { year: true })}
          </option>
        ))}
      </select>
    </div>
    {paper && (
      <>
        <div className="field">
          <label htmlFor="label-paper">Label sheet</label>
          <select id="label-paper" name="paper" defaultValue={paper.id} key={paper.id}>
            {papers.map((each) => (
              <option key={each.id} value={each.id}>
                {each.name}
              </option>
            ))}
          </select>
        </div>
        <Field
          label="Starting at label"
          name="from"
          inputMode="numeric"
          autoComplete="off"
          defaultValue={textIn(query, "from")}
          hint={`Of ${String(labelsOnASheet(paper))}, row by row. Empty for the first.`}
          fault={asked?.faults.from ?? undefined}
        />
        <Field
          label="How many"
          name="count"
          inputMode="numeric"
          autoComplete="off"
          defaultValue={textIn(query, "count")}
          hint="Empty for the rest of the sheet."
          fault={asked?.faults.count ?? undefined}
        />
      </>
    )}
    <button className="button">Show the labels</button>
  </Form>
);
