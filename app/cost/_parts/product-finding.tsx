import type { ReactNode } from "react";
import { minus, whole } from "@/lib/domain/fraction";
import type { Kept } from "@/lib/domain/pricing";
import type { Settings } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { moneyShown, priceShown } from "@/lib/edge/figures";
import type { Priced } from "./priced";

/** What one costs, and what is kept of each price. */
export function ProductFinding({
  priced: { cost, toShops, toCustomers },
  settings: { currency },
}: {
  readonly priced: Priced;
  readonly settings: Settings;
}): ReactNode {
  if (cost.perUnit === null)
    return (
      <>
        What one costs is <b className="warn">not known</b>: nothing prices{" "}
        {inARow(cost.unpriced.map(({ name }) => name))}. Everything else is worked out below.
      </>
    );
  const kept = (sale: Kept): ReactNode =>
    sale.kept.over < 0n ? (
      <b className="warn">you lose {moneyShown(minus(whole(0n), sale.kept), currency)}</b>
    ) : (
      <>
        you keep <b>{moneyShown(sale.kept, currency)}</b>
      </>
    );
  return (
    <>
      One costs <b>{moneyShown(cost.perUnit, currency)}</b>.{" "}
      {toShops && (
        <>
          Sold to shops at {priceShown(toShops.price, currency)} {kept(toShops)}
          {toCustomers ? "; " : "."}
        </>
      )}
      {toCustomers && (
        <>
          {toShops ? "sold" : "Sold"} to customers at {priceShown(toCustomers.price, currency)} {kept(toCustomers)}.
        </>
      )}
      {!toShops && !toCustomers && "No price is set, so nothing is known of what you keep."}
    </>
  );
}
