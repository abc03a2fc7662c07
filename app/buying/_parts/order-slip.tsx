import Link from "next/link";
import type { ReactNode } from "react";
import { arrivalLines } from "@/app/_ui/arrival-working";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import type { PlannedLine, PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { daysBetween } from "@/lib/domain/calendar";
import { inWords } from "@/lib/edge/counted";
import { countShown, dayShown, daysShown, priceShown, stockShown } from "@/lib/edge/figures";
import { orderAnchor, paidAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { arrivesOn, type BuyingView, leftOverWords, moneyIn, packsShown, whyAnchor } from "./buying-view";
import { driftSays } from "./drift-words";
import { LineOpened } from "./line-opened";

interface Slip {
  readonly order: PlannedOrder;
  readonly view: BuyingView;
  /** The reason for the line that was asked about. */
  readonly why: { readonly offer: string; readonly words: ReactNode } | null;
  /** What can be done with the order. */
  readonly children: ReactNode;
}

const COLUMNS = [
  { name: "Material" },
  { name: "Need", className: "not-on-phone" },
  { name: "Packs", kind: "number" },
  { name: "Each", kind: "number", className: "not-on-phone" },
  { name: "Cost", kind: "number" },
] as const;

/** One supplier's order: packs, what each costs, goods, delivery and what it comes to. */
export function OrderSlip({ order, view, why, children }: Slip): ReactNode {
  const { supplier, lines } = order;
  const anchor = orderAnchor(supplier.id);
  return (
    <section className="order" aria-labelledby={anchor}>
      <div className="order-top">
        <h2 id={anchor}>{supplier.name}</h2>
        <HowItComes
          says={
            <Sign sign="ring" tone="open">
              Ordered today, comes {dayShown(arrivesOn(order), view.today)}
            </Sign>
          }
          about={supplier.name}
          lines={arrivalLines(view.deliveryOf(supplier), view.today, view.today)}
        />
      </div>
      <Ledger caption={`The order from ${supplier.name}`} columns={COLUMNS} className="order-lines slip-lines">
        {lines.map((line, at) => (
          <Line
            key={line.offer.id}
            line={line}
            again={lines[at - 1]?.material === line.material}
            view={view}
            why={why}
          />
        ))}
        <Sums order={order} view={view} />
      </Ledger>
      <NeverConfirmed order={order} view={view} />
      {children}
    </section>
  );
}

function Line({
  line,
  again,
  view,
  why,
}: Pick<Slip, "view" | "why"> & { readonly line: PlannedLine; readonly again: boolean }): ReactNode {
  const { offer, material } = line;
  const wanted = view.wanted.get(material.id);
  const words = why?.offer === offer.id ? why.words : null;
  return (
    <>
      <tr className="with-note">
        <th scope="row">{again ? <span className="unseen">{material.name}, further packs</span> : material.name}</th>
        <td className="small soft not-on-phone">
          {!again && wanted && (
            <Link href={materialAddress(material.id)} prefetch={false}>
              {stockShown(wanted.quantity, material.measure, "lacking")}
            </Link>
          )}
        </td>
        <td className="number second-line">
          {packsShown(line)}
          <span className="phone-only">
            {" "}
            at {priceShown(line.packPrice, view.currency)}
            {!again && wanted && `; ${stockShown(wanted.quantity, material.measure, "lacking")} needed`}
          </span>
        </td>
        <td className="number not-on-phone">{priceShown(line.packPrice, view.currency)}</td>
        <td className="number end">{moneyIn(view, line.cost)}</td>
      </tr>
      <tr className="line-note" id={whyAnchor(offer.id)}>
        <td colSpan={COLUMNS.length}>
          {notesOf(line, view).map((note) => (
            <span key={note}>{note} </span>
          ))}
          {line.late && wanted && (
            <span className="warn">
              Comes {daysShown(daysBetween(wanted.buyBy, line.arrives))} after it should be there,{" "}
              {dayShown(wanted.buyBy, view.today)}.{" "}
            </span>
          )}
          <Drifted line={line} view={view} />
          <LineOpened line={line} view={view} words={words} />
        </td>
      </tr>
    </>
  );
}

/** What speaks against the price since it was last confirmed. @rule OFFER-3 */
function Drifted({
  line: { offer, material },
  view,
}: {
  readonly line: PlannedLine;
  readonly view: BuyingView;
}): ReactNode {
  const drift = view.drifts.get(offer.id);
  // Of prices that were never confirmed the order says so once.
  if (drift === undefined || drift.kind === "never confirmed") return null;
  return (
    <span className="warn">
      {driftSays(drift, offer, view.today, view.currency)} <Link href={paidAddress(material.id)}>What was paid</Link>
      .{" "}
    </span>
  );
}

/** How many of its prices nobody has confirmed. @rule OFFER-3 */
function NeverConfirmed({ order: { lines }, view }: Pick<Slip, "order" | "view">): ReactNode {
  const never = lines.filter(({ offer }) => view.drifts.get(offer.id)?.kind === "never confirmed").length;
  if (never === 0) return null;
  const which =
    lines.length === 1 ? "this price" : never === lines.length ? "these prices" : `${inWords(never)} of these prices`;
  return (
    <p className="small soft">
      Nobody has written down when {which} {never === 1 ? "was" : "were"} last confirmed.
    </p>
  );
}

function notesOf(line: PlannedLine, view: BuyingView): readonly string[] {
  const { offer, material, packPrice } = line;
  const taken = offer.breaks.find(({ packs, price }) => price === packPrice && packs <= line.packs);
  const left = leftOverWords(material, view);
  return [
    ...(taken
      ? [
          `Price from ${countShown(taken.packs)} packs on taken: ${priceShown(packPrice, view.currency)} each, not ${priceShown(offer.price, view.currency)}.`,
        ]
      : []),
    ...(left === null ? [] : [`${left}.`]),
  ];
}

function Sums({ order: { supplier, goods, shipping, total }, view }: Pick<Slip, "order" | "view">): ReactNode {
  const { minimumOrder, shippingFreeFrom } = supplier;
  const minimum = minimumOrder !== null && minimumOrder > 0n && `Minimum ${moneyIn(view, minimumOrder)}, met.`;
  const delivery =
    shippingFreeFrom === null
      ? null
      : goods >= shippingFreeFrom
        ? `Free from ${moneyIn(view, shippingFreeFrom)} on, reached.`
        : `${moneyIn(view, shippingFreeFrom - goods)} short of free delivery.`;
  return (
    <>
      <tr className="sum">
        <th scope="row">Goods</th>
        <td colSpan={3} className="small soft second-line order-reason">
          {minimum}
        </td>
        <td className="number end">{moneyIn(view, goods)}</td>
      </tr>
      <tr>
        <th scope="row">Delivery</th>
        <td colSpan={3} className="small soft second-line">
          {delivery}
        </td>
        <td className="number end">{shipping === 0n && delivery === null ? "no charge" : moneyIn(view, shipping)}</td>
      </tr>
      <tr className="total">
        <th scope="row">This order</th>
        <td colSpan={3} className="not-on-phone" />
        <td className="number end">{moneyIn(view, total)}</td>
      </tr>
    </>
  );
}
