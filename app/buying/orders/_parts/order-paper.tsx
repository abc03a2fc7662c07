import type { ReactNode } from "react";
import { writtenOrder } from "@/lib/edge/kept-order";
import { orderAddress } from "@/lib/edge/ledger-address";
import { orderText } from "@/lib/edge/order-text";
import { OrderAsText } from "../../_parts/order-as-text";
import type { OrderView } from "./order-view";

/** The order to take along: as text to paste into a letter, as rows for a spreadsheet; the page itself prints. */
export function OrderPaper({ view: { order, supplier, workshop, today } }: { readonly view: OrderView }): ReactNode {
  const { name, currency } = workshop.settings;
  const text = orderText({ order: writtenOrder(workshop, order), workshop: name, currency, today });
  return (
    <div className="order-paper">
      <OrderAsText text={text} supplier={supplier.name} />
      <a className="button" href={`${orderAddress(order.id)}/csv`} download>
        Save as CSV
      </a>
    </div>
  );
}
