import Link from "next/link";
import type { ReactNode } from "react";
import { arrivalLines } from "@/app/_ui/arrival-working";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import { toBuyLines, toBuySum } from "@/app/_ui/to-buy-working";
import type { WorkingLine } from "@/app/_ui/working";
import type { PlannedLine, PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { daysBetween } from "@/lib/domain/calendar";
import { inWords } from "@/lib/edge/counted";
import { countShown, dayShown, daysShown, priceShown, stockInFull, stockShown } from "@/lib/edge/figures";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";
import { orderAnchor, paidAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { packReason } from "@/lib/edge/pack-words";
import { arrivesOn, type BuyingView, leftOverWords, moneyIn, packsShown, whyAddress, whyAnchor } from "./buying-view";
import { driftSays } from "./drift-words";
import { ThenEnough } from "./then-enough";

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
        <Sign sign="ring" tone="open">
          Ordered today, comes {dayShown(arrivesOn(order), view.today)}
        </Sign>
      </div>
      <HowItComes lines={arrivalLines(view.deliveryOf(supplier), view.today, view.today)} />
      <Ledger caption={`The order from ${supplier.name}`} columns={COLUMNS} className="order-lines">
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
        <td className="number second-line">{packsShown(line)}</td>
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
          <ThenEnough material={material} view={view} />
          <HowItComes lines={lineLines(line, view)} />
          {words ?? (
            <Link className="line-why" href={whyAddress(view.asked, offer.id)} prefetch={false}>
              Why these?<span className="unseen"> {material.name}</span>
            </Link>
          )}
        </td>
      </tr>
    </>
  );
}

/** What is needed, in the days to be covered; what the packs hold, less that; and what they cost. */
function lineLines({ offer, material, packs, packPrice, cost }: PlannedLine, view: BuyingView): readonly WorkingLine[] {
  const { measure } = material;
  const wanted = view.wanted.get(material.id);
  const least = wanted?.least;
  const left = view.leftOver.get(material.id);
  const bought = packs * offer.pack.quantity;
  const others = wanted && left !== undefined ? wanted.quantity + left - bought : 0n;
  const toBuy = wanted && least ? { ...wanted, material, least, wanted: wanted.quantity, today: view.today } : null;
  const rest = wanted && left !== undefined ? [[bought, others, -wanted.quantity, left]] : [];
  const figure = figuresThatAdd([...(toBuy ? [toBuySum(toBuy)] : []), ...rest], measure);
  return [
    ...(toBuy ? toBuyLines(toBuy, figure) : []),
    { figure: stockInFull(offer.pack.quantity, measure), reason: packReason(material, offer.pack) },
    { operator: "×", figure: countShown(packs), reason: packs === 1n ? "pack" : "packs" },
    { figure: figure(bought), reason: "bought", isResult: true },
    ...(wanted && left !== undefined
      ? [
          ...(others > 0n ? [{ operator: "+" as const, figure: figure(others), reason: "in other packs of it" }] : []),
          { operator: "−" as const, figure: figure(wanted.quantity), reason: "needed" },
          { figure: figure(left), reason: "more than needed", isResult: true },
        ]
      : []),
    { figure: priceShown(packPrice, view.currency), reason: "one pack, where so many are bought" },
    { operator: "×", figure: countShown(packs), reason: packs === 1n ? "pack" : "packs" },
    { figure: moneyIn(view, cost), reason: "what they cost", isResult: true },
  ];
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
        <td className="number end">{moneyIn(view, shipping)}</td>
      </tr>
      <tr className="total">
        <th scope="row">This order</th>
        <td colSpan={3} className="not-on-phone" />
        <td className="number end">{moneyIn(view, total)}</td>
      </tr>
    </>
  );
}
