import type { ReactNode } from "react";
import { breakEven } from "@/lib/domain/break-even";
import type { MicroUnits } from "@/lib/domain/money";
import { countShown, priceShown } from "@/lib/edge/figures";
import { money } from "@/lib/edge/figure-fields";
import { readTypedMoney } from "@/lib/edge/forms/typed-amount";
import { asSentence } from "@/app/_ui/sentence";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { AskingForm } from "./asking-form";
import type { Asked } from "./basis";
import type { CostView } from "./cost-view";
import { monthWorking } from "./kept-working";
import { keptOf, PRICE_NAME, type Sold, SOLD } from "./sold";

type Read = { readonly cost: MicroUnits } | { readonly fault: string };

/** How many units must be sold in a month before they pay what it costs anyway. @rule PRICE-5 */
export function PaysAMonth({ view, asked }: { readonly view: CostView; readonly asked: Asked }): ReactNode {
  const read = asked.month ? readCost(asked.month, view) : null;
  return (
    <div className="margin-form">
      <AskingForm
        product={view.product.id}
        asked={asked}
        name="month"
        label="Costs of a month"
        button="Work out the units"
        fault={read && "fault" in read ? `${asSentence(read.fault)}.` : null}
      />
      {read && "cost" in read && (
        <ul className="asked-prices">
          {SOLD.map((sold) => (
            <li key={sold}>
              <UnitsThatPay sold={sold} cost={read.cost} view={view} />
            </li>
          ))}
        </ul>
      )}
      <p className="label">
        Rent, insurance, a stall: what a month costs that no unit carries. What the hourly overhead rate already carries
        is in the cost of one unit and is not counted again.
      </p>
    </div>
  );
}

function readCost(typed: string, { currency }: CostView): Read {
  const decimal = readTypedMoney(typed, currency);
  if ("fault" in decimal) return decimal;
  const read = money.safeParse(decimal.value);
  return read.success ? { cost: read.data } : { fault: read.error.issues[0]?.message ?? "must be an amount of money" };
}

function UnitsThatPay({
  sold,
  cost,
  view: { product, cost: unit, settings, currency },
}: {
  readonly sold: Sold;
  readonly cost: MicroUnits;
  readonly view: CostView;
}): ReactNode {
  const price = product[PRICE_NAME[sold]];
  if (price === null) return <>No price to {sold} is set.</>;
  const kept = keptOf(sold, price, unit.perUnit, settings);
  if (kept === null) return <>Sold to {sold}: not known while the cost is not.</>;
  const even = breakEven(cost, kept.kept);
  return even.kind === "never" ? (
    <span>
      Sold to {sold} at {priceShown(price, currency)} nothing is kept, so <b>no number of them pays it</b>.
    </span>
  ) : (
    <>
      <span>
        <b>{countShown(even.units)}</b> sold to {sold} at {priceShown(price, currency)} pay it.
      </span>
      {cost > 0n && <HowItComes lines={monthWorking(sold, cost, kept, even.units, settings)} />}
    </>
  );
}
