import type { ReactNode } from "react";
import { compare } from "@/lib/domain/fraction";
import type { Kept } from "@/lib/domain/pricing";
import type { Settings } from "@/lib/domain/workshop";
import { counted, inARow, inWords, inWordsFirst } from "@/lib/edge/counted";
import { moneyShown, priceShown, shareShown } from "@/lib/edge/figures";
import type { Priced } from "./priced";

interface Sale {
  readonly name: string;
  readonly to: string;
  readonly kept: Kept;
}

/** What all products come to in a sentence or three: what loses, or where the margin is lowest, and what is not known. */
export function CostFinding({
  products,
  settings,
}: {
  readonly products: readonly Priced[];
  readonly settings: Settings;
}): ReactNode {
  const sales = products.flatMap(salesOf);
  const losing = sales.filter(({ kept }) => kept.kept.over < 0n);
  const least = sales.reduce<Sale | null>(
    (low, sale) => (low === null || compare(sale.kept.margin, low.kept.margin) < 0 ? sale : low),
    null,
  );
  const unknown = products.filter(({ cost }) => cost.perUnit === null);
  return (
    <>
      {inWordsFirst(products.length)} {products.length === 1 ? "product" : "products"}.{" "}
      {losing.length > 0 ? (
        <LosingSales sales={losing} />
      ) : (
        least && (
          <>
            The lowest margin is {least.name} {least.to}: <b>{shareShown(least.kept.margin)}</b>, you keep{" "}
            <b>{moneyShown(least.kept.kept, settings.currency)}</b> of {priceShown(least.kept.price, settings.currency)}
            .
          </>
        )
      )}
      {least === null && products.length > unknown.length && "No prices are set, so nothing is known of what is kept. "}
      {unknown.length > 0 && (
        <>
          {" "}
          What {inARow(unknown.slice(0, 2).map(({ product }) => product.name))}
          {unknown.length > 2 && ` and ${inWords(unknown.length - 2)} more`} {unknown.length === 1 ? "costs" : "cost"}{" "}
          is <b className="warn">not known</b>:{" "}
          {counted(
            new Set(unknown.flatMap(({ cost }) => cost.unpriced.map(({ id }) => id))).size,
            "material has",
            "materials have",
          )}{" "}
          no price.
        </>
      )}
    </>
  );
}

function LosingSales({ sales }: { readonly sales: readonly Sale[] }): ReactNode {
  const named = sales.slice(0, 2).map(({ name, to }) => `${name} ${to}`);
  return (
    <>
      {inARow(named)}
      {sales.length > 2 && ` and ${inWords(sales.length - 2)} more`}{" "}
      <b className="warn">{sales.length === 1 ? "loses money" : "lose money"}</b> at the price that is set.
    </>
  );
}

const salesOf = ({ product, toShops, toCustomers }: Priced): readonly Sale[] => [
  ...(toShops ? [{ name: product.name, to: "to shops", kept: toShops }] : []),
  ...(toCustomers ? [{ name: product.name, to: "to customers", kept: toCustomers }] : []),
];
