import Link from "next/link";
import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { runsOn } from "@/lib/domain/turns-of-day";
import { makingAddress } from "@/lib/edge/ledger-address";
import { moveARun, putRun, removeRun, resizeARun } from "../actions";
import { AskingForm } from "@/app/_ui/asking-form";
import { Press } from "@/app/_ui/press";
import { calledRun, unitsShown } from "./run-words";
import type { WeekView } from "./week-view";

/** What can be done with a run: another day, another place in its day, another size; made; deleted. */
export function RunTools({ outlook, view }: { readonly outlook: RunOutlook; readonly view: WeekView }): ReactNode {
  const { run } = outlook;
  const { today } = view;
  const carried = { ...view.carriedOf(run), open: run.id };
  const day = runsOn(view.workshop.runs, run.date);
  const at = day.indexOf(run);
  const [earlier, later] = [day[at - 1], day[at + 1]];
  const called = calledRun(outlook, today);
  const put = { ...carried, to: isoDate(run.date) };
  return (
    <section className="run-tools" aria-label={`Change ${called}`}>
      {run.date < today && (
        <p>
          <b>Was it made? If not, move it or remove it.</b>
        </p>
      )}
      <div className="run-asking">
        <AskingForm
          act={moveARun}
          carried={carried}
          fields={[{ name: "date", label: "Move to", type: "date", value: isoDate(run.date) }]}
          button="Move the run"
        />
        <AskingForm
          act={resizeARun}
          carried={carried}
          fields={[
            {
              name: "size",
              label: "Units, or a weight in the vessel",
              type: "text",
              value: run.units.toString(),
            },
          ]}
          button="Change the size"
        />
      </div>
      <div className="run-buttons">
        {earlier && (
          <Press act={putRun} carried={{ ...put, before: earlier.id }} name={`Earlier in the day: ${called}`}>
            Earlier in the day
          </Press>
        )}
        {later && (
          <Press act={putRun} carried={{ ...put, before: day[at + 2]?.id ?? "" }} name={`Later in the day: ${called}`}>
            Later in the day
          </Press>
        )}
        <Link className="button" href={makingAddress(run.id)} prefetch={false}>
          It was made
        </Link>
        <Press act={removeRun} carried={carried} name={`Remove ${unitsShown(run.units)}: ${called}`}>
          Remove {unitsShown(run.units)}
        </Press>
      </div>
    </section>
  );
}
