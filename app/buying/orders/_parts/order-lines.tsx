import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { byId } from "@/lib/domain/index-by-id";
import { outstanding } from "@/lib/domain/orders";
import type { OrderLine } from "@/lib/domain/workshop";
import { amountShown, countShown, moneyShown, priceShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { writtenOrder } from "@/lib/edge/kept-order";
import { paidAddress } from "@/lib/edge/ledger-address";
import type { OrderView } from "./order-view";

const COLUMNS = [
  { name: "Material" },
  { name: "Packs", kind: "number" },
  { name: "Each", kind: "number", className: "not-on-phone" },
  { name: "Has come", className: "not-on-phone" },
  { name: "Cost", kind: "number" },
] as const;

/** What stands on the order, and what it comes to. */
export function OrderLines({ view }: { readonly view: OrderView }): ReactNode {
  const { order, supplier, workshop, goods, shipping } = view;
  const { currency } = workshop.settings;
  const written = writtenOrder(workshop, order);
  return (
    <Ledger caption={`The order from ${supplier.name}`} columns={COLUMNS} className="order-lines">
      {order.lines.map((line, at) => {
        const each = written.lines[at];
        if (each === undefined) return null;
        return (
          <tr key={at}>
            <th scope="row">
              <Link href={paidAddress(line.material)}>{each.material.name}</Link>
            </th>
            <td className="number second-line">
              {countShown(each.packs)}
              {NO_BREAK}×{NO_BREAK}
              {amountShown(each.offer.pack.typed)}
              <span className="phone-only">
                {" "}
                at {priceShown(each.packPrice, currency)} each; {come(line, view)}
              </span>
            </td>
            <td className="number not-on-phone">{priceShown(each.packPrice, currency)}</td>
            <td className="not-on-phone">{come(line, view)}</td>
            <td className="number end">{moneyShown(line.cost, currency)}</td>
          </tr>
        );
      })}
      <Sum name="Goods" amount={moneyShown(goods, currency)} className="sum" />
      <Sum name="Delivery" amount={moneyShown(shipping, currency)} className="" />
      <Sum name="This order" amount={moneyShown(goods + shipping, currency)} className="total" />
    </Ledger>
  );
}

const Sum = ({
  name,
  amount,
  className,
}: {
  readonly name: string;
  readonly amount: string;
  readonly className: string;
}): ReactNode => (
  <tr className={className}>
    <th scope="row">{name}</th>
    <td colSpan={3} className="not-on-phone" />
    <td className="number end">{amount}</td>
  </tr>
);

function come(line: OrderLine, view: OrderView): string {
  const { measure } = byId("material", view.workshop.materials)(line.material);
  if (view.order.state === "drafted") return "not ordered yet";
  const rest = outstanding(line);
  if (rest === 0n) return "all of it";
  if (line.received === 0n) return "nothing yet";
  return `${stockShown(line.received, measure, "there")} of ${stockShown(line.quantity, measure, "there")}`;
}
