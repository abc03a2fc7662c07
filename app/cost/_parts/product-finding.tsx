import Link from "next/link";
import { Fragment, type ReactNode } from "react";
import { minus, whole } from "@/lib/domain/fraction";
import type { Kept } from "@/lib/domain/pricing";
import type { Material, Settings } from "@/lib/domain/workshop";
import { moneyShown, priceShown } from "@/lib/edge/figures";
import { offerOfAddress } from "@/lib/edge/material-address";
import type { Priced } from "./priced";

/** What one costs, and what is kept of each price. */
export function ProductFinding({
  priced: { cost, toShops, toCustomers },
  settings: { currency, labourPerHour },
}: {
  readonly priced: Priced;
  readonly settings: Settings;
}): ReactNode {
  if (cost.perUnit === null)
    return (
      <>
        What one costs is <b className="warn">not known</b>: nothing prices <Unpriced materials={cost.unpriced} />.
        Write down what a pack of {cost.unpriced.length === 1 ? "it" : "each"} costs; everything else is worked out
        below.
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
      {labourPerHour === 0n && "Your time is not in it: no hourly rate is set under Rates and calendar. "}
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

/** Each leads to the form of an offer of it. */
const Unpriced = ({ materials }: { readonly materials: readonly Material[] }): ReactNode =>
  materials.map(({ id, name }, at) => (
    <Fragment key={id}>
      {at > 0 && (at === materials.length - 1 ? " and " : ", ")}
      <Link href={offerOfAddress(id)}>{name}</Link>
    </Fragment>
  ));
