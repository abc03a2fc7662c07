import type { ReactNode } from "react";
import type { Order } from "@/lib/domain/workshop";

const SAID: Readonly<Record<string, string>> = {
  drafted: "Drafted. Change the packs as you like; nothing is expected before you have ordered it.",
  packs: "The draft is kept, at what its offers ask today.",
  ordered: "Ordered. The plan counts it as on the way. Nothing was sent: that is yours to do.",
  "given up": "The rest is given up. What has come stays, and the plan expects nothing more.",
  price: "The offer asks from now on what was paid, confirmed on the day it came.",
};

const REFUSED: Readonly<Record<string, string>> = {
  "changed meanwhile": "Not done: the order was changed in another tab meanwhile. This is how it stands now.",
  "offer meanwhile": "Not done: the offer was changed or removed meanwhile. Its price below is as it stands now.",
};

/** What was done last. */
export function OrderNotice({ did, order }: { readonly did: string; readonly order: Order }): ReactNode {
  const says = did === "ordered" && order.state !== "ordered" ? undefined : SAID[did];
  return (
    <div role="status">
      {says !== undefined && <p className="done">{says}</p>}
      {REFUSED[did] !== undefined && <p className="fault">{REFUSED[did]}</p>}
    </div>
  );
}
