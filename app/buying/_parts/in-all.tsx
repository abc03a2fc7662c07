import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Slip, type SlipLine } from "@/app/_ui/slip";
import type { WorkingLine } from "@/app/_ui/working";
import { type BasketDifference, deliveryOf } from "@/lib/domain/buying/basket-difference";
import type { PlannedBasket, PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import { counted, inARow } from "@/lib/edge/counted";
import { priceShown } from "@/lib/edge/figures";
import { type BuyingView, moneyIn, packsShown } from "./buying-view";

interface InAllOf {
  readonly view: BuyingView;
  readonly basket: PlannedBasket;
  /** Null where buying by hand breaks a rule of the frame. */
  readonly byHand: PlannedBasket | null;
  readonly difference: BasketDifference | null;
  /** What leftovers count for: nothing, or a figure that is not paid. */
  readonly worth: bigint;
}

/** What it all comes to, against the basket by hand, and where the two differ. @rule BUY-7 */
export function InAll({ view, basket, byHand, difference, worth }: InAllOf): ReactNode {
  const delivery = deliveryOf(basket);
  const lines: readonly SlipLine[] = [
    { name: "Goods", figure: moneyIn(view, basket.total - delivery) },
    { name: `Delivery, ${counted(basket.orders.length, "order", "orders")}`, figure: moneyIn(view, delivery) },
    { name: "This basket", figure: moneyIn(view, basket.total), end: true },
    ...(worth > 0n
      ? [
          { name: "Leftovers count for", figure: moneyIn(view, worth) },
          { name: "Counted", figure: moneyIn(view, basket.total - worth), end: true },
        ]
      : []),
    ...(byHand && difference
      ? [
          { name: "By hand", figure: moneyIn(view, byHand.total) },
          {
            name: difference.more < 0n ? "More than by hand" : "Saved",
            figure: moneyIn(view, absolute(difference.more)),
          },
        ]
      : []),
  ];
  return (
    <section className="block" aria-labelledby="in-all">
      <h2 id="in-all">In all</h2>
      <Slip lines={lines} />
      {byHand && difference && (
        <HowItComes says="What it would be by hand" lines={byHandLines(byHand, difference.more, view)} />
      )}
      <p className="label foot">
        Without reclaimable tax.{" "}
        {byHand
          ? "By hand is the lowest unit price, one material at a time."
          : "By hand, the lowest unit price one material at a time, breaks what you asked for."}
        {worth > 0n && " What leftovers count for is not paid back; it only weighs in the choice."}
      </p>
      {difference && (difference.materials.length > 0 || difference.moreDelivery !== 0n) && (
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

/** Every line of the basket by hand, its deliveries, and what this one is less or more than that. @rule BUY-7 */
function byHandLines({ orders, total }: PlannedBasket, more: bigint, view: BuyingView): readonly WorkingLine[] {
  const costs = orders.flatMap(({ supplier, lines, shipping }) => [
    ...lines.map((line) => ({
      amount: line.cost,
      reason: `${line.material.name}, ${packsShown(line)} at ${priceShown(line.packPrice, view.currency)}, ${supplier.name}`,
    })),
    ...(shipping > 0n ? [{ amount: shipping, reason: `delivery of ${supplier.name}` }] : []),
  ]);
  return [
    ...costs.map(({ amount, reason }, at): WorkingLine => ({
      ...(at > 0 && { operator: "+" }),
      figure: moneyIn(view, amount),
      reason,
    })),
    { figure: moneyIn(view, total), reason: "by hand", isResult: true },
    { operator: "−", figure: moneyIn(view, total - more), reason: "this basket" },
    { figure: moneyIn(view, absolute(more)), reason: more < 0n ? "more than by hand" : "saved", isResult: true },
  ];
}

const absolute = (amount: bigint): bigint => (amount < 0n ? -amount : amount);

export const packsOf = (lines: readonly PlannedLine[]): string =>
  lines.length === 0 ? "none" : inARow(lines.map(packsShown));

/** What the other basket costs more, said of this one. */
export function moreWords(more: bigint, view: BuyingView): string {
  if (more === 0n) return "The same.";
  return more > 0n ? `${moneyIn(view, more)} less.` : `${moneyIn(view, -more)} more.`;
}
