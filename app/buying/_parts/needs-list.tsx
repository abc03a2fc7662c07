import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import { type Day, daysBetween } from "@/lib/domain/calendar";
import type { MaterialOutlook, ShelfEvent } from "@/lib/domain/plan-figures";
import { dayShown, daysShown, stockShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";
import { runAddress } from "@/lib/edge/run-address";
import type { BuyingView } from "./buying-view";

interface Needs {
  readonly outlooks: readonly MaterialOutlook[];
  readonly productOf: (id: string) => { readonly name: string };
  readonly view: BuyingView;
}

const COLUMNS = [
  { name: "Material" },
  { name: "To buy", kind: "number" },
  { name: "Order by", className: "not-on-phone" },
  { name: "There by", className: "not-on-phone" },
  { name: "First run that needs it" },
] as const;

/** What the plan lacks, by which day, and for which run. */
export function NeedsList({ outlooks, productOf, view }: Needs): ReactNode {
  return (
    <section className="block buying-needs" aria-labelledby="needs">
      <h2 id="needs">What the plan lacks</h2>
      <Ledger caption="What is to be bought, by which day, and the first run that needs it" columns={COLUMNS}>
        {bySoonest(outlooks, view).map(({ material, toBuy, neededBy, orderBy, events }) => (
          <tr key={material.id}>
            <th scope="row">
              <Link href={materialAddress(material.id)}>{material.name}</Link>
            </th>
            <td className="number end">
              {stockShown(view.wanted.get(material.id)?.quantity ?? toBuy, material.measure, "lacking")}
            </td>
            <td className="soft not-on-phone">
              <OrderBy day={view.wanted.get(material.id)?.orderBy ?? orderBy} view={view} />
            </td>
            <td className="soft not-on-phone">{dayOr(view.wanted.get(material.id)?.buyBy ?? neededBy, view)}</td>
            <td className="small soft second-line">
              <span className="phone-only">
                Order by: <OrderBy day={view.wanted.get(material.id)?.orderBy ?? orderBy} view={view} />; there by{" "}
                {dayOr(view.wanted.get(material.id)?.buyBy ?? neededBy, view)}.{" "}
              </span>
              {view.wanted.get(material.id)?.waits && "May wait. "}
              <FirstRun events={events} productOf={productOf} view={view} />
            </td>
          </tr>
        ))}
      </Ledger>
    </section>
  );
}

/** The day, and by how much it is late. */
const OrderBy = ({ day, view }: { readonly day: Day | null; readonly view: BuyingView }): ReactNode => (
  <>
    {dayOr(day, view)}
    {day !== null && day < view.today && (
      <>
        {" "}
        <Sign sign="pennant" tone="wrong">
          {daysShown(daysBetween(day, view.today))} late
        </Sign>
      </>
    )}
  </>
);

/** By the day on which they must be ordered: what is late, then what nobody offers and has no such day, then the rest. */
function bySoonest(outlooks: Needs["outlooks"], view: BuyingView): Needs["outlooks"] {
  const orderBy = ({ material, orderBy: planned }: MaterialOutlook): Day | null =>
    view.wanted.get(material.id)?.orderBy ?? planned;
  const place = (outlook: MaterialOutlook): number => {
    const day = orderBy(outlook);
    if (day === null) return NOBODY_OFFERS;
    return day < view.today ? LATE : IN_TIME;
  };
  return outlooks.toSorted(
    (a, b) =>
      place(a) - place(b) ||
      (orderBy(a) ?? view.today) - (orderBy(b) ?? view.today) ||
      a.material.name.localeCompare(b.material.name, "en"),
  );
}

const [LATE, NOBODY_OFFERS, IN_TIME] = [0, 1, 2];

const dayOr = (day: Day | null, { today }: BuyingView): string => (day === null ? "not known" : dayShown(day, today));

function FirstRun({
  events,
  productOf,
  view,
}: Pick<Needs, "productOf" | "view"> & Pick<MaterialOutlook, "events">): ReactNode {
  const lacking = events.find(isLacking);
  if (lacking === undefined) return "Keeps the safety stock";
  const { run } = lacking;
  return (
    <Link href={runAddress(run)}>
      {productOf(run.product).name}, {dayShown(run.date, view.today)}
    </Link>
  );
}

const isLacking = (event: ShelfEvent): event is Extract<ShelfEvent, { kind: "drawn" }> =>
  event.kind === "drawn" && event.lacking > 0n;
