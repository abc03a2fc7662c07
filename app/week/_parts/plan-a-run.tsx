import Link from "next/link";
import type { ReactNode } from "react";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { forNewWork } from "@/lib/domain/desk";
import { namedChoices } from "@/lib/edge/record-choices";
import { planARun } from "../actions";
import { AskingForm } from "@/app/_ui/asking-form";
import { type WeekView, weekWith } from "./week-view";

interface Planning {
  readonly view: WeekView;
  /** The day that stands in the form. */
  readonly day: Day;
  /** What stands in it besides, where the address says so: from where it was suggested. */
  readonly product: string;
  readonly size: string;
  readonly newId: string;
}

/** The form for a run to come. */
export function PlanARun({ view, day, product, size, newId }: Planning): ReactNode {
  const products = forNewWork(view.desk, "products", view.workshop.products);
  return (
    <section className="week-form" id="plan-a-run" aria-labelledby="plan-a-run-title">
      <h2 id="plan-a-run-title">Plan a run</h2>
      {products.length === 0 ? (
        <p>
          There is no product yet. <Link href="/book">Enter one in the Book</Link> first.
        </p>
      ) : (
        <AskingForm
          key={`${isoDate(day)} ${product} ${size}`}
          act={planARun}
          carried={{}}
          kept={{ id: newId }}
          takesFocus
          className="asking-in-a-row"
          fields={[
            {
              name: "product",
              label: "Product",
              type: "record",
              value: products.find(({ id }) => id === product || products.length === 1)?.id ?? "",
              options: namedChoices(view.workshop, "products", products),
            },
            { name: "date", label: "Day", type: "date", value: isoDate(day) },
            {
              name: "size",
              label: "How much",
              type: "text",
              value: size,
              hint: "Units, as 24; or what the vessel is to hold, as 6 kg: it is turned into whole units, rounded down.",
            },
          ]}
          button="Plan it"
          isFirst
        />
      )}
      <p className="week-form-end">
        <Link href={weekWith(view.monday, {})} scroll={false}>
          Close the form
        </Link>
      </p>
    </section>
  );
}
