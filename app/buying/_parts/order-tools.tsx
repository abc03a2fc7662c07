import type { ReactNode } from "react";
import { Press } from "@/app/_ui/press";
import type { PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { frameFields } from "@/lib/edge/forms/buying-frame";
import { orderFields } from "@/lib/edge/forms/order-form";
import { orderText } from "@/lib/edge/order-text";
import { whose } from "@/lib/edge/whose";
import { draftTheOrder, placeTheOrder } from "../actions";
import { arrivesOn, type BuyingView, moneyIn } from "./buying-view";
import { frameCarried } from "./deed";
import { OrderAsText } from "./order-as-text";

interface Tools {
  readonly order: PlannedOrder;
  readonly workshop: string;
  readonly view: BuyingView;
  readonly newId: string;
  /** Whether it is the first thing to do on the page. */
  readonly isFirst: boolean;
}

/** What can be done with an order: it is copied or taken along, and once the maker has sent it, kept as open. */
export function OrderTools({ order, workshop, view, newId, isFirst }: Tools): ReactNode {
  const { supplier, total } = order;
  const { today, currency, asked } = view;
  const text = orderText({ order, workshop, currency, today });
  const fields = orderFields(order, { newId, today, due: arrivesOn(order), orders: view.orders });
  const download = new URLSearchParams([...frameFields(asked), ["supplier", supplier.id]].map((pair) => [...pair]));
  return (
    <>
      <OrderAsText text={text} supplier={supplier.name} isOneOfMany />
      <div className="order-act">
        <a className="button" href={`/buying/order?${download.toString()}`} download>
          Save as CSV<span className="unseen">, {supplier.name}</span>
        </a>
        <Press act={draftTheOrder} carried={{ ...fields, state: "drafted", frame: frameCarried(asked) }}>
          Draft {whose(supplier.name)} order, {moneyIn(view, total)}
        </Press>
        <Press
          act={placeTheOrder}
          carried={{ ...fields, frame: frameCarried(asked) }}
          name={`I have ordered it, ${moneyIn(view, total)}, from ${supplier.name}`}
          className={isFirst ? "button first" : "button"}
        >
          I have ordered it, {moneyIn(view, total)}
        </Press>
      </div>
    </>
  );
}
