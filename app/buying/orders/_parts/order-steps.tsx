import Link from "next/link";
import type { ReactNode } from "react";
import { Press } from "@/app/_ui/press";
import { isAwaited, outstanding } from "@/lib/domain/orders";
import { receiveAddress } from "@/lib/edge/ledger-address";
import { giveUpTheRest } from "../[order]/actions";
import type { OrderView } from "./order-view";

/** What can be done with an order once it was placed. */
export function OrderSteps({ view: { order } }: { readonly view: OrderView }): ReactNode {
  const hasCome = order.lines.some(({ received }) => received > 0n);
  if (isAwaited(order))
    return (
      <div className="order-act">
        <Press act={giveUpTheRest} carried={{ order: order.id, to: "given up" }}>
          {hasCome ? "Give up the rest" : "Give it up"}
        </Press>
        <Link className="button first" href={receiveAddress(order.id)}>
          {hasCome ? "Receive the rest" : "Receive it"}
        </Link>
      </div>
    );
  if (order.state === "given up" && order.lines.some((line) => outstanding(line) > 0n))
    return (
      <div className="order-act">
        <Press act={giveUpTheRest} carried={{ order: order.id, to: "ordered" }}>
          It is to come after all
        </Press>
      </div>
    );
  return null;
}
