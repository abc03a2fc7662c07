import type { ReactNode } from "react";
import { element } from "@/lib/edge/markup";
import { materialAnchor } from "@/lib/edge/material-address";
import { LastsWorking } from "./lasts-working";
import { LotLadder } from "./lot-ladder";
import { materialLine } from "./material-line";
import { NextDraws } from "./next-draws";
import { Offers } from "./offers";
import { OrderDayWorking, PurchaseWorking } from "./order-working";
import type { MaterialPart } from "./shelf";
import { addressOf, type Asked, type Group, isOpen } from "./shelf-list";

interface Row extends MaterialPart {
  readonly group: Group;
  readonly asked: Asked;
  /** How many rows the list has. */
  readonly listed: number;
}

/** In a longer list a row opens by its address, so that the page need not carry what stands in every one of them. */
const OPENING_HERE = 80;

/** One material: what is there, how long it lasts, when to order, its ribbon; it opens to its lots and its working. */
export function MaterialRow({ outlook, shelf, group, asked, listed }: Row): ReactNode {
  const { id } = outlook.material;
  const line = materialLine(outlook, shelf, group);
  const className = group === "covered" ? "shelf-row slim" : "shelf-row";
  const open = isOpen(outlook, asked, listed);
  if (!open && listed > OPENING_HERE) {
    const href = `${addressOf(asked, { open: id })}#${materialAnchor(id)}`;
    const link = element("a", { class: "shelf-line", "data-row": "", href }, line);
    return <div className={className} id={materialAnchor(id)} dangerouslySetInnerHTML={{ __html: link }} />;
  }
  return (
    <details className={className} id={materialAnchor(id)} open={open}>
      <summary className="shelf-line" dangerouslySetInnerHTML={{ __html: line }} />
      <div className="shelf-open">
        <div>
          <LotLadder outlook={outlook} shelf={shelf} />
          <Offers outlook={outlook} shelf={shelf} />
          <PurchaseWorking outlook={outlook} shelf={shelf} />
        </div>
        <div>
          <NextDraws outlook={outlook} shelf={shelf} />
          <LastsWorking outlook={outlook} shelf={shelf} />
          <OrderDayWorking outlook={outlook} shelf={shelf} />
        </div>
      </div>
    </details>
  );
}
