import Link from "next/link";
import type { ReactNode } from "react";
import { Ribbon } from "@/app/_ui/ribbon";
import { Sign } from "@/app/_ui/sign";
import { Was } from "@/app/_ui/was";
import { type Day, daysBetween } from "@/lib/domain/calendar";
import type { MaterialFigures } from "@/lib/domain/plan-changes";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { Material } from "@/lib/domain/workshop";
import { dayShown, daysShown, NO_BREAK, stockShown } from "@/lib/edge/figures";
import { ribbonOf } from "@/lib/edge/ribbon";
import { materialAnchor } from "@/lib/edge/material-address";
import { LotLadder } from "./lot-ladder";
import { NextDraws } from "./next-draws";
import { Offers } from "./offers";
import { OrderWorking } from "./order-working";
import type { MaterialPart } from "./shelf";
import { addressOf, type Asked, type Group, isOpen } from "./shelf-list";

const KIND_WORDS: Readonly<Record<Material["kind"], string>> = {
  ingredient: "",
  packaging: "Packaging",
  consumable: "Consumable",
};

interface Row extends MaterialPart {
  readonly group: Group;
  readonly asked: Asked;
  /** Whether it opens in its place; else it is a link to the same list with this row open. */
  readonly opensHere: boolean;
}

/** One material: what is there, how long it lasts, when to order, its ribbon; it opens to its lots and its working. */
export function MaterialRow({ outlook, shelf, group, asked, opensHere }: Row): ReactNode {
  const { id } = outlook.material;
  const line = <MaterialLine outlook={outlook} shelf={shelf} group={group} />;
  const className = group === "covered" ? "shelf-row slim" : "shelf-row";
  const open = isOpen(outlook, asked);
  if (!open && !opensHere)
    return (
      <div className={className} id={materialAnchor(id)}>
        <Link className="shelf-line" href={`${addressOf(asked, { open: id })}#${materialAnchor(id)}`} prefetch={false}>
          {line}
        </Link>
      </div>
    );
  return (
    <details className={className} id={materialAnchor(id)} open={open}>
      <summary className="shelf-line">{line}</summary>
      <div className="shelf-open">
        <div>
          <LotLadder outlook={outlook} shelf={shelf} />
          <Offers outlook={outlook} shelf={shelf} />
        </div>
        <div>
          <NextDraws outlook={outlook} shelf={shelf} />
          <OrderWorking outlook={outlook} shelf={shelf} />
        </div>
      </div>
    </details>
  );
}

function MaterialLine({ outlook, shelf, group }: MaterialPart & { readonly group: Group }): ReactNode {
  const { material } = outlook;
  const { today, lastDay, axis } = shelf;
  const before = shelf.before.get(material.id) ?? null;
  const held = (figures: MaterialFigures): string => stockShown(figures.onHand, material.measure, "there");
  const until = (figures: MaterialFigures): string => lasts(figures, today, lastDay);
  return (
    <>
      <span className="shelf-name">
        <span>{material.name}</span>
        {KIND_WORDS[material.kind] && <small>{KIND_WORDS[material.kind]}</small>}
        {shelf.countDue.has(material.id) && (
          <small>
            <Sign sign="tally" tone="open">
              count due
            </Sign>
          </small>
        )}
      </span>
      <span className="shelf-held number">
        <b>{held(outlook)}</b> <Was now={held(outlook)} before={before && held(before)} />
        <span className="unseen"> on the shelf,</span>
      </span>
      <span className="shelf-lasts number">
        <span className="unseen">lasts </span>
        {until(outlook)} <Was now={until(outlook)} before={before && until(before)} />
        <span className="unseen">,</span>
      </span>
      <span className="shelf-when">
        <OrderDay outlook={outlook} today={today} group={group} />
        {before && <OrderBefore outlook={outlook} before={before} today={today} />}
      </span>
      <span className="shelf-ribbon">
        <Ribbon ribbon={ribbonOf(outlook, today, lastDay, group === "covered" ? "slim" : "row")} weeks={axis.lines} />
      </span>
    </>
  );
}

/** Days to the first run that cannot be met; where every one is, at least the days that were looked at. */
function lasts({ shortOn }: MaterialFigures, today: Day, lastDay: Day): string {
  if (shortOn !== null) return daysShown(daysBetween(today, shortOn));
  return `${String(daysBetween(today, lastDay))}+${NO_BREAK}days`;
}

/** The order day and what is to be bought, where the last change altered them. */
function OrderBefore({
  outlook,
  before,
  today,
}: {
  readonly outlook: MaterialOutlook;
  readonly before: MaterialFigures;
  readonly today: Day;
}): ReactNode {
  const { measure } = outlook.material;
  const day = ({ orderBy }: MaterialFigures): string => (orderBy === null ? "no order" : dayShown(orderBy, today));
  const bought = ({ toBuy }: MaterialFigures): string =>
    toBuy > 0n ? `buy ${stockShown(toBuy, measure, "lacking")}` : "nothing to buy";
  return (
    <>
      {" "}
      <Was now={day(outlook)} before={day(before)} />
      {bought(outlook) !== bought(before) && (
        <small className="was">
          {bought(outlook)}, was {bought(before)}
        </small>
      )}
    </>
  );
}

interface When {
  readonly outlook: MaterialOutlook;
  readonly today: Day;
  readonly group: Group;
}

function OrderDay({ outlook: { orderBy }, today, group }: When): ReactNode {
  if (group === "to make")
    return (
      <Sign sign="notch" tone="open">
        make it
      </Sign>
    );
  if (group === "no offer")
    return (
      <Sign sign="box" tone="wrong">
        no offer
      </Sign>
    );
  if (orderBy === null)
    return (
      <>
        <span aria-hidden="true">–</span>
        <span className="unseen">no order needed,</span>
      </>
    );
  if (group === "nothing to buy")
    return (
      <Sign sign="dash" tone="still">
        nothing to buy
      </Sign>
    );
  const before = <span className="unseen">order by </span>;
  if (orderBy < today)
    return (
      <Sign sign="pennant" tone="wrong">
        {before}
        {dayShown(orderBy, today)}
      </Sign>
    );
  const day = orderBy === today ? "today" : dayShown(orderBy, today);
  return (
    <Sign sign="notch" tone={group === "this week" ? "open" : "still"}>
      {before}
      {day}
    </Sign>
  );
}
