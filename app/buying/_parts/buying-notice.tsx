import type { ReactNode } from "react";
import { Press } from "@/app/_ui/press";
import type { Order, Workshop } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { takeTheOrderBack } from "../actions";
import type { BuyingView } from "./buying-view";
import { type Deed, frameCarried } from "./deed";

interface Notice {
  readonly deed: Deed | null;
  readonly view: BuyingView;
  readonly workshop: Workshop;
}

const REFUSED: Readonly<Record<Exclude<Deed["did"], "ordered" | "taken back">, string>> = {
  "offer changed":
    "Not kept: an offer was changed since the page was drawn. The order below is worked out anew; check it first.",
  "ordered otherwise": "This form was sent before, and the order was changed since. Nothing was changed now.",
  "ordered meanwhile":
    "Not kept: another order at this supplier was written down since the page was drawn, perhaps this one, in another tab. What is still to be ordered is worked out anew below.",
  "already received": "This order has come in already. Nothing was changed.",
  "too large": "Not kept: a line is too large to keep. What cannot be done, below, says which and by how much.",
  "not there": "The order is not open any more, so nothing was taken back.",
  "not understood": "This page was out of date, and nothing was kept. Press the button on it again.",
};

/** What was done last and, in the same place until the next thing is done, the way to take it back. */
export const BuyingNotice = ({ deed, view, workshop }: Notice): ReactNode => (
  <div role="status">{deed && <Said deed={deed} view={view} workshop={workshop} />}</div>
);

function Said({ deed, view, workshop }: Notice & { readonly deed: Deed }): ReactNode {
  const nameOf = (supplier: string): string => workshop.suppliers.find(({ id }) => id === supplier)?.name ?? "";
  if (deed.did === "ordered") {
    const order = workshop.orders.find(({ id }) => id === deed.about);
    return order ? <Ordered order={order} name={nameOf(order.supplier)} view={view} /> : null;
  }
  if (deed.did === "taken back") {
    const name = nameOf(deed.about);
    return name === "" ? null : <p className="done">Taken back: the order from {name}. It counts no more.</p>;
  }
  return <p className="fault">{REFUSED[deed.did]}</p>;
}

const Ordered = ({
  order,
  name,
  view,
}: {
  readonly order: Order;
  readonly name: string;
  readonly view: BuyingView;
}): ReactNode => (
  <div className="done buying-notice">
    <p>
      Ordered: {counted(order.lines.length, "line", "lines")} from {name}, due {dayShown(order.due, view.today)}. The
      plan counts it as on the way.
    </p>
    <Press act={takeTheOrderBack} carried={{ id: order.id, frame: frameCarried(view.asked) }}>
      Take it back
    </Press>
  </div>
);
