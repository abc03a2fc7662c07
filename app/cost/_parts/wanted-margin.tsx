import type { ReactNode } from "react";
import { type Fraction, ratio, times } from "@/lib/domain/fraction";
import { type PriceForMargin, priceToCustomersFor, priceToShopsFor } from "@/lib/domain/pricing";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import { priceShown, shareShown } from "@/lib/edge/figures";
import { readTypedPercent } from "@/lib/edge/forms/typed-amount";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { AskingForm } from "./asking-form";
import type { Asked } from "./basis";
import type { CostView } from "./cost-view";
import { marginWorking } from "./kept-working";
import { PRICE_FORM } from "./price-form-name";
import { keptOf, PRICE_NAME, type Sold } from "./sold";

/** A margin that was typed, as a share of the price; null where it is none that a price could have. */
export function marginOf(typed: string): Fraction | null {
  const percent = readTypedPercent(typed);
  if ("fault" in percent || !/^\d{1,2}(\.\d{1,4})?$/.test(percent.value)) return null;
  return times(decimalValue(percent.value as DecimalText), ratio(1n, 100n));
}

/** The prices that a wanted margin asks for, each with a button that sets it. */
export function WantedMargin({ view, asked }: { readonly view: CostView; readonly asked: Asked }): ReactNode {
  const margin = asked.margin ? marginOf(asked.margin) : null;
  const isFault = asked.margin !== null && asked.margin !== "" && margin === null;
  return (
    <div className="margin-form">
      <AskingForm
        product={view.product.id}
        asked={asked}
        name="margin"
        label="Margin wanted, %"
        button="Work out the prices"
        fault={isFault ? "Write a percent from 0 to less than 100, with at most four decimals." : null}
      />
      {margin && <PricesFor view={view} margin={margin} />}
      <p className="label">
        Margin is what is kept, as a share of the price without tax; markup is what is kept, as a share of the cost. A
        price for a margin is rounded up to the coin.
      </p>
    </div>
  );
}

function PricesFor({ view, margin }: { readonly view: CostView; readonly margin: Fraction }): ReactNode {
  const { cost, settings, currency } = view;
  if (cost.perUnit === null) return <p>What to ask is not known while the cost is not.</p>;
  return (
    <ul className="asked-prices">
      <PriceToAsk sold="shops" price={priceToShopsFor(margin, cost.perUnit, currency)} margin={margin} view={view} />
      <PriceToAsk
        sold="customers"
        price={priceToCustomersFor(margin, cost.perUnit, settings, currency)}
        margin={margin}
        view={view}
      />
    </ul>
  );
}

function PriceToAsk({
  sold,
  price: asked,
  margin,
  view: { product, cost, settings, currency },
}: {
  readonly sold: Sold;
  readonly price: PriceForMargin;
  readonly margin: Fraction;
  readonly view: CostView;
}): ReactNode {
  if (asked.kind === "no price reaches it")
    return (
      <li>
        <span>
          Of {sold}: <b>no price reaches {shareShown(margin)}</b>
          {sold === "customers" && "; the payment fee takes its share of every price"}.
        </span>
      </li>
    );
  const { price } = asked;
  const kept = keptOf(sold, price, cost.perUnit, settings);
  const isSet = product[PRICE_NAME[sold]] === price;
  return (
    <li>
      <span>
        Of {sold} ask <b>{priceShown(price, currency)}</b>
        {kept && <small>margin {shareShown(kept.margin)}</small>}
      </span>
      {isSet ? (
        <span className="soft">It is set.</span>
      ) : (
        <button className="button" form={PRICE_FORM} name="deed" value={`use ${PRICE_NAME[sold]} ${price.toString()}`}>
          Set {priceShown(price, currency)} to {sold}
        </button>
      )}
      {kept && (
        <HowItComes
          lines={marginWorking(sold, kept, settings)}
          notes={[`The lowest price, to the coin, at which the margin reaches ${shareShown(margin)}.`]}
        />
      )}
    </li>
  );
}
