import Link from "next/link";
import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import type { LotDraw, MadeRunResult } from "@/lib/domain/made-run";
import type { PlanChanges } from "@/lib/domain/plan-changes";
import type { RunOutlook, RunShortage } from "@/lib/domain/plan-figures";
import type { Material } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { dayShown, moneyShown, stockShown } from "@/lib/edge/figures";
import { closeARun } from "../closing-actions";
import { AskingForm } from "./asking-form";
import { calledRun, unitsShown } from "./run-words";
import { type WeekView, weekWith } from "./week-view";
import { WhatChanged } from "./what-changed";

interface Closing {
  readonly outlook: RunOutlook;
  readonly view: WeekView;
  /** What closing it today would take, lot by lot: all that it needs, or what is there of it. */
  readonly made: Extract<MadeRunResult, { readonly kind: "made" }>;
  readonly short: readonly RunShortage[];
  readonly changes: PlanChanges;
  readonly materialOf: (id: string) => Material;
  readonly newId: string;
}

/** Before a run is closed as made: what it takes from the shelf, lot by lot, and what it asks of the maker. */
export function CloseARun({ outlook, view, made, short, changes, materialOf, newId }: Closing): ReactNode {
  const { run } = outlook;
  const { today, workshop, monday } = view;
  const called = calledRun(outlook, today);
  const isShort = short.length > 0;
  return (
    <section className="week-form" id="close-a-run" aria-labelledby="close-a-run-title">
      <h2 id="close-a-run-title">
        Was {called} made, {unitsShown(run.units)}?
      </h2>
      {isShort && (
        <p className="fault">
          <Sign sign="box" tone="wrong">
            The shelf, as it is written down, lacks{" "}
            {inARow(
              short.map(({ material, by }) => `${stockShown(by, material.measure, "lacking")} of ${material.name}`),
            )}
            .
          </Sign>{" "}
          Where it was made all the same, what is there is drawn, and the rest was on the shelf without being written
          down.
        </p>
      )}
      <AskingForm
        key={run.id}
        act={closeARun}
        carried={view.carriedOf(run)}
        kept={{ lot: newId }}
        takesFocus
        className="asking-in-a-row"
        fields={[
          { name: "made", label: "Units that came out", type: "text", value: run.units.toString() },
          {
            name: "bestBefore",
            label: "Best before (where there is one)",
            type: "text",
            value: "",
            hint: "A date as 2027-11-25, or a month as 11/2027.",
          },
        ]}
        button={isShort ? "Close it as made" : "Close it as made, drawing what is listed"}
        {...(isShort && { other: { deed: "anyway", label: "Made anyway" } })}
      />
      <Draws
        draws={made.draws}
        view={view}
        materialOf={materialOf}
        worth={moneyShown(made.value, workshop.settings.currency)}
      />
      <WhatChanged changes={changes} today={today} title="What closing it changes" />
      <p className="week-form-end">
        <Link href={weekWith(monday, {})} scroll={false}>
          Leave it as it is
        </Link>
      </p>
    </section>
  );
}

interface DrawsTable {
  readonly draws: readonly LotDraw[];
  readonly view: WeekView;
  readonly materialOf: (id: string) => Material;
  readonly worth: string;
}

function Draws({ draws, view: { today }, materialOf, worth }: DrawsTable): ReactNode {
  if (draws.length === 0) return <p>Nothing of what it draws is on the shelf.</p>;
  return (
    <table className="ledger close-draws">
      <caption>What it takes from the shelf, worth {worth}</caption>
      <thead>
        <tr>
          <th scope="col">Material</th>
          <th scope="col">Lot</th>
          <th scope="col" className="number">
            Takes
          </th>
          <th scope="col" className="number not-on-phone">
            Leaves
          </th>
        </tr>
      </thead>
      <tbody>
        {draws.map(({ lot, quantity }) => {
          const { name, measure } = materialOf(lot.material);
          return (
            <tr key={lot.id}>
              <th scope="row">{name}</th>
              <td>
                {lot.id}
                {lot.expires !== null && <small>to {dayShown(lot.expires, today, { weekday: false })}</small>}
              </td>
              <td className="number end">{stockShown(quantity, measure, "lacking")}</td>
              <td className="number not-on-phone">
                {quantity === lot.remaining ? "nothing" : stockShown(lot.remaining - quantity, measure, "there")}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
