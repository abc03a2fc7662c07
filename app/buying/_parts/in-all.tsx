import type { ReactNode } from "react";
import { Slip, type SlipLine } from "@/app/_ui/slip";
import { type BasketDifference, deliveryOf } from "@/lib/domain/buying/basket-difference";
import type { PlannedBasket, PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import { counted, inARow } from "@/lib/edge/counted";
import { type BuyingView, moneyIn, packsShown } from "./buying-view";

interface InAllOf {
  readonly view: BuyingView;
  readonly basket: PlannedBasket;
  readonly byHand: PlannedBasket;
  readonly difference: BasketDifference;
}

/** What it all comes to, against the basket by hand, and where the two differ. @rule BUY-7 */
export function InAll({ view, basket, byHand, difference }: InAllOf): ReactNode {
  const delivery = deliveryOf(basket);
  const lines: readonly SlipLine[] = [
    { name: "Goods", figure: moneyIn(view, basket.total - delivery) },
    { name: `Delivery, ${counted(basket.orders.length, "order", "orders")}`, figure: moneyIn(view, delivery) },
    { name: "This basket", figure: moneyIn(view, basket.total), end: true },
    { name: "By hand", figure: moneyIn(view, byHand.total) },
    { name: "Saved", figure: moneyIn(view, difference.more) },
  ];
  return (
    <section className="block" aria-labelledby="in-all">
      <h2 id="in-all">In all</h2>
      <Slip lines={lines} />
      <p className="label foot">Without reclaimable tax. By hand is the lowest unit price, one material at a time.</p>
      {(difference.materials.length > 0 || difference.moreDelivery !== 0n) && (
        <>
          <h3 className="buying-differ">Where the two differ</h3>
          <ul className="buying-lines small soft">
            {difference.materials.map(({ material, here, there, more }) => (
              <li key={material.id}>
                {material.name}: {packsOf(here)}, not {packsOf(there)}. {moreWords(more, view)}
              </li>
            ))}
            {difference.moreDelivery !== 0n && <li>Delivery: {moreWords(difference.moreDelivery, view)}</li>}
          </ul>
        </>
      )}
    </section>
  );
}

export const packsOf = (lines: readonly PlannedLine[]): string =>
  lines.length === 0 ? "none" : inARow(lines.map(packsShown));

/** What the other basket costs more, said of this one. */
export function moreWords(more: bigint, view: BuyingView): string {
  if (more === 0n) return "The same.";
  return more > 0n ? `${moneyIn(view, more)} less.` : `${moneyIn(view, -more)} more.`;
}
