import Link from "next/link";
import type { ReactNode } from "react";
import type { Fraction } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import type { Basis } from "@/lib/domain/plan-figures";
import type { Kept } from "@/lib/domain/pricing";
import type { Settings } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { moneyShown, priceShown, shareShown } from "@/lib/edge/figures";
import { Ledger } from "@/app/_ui/ledger";
import { Was } from "@/app/_ui/was";
import { productPath, withBasis } from "./basis";
import type { Priced } from "./priced";

const COLUMNS = [
  { name: "Product" },
  { name: "Ingredients", kind: "number", className: "part" },
  { name: "Packaging", kind: "number", className: "part" },
  { name: "Labour", kind: "number", className: "part" },
  { name: "Overhead", kind: "number", className: "part" },
  { name: "One unit", kind: "number" },
  { name: "Kept, to shops", kind: "number" },
  { name: "Kept, to customers", kind: "number" },
] as const;

/** Every product: what one unit costs, in its four parts, and what is kept of its two prices. */
export function AllProducts({
  products,
  before,
  settings,
  basis,
}: {
  readonly products: readonly Priced[];
  /** A product as it was before the last change; null where nothing has changed. */
  readonly before: (product: string) => Priced | null;
  readonly settings: Settings;
  readonly basis: Basis;
}): ReactNode {
  return (
    <>
      <Ledger
        caption="What each product costs and what is kept of its prices"
        columns={COLUMNS}
        className="all-products"
      >
        {products.map((priced) => (
          <ProductRow
            key={priced.product.id}
            priced={priced}
            before={before(priced.product.id)}
            settings={settings}
            basis={basis}
          />
        ))}
      </Ledger>
      <p className="label foot">
        Each figure is rounded once from the exact one, so the parts may differ from their total in the last digit.
        Costs are without tax that is reclaimed. Kept to customers is after tax and payment fee; margin is what is kept
        as a share of the price without tax.
      </p>
    </>
  );
}

function ProductRow({
  priced: { product, cost, toShops, toCustomers },
  before,
  settings: { currency },
  basis,
}: {
  readonly priced: Priced;
  readonly before: Priced | null;
  readonly settings: Settings;
  readonly basis: Basis;
}): ReactNode {
  const shown = (figure: Fraction | null): string => (figure === null ? "not known" : moneyShown(figure, currency));
  const parts = [cost.ingredients, cost.packaging, cost.labour, cost.overhead];
  return (
    <tr>
      <th scope="row">
        <Link className="product-name" href={withBasis(productPath(product.id), basis)}>
          {product.name}
        </Link>
        <small className="part-costs">
          ingredients {shown(cost.ingredients)}, packaging {shown(cost.packaging)}, labour {shown(cost.labour)},
          overhead {shown(cost.overhead)}
        </small>
        {cost.unpriced.length > 0 && (
          <small className="warn">No price for {inARow(cost.unpriced.map(({ name }) => name))}</small>
        )}
      </th>
      {parts.map((part, at) => (
        <td key={at} className="number part">
          {shown(part)}
        </td>
      ))}
      <td className="number end">
        <b>{shown(cost.perUnit)}</b>
        {before && <Was now={shown(cost.perUnit)} before={shown(before.cost.perUnit)} />}
      </td>
      <KeptCell
        kept={toShops}
        before={before && (before.toShops?.kept ?? null)}
        price={product.priceToShops}
        settings={{ currency }}
        className="to-shops"
        where="to shops"
      />
      <KeptCell
        kept={toCustomers}
        before={before && (before.toCustomers?.kept ?? null)}
        price={product.priceToCustomers}
        settings={{ currency }}
        className="to-customers"
        where="to customers"
      />
    </tr>
  );
}

function KeptCell({
  kept,
  before,
  price,
  settings: { currency },
  className,
  where,
}: {
  readonly kept: Kept | null;
  /** What was kept before the last change; null where nothing was, or nothing has changed. */
  readonly before: Fraction | null;
  readonly price: MicroUnits | null;
  readonly settings: Pick<Settings, "currency">;
  readonly className: string;
  readonly where: string;
}): ReactNode {
  const onPhone = <span className="phone-only">{where}: </span>;
  if (price === null)
    return (
      <td className={`number ${className}`}>
        {onPhone}
        <span className="soft">no price</span>
      </td>
    );
  const loses = kept !== null && kept.kept.over < 0n;
  return (
    <td className={`number ${className}`}>
      {onPhone}
      {kept === null ? (
        "not known"
      ) : (
        <>
          <span className={loses ? "warn" : undefined}>{moneyShown(kept.kept, currency)}</span>
          {loses && <span className="warn"> lost</span>}
          {before && <Was now={moneyShown(kept.kept, currency)} before={moneyShown(before, currency)} />}
        </>
      )}
      <small>
        of {priceShown(price, currency)}
        {kept && `, ${shareShown(kept.margin)}`}
      </small>
    </td>
  );
}
