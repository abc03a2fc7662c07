import type { Route } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { MaterialOutlook, RunOutlook } from "@/lib/domain/plan-figures";
import type { RunInstead } from "@/lib/domain/run-instead";
import { counted } from "@/lib/edge/counted";
import { countShown, dayShown, daysShown, stockShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";
import { runAddress } from "@/lib/edge/run-address";
import { MakeIt } from "@/app/_ui/make-it";
import { Sign } from "@/app/_ui/sign";
import type { CountMatter } from "./what-matters";

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

/** A run that cannot be made, what it is short of, and how many can. */
export function RunMatter({ outlook, today }: { readonly outlook: RunOutlook; readonly today: Day }): ReactNode {
  const { run, product, short, mostUnits, limiting } = outlook;
  const [first] = short;
  if (!first) return null;
  const more = short.length > 1 ? `, and ${counted(short.length - 1, "more material", "more materials")}` : "";
  return (
    <Matter
      href={runAddress(run)}
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
export function OrderMatter({
  outlook,
  instead,
  today,
}: {
  readonly outlook: MaterialOutlook;
  /** The run that makes it, where nobody offers it. @rule AHEAD-9 */
  readonly instead: RunInstead | null;
  readonly today: Day;
}): ReactNode {
  const { material, orderBy, daysLate, toBuy, onHand, firstArrival } = outlook;
  const shown = (amount: bigint, direction: "there" | "lacking") => stockShown(amount, material.measure, direction);
  return (
    <Matter
      href={materialAddress(material.id)}
      name={material.name}
      sign={instead === null ? <OrderSign orderBy={orderBy} daysLate={daysLate ?? 0} today={today} /> : <MakeSign />}
    >
      {instead === null ? "Buy" : "Make"} {shown(toBuy, "lacking")}. {shown(onHand, "there")} on the shelf,{" "}
      {belowWords(outlook, today)}.{" "}
      {instead !== null ? (
        <MakeIt instead={instead} today={today} />
      ) : orderBy === null ? (
        "No supplier offers it."
      ) : (
        `Ordered today, the earliest comes ${dayShown(firstArrival, today)}.`
      )}
    </Matter>
  );
}

const MakeSign = (): ReactNode => (
  <Sign sign="notch" tone="open">
    make it
  </Sign>
);

function belowWords({ shortOn, belowSafetyOn }: MaterialOutlook, today: Day): string {
  if (shortOn !== null) return shortOn <= today ? "short already" : `short from ${dayShown(shortOn, today)}`;
  if (belowSafetyOn === null || belowSafetyOn <= today) return "which is below the safety stock";
  return `below the safety stock from ${dayShown(belowSafetyOn, today)}`;
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
  const soonestFirst = [...expiring].sort((a, b) => a.on - b.on);
  const shown = (amount: bigint) => stockShown(amount, material.measure, "nearest");
  const total = expiring.reduce((sum, { quantity }) => sum + quantity, 0n);
  const areGone = soonestFirst.every(({ on }) => on <= today);
  const named = soonestFirst.slice(0, LOTS_NAMED);
  return (
    <Matter
      href={materialAddress(material.id)}
      name={material.name}
      sign={
        <Sign sign="hourglass" tone="wrong">
          {shown(total)} {areGone ? "out of date" : "will be lost"}
        </Sign>
      }
    >
      {named
        .map(
          ({ lot, on, quantity }) => `${shown(quantity)} of lot ${lot}, good to ${dayShown(daysAfter(on, -1), today)}`,
        )
        .join("; ")}
      {expiring.length > named.length && `; ${counted(expiring.length - named.length, "more lot", "more lots")}`}.
    </Matter>
  );
}

/** A line has room for so many. */
const LOTS_NAMED = 3;

/** A material that the maker wanted counted by now. @rule LEDGER-25 */
export function CountRow({
  matter: { material, due },
  today,
}: {
  readonly matter: CountMatter;
  readonly today: Day;
}): ReactNode {
  const { countedOn, draws } = due;
  return (
    <Matter
      href={materialAddress(material.id)}
      name={material.name}
      sign={
        <Sign sign="tally" tone="open">
          count due
        </Sign>
      }
    >
      {countedOn === null ? "Never counted" : `Last counted ${dayShown(countedOn, today)}`},{" "}
      {counted(draws, "run", "runs")} since.
    </Matter>
  );
}
