import Link from "next/link";
import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import { HOUR_FIELDS, hoursCarried, hoursShownAsTyped } from "@/lib/edge/forms/week-forms";
import { setHours } from "../hours-actions";
import { AskingForm } from "@/app/_ui/asking-form";
import { type WeekView, weekWith } from "./week-view";

const DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

/** The maker's hours at the bench, day by day. @rule BOOK-6 */
export function BenchHoursForm({ view: { desk, monday } }: { readonly view: WeekView }): ReactNode {
  const shown = hoursShownAsTyped(desk.benchMinutes);
  return (
    <section className="week-form" id="bench-hours" aria-labelledby="bench-hours-title">
      <h2 id="bench-hours-title">Your hours at the bench</h2>
      <p className="small soft">
        In hours, as 5, 7.5 or 5:30. A day left empty has none; leave all empty where you do not want to say. They are
        kept in the app and not in a workshop file.
      </p>
      <AskingForm
        act={setHours}
        carried={{ hours: hoursCarried(desk.benchMinutes), of: isoDate(monday) }}
        takesFocus
        className="asking-hours"
        fields={HOUR_FIELDS.map((name, at) => ({
          name,
          label: DAYS[at] ?? name,
          type: "text" as const,
          value: shown[at] ?? "",
        }))}
        button="Keep these hours"
        isFirst
      />
      <p className="week-form-end">
        <Link href={weekWith(monday, {})} scroll={false}>
          Close the form
        </Link>
      </p>
    </section>
  );
}
