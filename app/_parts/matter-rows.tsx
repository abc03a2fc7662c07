import type { Route } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { type Day, daysAfter, isoDate, mondayOf } from "@/lib/domain/calendar";
import type { MaterialOutlook, RunOutlook } from "@/lib/domain/plan-figures";
import type { Material } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { countShown, dayShown, daysShown, stockShown } from "@/lib/edge/figures";
import { Sign } from "@/app/_ui/sign";

/** One matter: what it is about, its sign, and why. */
function Matter({
  href,
  name,
  sign,
  children,
}: {
  readonly href: Route;
  readonly name: string;
  readonly sign: ReactNode;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <li className="matter">
      <b>
        <Link href={href}>{name}</Link>
      </b>
      {sign}
      <p>{children}</p>
    </li>
  );
}

const onTheShelf = ({ name }: Material): Route => `/shelf?${new URLSearchParams({ find: name }).toString()}`;

/** A run that cannot be made, what it is short of, and how many can. */
export function RunMatter({ outlook, today }: { readonly outlook: RunOutlook; readonly today: Day }): ReactNode {
  const { run, product, short, mostUnits, limiting } = outlook;
  const [first] = short;
  if (!first) return null;
  const more = short.length > 1 ? `, and ${counted(short.length - 1, "more material", "more materials")}` : "";
  return (
    <Matter
      href={`/week?of=${isoDate(mondayOf(run.date))}`}
      name={`${countShown(run.units)} × ${product.name}, ${dayShown(run.date, today)}`}
      sign={
        <Sign sign="box" tone="wrong">
          short {stockShown(first.by, first.material.measure, "lacking")}
        </Sign>
      }
    >
      Short of {first.material.name}
      {more}. {mostUnits === 0n ? "None" : `At most ${countShown(mostUnits)}`} can be made with what will be here then
      {limiting.id === first.material.id ? "." : `: ${limiting.name} is the limit.`}
    </Matter>
  );
}

/** A material to order, by when, how much, and when it would come. */
export function OrderMatter({ outlook, today }: { readonly outlook: MaterialOutlook; readonly today: Day }): ReactNode {
  const { material, orderBy, daysLate, toBuy, onHand, shortOn, firstArrival } = outlook;
  const shown = (amount: bigint, direction: "there" | "lacking") => stockShown(amount, material.measure, direction);
  return (
    <Matter
      href={onTheShelf(material)}
      name={material.name}
      sign={<OrderSign orderBy={orderBy} daysLate={daysLate ?? 0} today={today} />}
    >
      Buy {shown(toBuy, "lacking")}. {shown(onHand, "there")} on the shelf,{" "}
      {shortOn === null ? "which falls below the safety stock" : `short from ${dayShown(shortOn, today)}`}.{" "}
      {orderBy === null
        ? "No supplier offers it."
        : `Ordered today, the earliest comes ${dayShown(firstArrival, today)}.`}
    </Matter>
  );
}

function OrderSign({
  orderBy,
  daysLate,
  today,
}: {
  readonly orderBy: Day | null;
  readonly daysLate: number;
  readonly today: Day;
}): ReactNode {
  if (orderBy === null)
    return (
      <Sign sign="box" tone="wrong">
        no offer
      </Sign>
    );
  if (daysLate > 0)
    return (
      <Sign sign="pennant" tone="wrong">
        order by {dayShown(orderBy, today)}, {daysShown(daysLate)} late
      </Sign>
    );
  return (
    <Sign sign="notch" tone="open">
      {orderBy === today ? "order today" : `order by ${dayShown(orderBy, today)}`}
    </Sign>
  );
}

/** A material of which something goes out of date unused. */
export function ExpiryMatter({
  outlook,
  today,
}: {
  readonly outlook: MaterialOutlook;
  readonly today: Day;
}): ReactNode {
  const { material, expiring } = outlook;
  const [first] = [...expiring].sort((a, b) => a.on - b.on);
  if (!first) return null;
  const isGone = first.on <= today;
  return (
    <Matter
      href={onTheShelf(material)}
      name={material.name}
      sign={
        <Sign sign="hourglass" tone="wrong">
          {stockShown(first.quantity, material.measure, "nearest")} {isGone ? "out of date" : "will be lost"}
        </Sign>
      }
    >
      The last day of use of lot {first.lot} {isGone ? "was" : "is"} {dayShown(daysAfter(first.on, -1), today)}
      {expiring.length > 1 && `; ${counted(expiring.length - 1, "more lot goes", "more lots go")} out of date`}.
    </Matter>
  );
}
