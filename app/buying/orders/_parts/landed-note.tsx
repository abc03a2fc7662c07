import type { ReactNode } from "react";
import { dividedBy, whole } from "@/lib/domain/fraction";
import { shareShown } from "@/lib/edge/figures";
import { moneyShown } from "@/lib/edge/figures";
import type { OrderView } from "./order-view";

/** What delivery adds to the goods. @rule ORDER-6 */
export function LandedNote({ view: { goods, shipping, supplier, workshop } }: { readonly view: OrderView }): ReactNode {
  const { currency } = workshop.settings;
  if (goods === 0n) return null;
  if (shipping === 0n) return <p className="small soft order-landed">Delivery adds nothing to the goods.</p>;
  const short = supplier.shippingFreeFrom === null ? null : supplier.shippingFreeFrom - goods;
  return (
    <p className="small soft order-landed">
      Delivery adds {shareShown(dividedBy(whole(shipping), whole(goods)))} to the goods: what costs{" "}
      {moneyShown(goods, currency)} by itself costs {moneyShown(goods + shipping, currency)} here.
      {short !== null && short > 0n && ` ${moneyShown(short, currency)} more of goods would make delivery free.`}
    </p>
  );
}
