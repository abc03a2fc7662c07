import type { ReactNode } from "react";
import { minus, whole } from "@/lib/domain/fraction";
import type { Kept } from "@/lib/domain/pricing";
import type { Settings } from "@/lib/domain/workshop";
import { moneyShown, priceShown, rateShown, shareShown } from "@/lib/edge/figures";
import { Slip, type SlipLine } from "@/app/_ui/slip";
import type { Priced } from "./priced";

/** What is kept of the two prices, line by line. */
export function PriceSlips({
  priced: { product, cost, toShops, toCustomers },
  settings,
}: {
  readonly priced: Priced;
  readonly settings: Settings;
}): ReactNode {
  const whyNot = cost.perUnit === null ? "Not known while the cost is not." : "No price is set.";
  return (
    <div className="pair">
      <div>
        <h3>To shops, without tax</h3>
        {toShops ? (
          <Slip lines={shopLines(toShops, settings)} />
        ) : (
          <p className="small soft">{product.priceToShops === null ? "No price is set." : whyNot}</p>
        )}
      </div>
      <div>
        <h3>To customers, tax included</h3>
        {toCustomers ? (
          <Slip lines={customerLines(toCustomers, settings)} />
        ) : (
          <p className="small soft">{product.priceToCustomers === null ? "No price is set." : whyNot}</p>
        )}
      </div>
    </div>
  );
}

const shopLines = (kept: Kept, settings: Settings): readonly SlipLine[] => [
  { name: "Price", figure: priceShown(kept.price, settings.currency) },
  { name: "Tax", figure: <span className="soft">on top</span> },
  { name: "Payment fee", figure: <span className="soft">none</span> },
  ...endLines(kept, settings),
];

function customerLines(kept: Kept, settings: Settings): readonly SlipLine[] {
  const { currency, tax, paymentFee, paymentFeeFixed } = settings;
  const taken = (what: Kept["tax"]) =>
    what.over === 0n ? <span className="soft">none</span> : moneyShown(minus(whole(0n), what), currency);
  const fixed = paymentFeeFixed > 0n ? ` + ${priceShown(paymentFeeFixed, currency)}` : "";
  return [
    { name: "Price", figure: priceShown(kept.price, currency) },
    { name: tax > 0n ? `Tax, ${rateShown(tax)}` : "Tax", figure: taken(kept.tax) },
    { name: kept.fee.over > 0n ? `Fee, ${rateShown(paymentFee)}${fixed}` : "Payment fee", figure: taken(kept.fee) },
    ...endLines(kept, settings),
  ];
}

function endLines({ cost, kept, margin, markup }: Kept, { currency }: Settings): readonly SlipLine[] {
  const loses = kept.over < 0n;
  return [
    { name: "Cost", figure: moneyShown(minus(whole(0n), cost), currency) },
    {
      name: loses ? <span className="warn">Lost</span> : "Kept",
      figure: <span className={loses ? "warn" : undefined}>{moneyShown(kept, currency)}</span>,
      end: true,
    },
    { name: "Margin", figure: shareShown(margin) },
    { name: "Markup", figure: markup ? shareShown(markup) : <span className="soft">no cost</span> },
  ];
}
