import type { ReactNode } from "react";
import { type Fraction, times, ratio } from "@/lib/domain/fraction";
import { type PriceForMargin, priceToCustomersFor, priceToShopsFor } from "@/lib/domain/pricing";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import { NO_BREAK, priceShown } from "@/lib/edge/figures";
import { Field } from "@/app/_ui/field";
import { productPath } from "./basis";
import type { CostView } from "./cost-view";

const PERCENT = /^(?:0|[1-9]\d?)(?:\.\d{1,4})?$/;

/** The margin that was typed, as a share; null where it is none. */
export const marginOf = (typed: string): Fraction | null =>
  PERCENT.test(typed) ? times(decimalValue(typed as DecimalText), ratio(1n, 100n)) : null;

/** The prices that a wanted margin asks for. The form is sent by address, so that it works without scripts. */
export function WantedMargin({ view, typed }: { readonly view: CostView; readonly typed: string | null }): ReactNode {
  const margin = typed === null || typed === "" ? null : marginOf(typed);
  const fault =
    typed && margin === null ? "Write a percent from 0 to less than 100, with at most four decimals." : undefined;
  return (
    <div className="margin-form">
      <form action={productPath(view.product.id)} method="get">
        {view.basis !== "replacement" && <input type="hidden" name="basis" value={view.basis} />}
        <div className="in-a-row">
          <Field label="Margin wanted, %" name="margin" inputMode="decimal" defaultValue={typed ?? ""} fault={fault} />
          <button className="button">Work out the prices</button>
        </div>
      </form>
      {margin && typed && <Prices view={view} margin={margin} typed={typed} />}
      <p className="label">
        Margin is what is kept, as a share of the price without tax; markup is what is kept, as a share of the cost. A
        price for a margin is rounded up to the coin.
      </p>
    </div>
  );
}

function Prices({
  view: { cost, settings, currency },
  margin,
  typed,
}: {
  readonly view: CostView;
  readonly margin: Fraction;
  readonly typed: string;
}): ReactNode {
  if (cost.perUnit === null) return <p>What to ask is not known while the cost is not.</p>;
  const say = (result: PriceForMargin) =>
    result.kind === "price" ? (
      <>
        ask <b>{priceShown(result.price, currency)}</b>
      </>
    ) : (
      <b>no price reaches it</b>
    );
  return (
    <p>
      For a margin of {typed}
      {NO_BREAK}%: from shops {say(priceToShopsFor(margin, cost.perUnit, currency))}; from customers, tax included,{" "}
      {say(priceToCustomersFor(margin, cost.perUnit, settings, currency))}.
    </p>
  );
}
