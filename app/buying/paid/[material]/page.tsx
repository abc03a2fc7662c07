import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { Fragment, type ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Ledger } from "@/app/_ui/ledger";
import type { WorkingLine } from "@/app/_ui/working";
import { planForPage, type Planned } from "@/app/plan-for-page";
import { compare, type Fraction, ratio, roundedHalfAway } from "@/lib/domain/fraction";
import { driftOf, landedEach, paidEach } from "@/lib/domain/landed";
import type { LotReceived } from "@/lib/domain/ledger/receipt";
import type { Material, Offer } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { amountShown, dayShown, moneyShown, priceShown, stockInFull, stockShown } from "@/lib/edge/figures";
import { inLargeUnit, largeUnitShown, priceTicks } from "@/lib/edge/landed-figures";
import { idOfSegment, lotAddress, postingAddress, suggestedAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { readReceivedOf } from "@/lib/store/ledger/ledger-answers";
import { driftSays } from "../../_parts/drift-words";
import { PaidChart } from "../../_parts/paid-chart";
import type { PaidSeries } from "../../_parts/paid-drawing";
import { MarksOf } from "../../_parts/paid-marks";
import { BuyingCrumb } from "../../orders/_parts/buying-crumb";
import "../../buying.css";

export const metadata: Metadata = { title: "What was paid" };

interface Page {
  readonly params: Promise<{ readonly material: string }>;
}

/** What was paid for a material over time and by supplier, and whether its offers still say it. */
export default async function PaidPage({ params }: Page): Promise<ReactNode> {
  const [found, id] = [await planForPage(), idOfSegment((await params).material)];
  if (found === null) redirect("/");
  const material = found.workshop.materials.find((each) => each.id === id);
  if (material === undefined) notFound();
  const received = await readReceivedOf([material.id]);
  return (
    <>
      <Opening crumb={<BuyingCrumb orders />} title={`What was paid for ${material.name}`}>
        <Finding received={received} material={material} found={found} />
      </Opening>
      {received.length > 1 && <Drawn received={received} material={material} found={found} />}
      <Paid received={received} material={material} found={found} />
      <Offers received={received} material={material} found={found} />
      <p className="small paid-further">
        <Link href={materialAddress(material.id)}>On the shelf</Link> ·{" "}
        <Link href={suggestedAddress(material.id)}>Safety stock and order size, by the textbook</Link>
      </p>
    </>
  );
}

interface Part {
  readonly received: readonly LotReceived[];
  readonly material: Material;
  readonly found: Planned;
}

const nameOf = ({ workshop }: Planned, supplier: string | null): string =>
  supplier === null ? "not said" : (workshop.suppliers.find(({ id }) => id === supplier)?.name ?? supplier);

function Finding({ received, material, found }: Part): ReactNode {
  const { currency } = found.workshop.settings;
  const [last] = received.slice(-1);
  const asked = askedFor(material, found);
  if (last === undefined)
    return (
      <>
        No delivery of it has come yet.
        {asked.length > 0 && (
          <>
            {" "}
            Its offers ask{" "}
            <b>
              {asked[0]}
              {asked.length > 1 && ` to ${asked.at(-1) ?? ""}`}
            </b>
            .
          </>
        )}{" "}
        What lots cost that were entered by hand is on <Link href={materialAddress(material.id)}>the shelf</Link>.
      </>
    );
  const byPrice = received.toSorted((a, b) => compare(paidEach(a), paidEach(b)));
  const [least, most] = [byPrice[0] ?? last, byPrice.at(-1) ?? last];
  const shown = (each: LotReceived): string => largeUnitShown(paidEach(each), material.measure, currency);
  return (
    <>
      Last <b>{shown(last)}</b>, {dayShown(last.day, found.today)} from {nameOf(found, last.supplier)}.
      {received.length > 1 &&
        ` Over ${counted(received.length, "lot", "lots")} from ${shown(least)} to ${shown(most)}, before delivery and duty.`}
    </>
  );
}

/** What the offers of a material ask for a kilogram or a piece, the least first; each figure once. */
function askedFor({ id, measure }: Material, { workshop: { offers, settings } }: Planned): readonly string[] {
  const each = offers.filter((offer) => offer.material === id).map(offerEach);
  return [...new Set(each.toSorted(compare).map((price) => largeUnitShown(price, measure, settings.currency)))];
}

const offerEach = ({ price, pack }: Offer): Fraction => ratio(price, pack.quantity);

/** The prices over time, with which shape is whose and what the heights mean. */
function Drawn({ received, material, found }: Part): ReactNode {
  const { currency } = found.workshop.settings;
  const highest = received
    .map((each) => inLargeUnit(paidEach(each), material.measure))
    .reduce((a, b) => (compare(a, b) < 0 ? b : a));
  const series = seriesOf(received, material, found);
  return (
    <figure className="paid-figure">
      <figcaption>
        <span className="label">
          {material.measure === "mass" ? "Paid for a kg" : "Paid for one"}, before delivery and duty
        </span>
        <MarksOf suppliers={series.map(({ supplier }) => supplier)} />
      </figcaption>
      <PaidChart
        says={`What was paid for ${material.name} over time, by supplier; the table below says the same.`}
        series={series}
        ticks={priceTicks(highest, currency).map(({ micros, shown }) => ({ price: Number(micros), shown }))}
      />
    </figure>
  );
}

function seriesOf(received: readonly LotReceived[], material: Material, found: Planned): readonly PaidSeries[] {
  const suppliers = [...new Set(received.map(({ supplier }) => supplier))];
  return suppliers.map((supplier) => ({
    supplier: nameOf(found, supplier),
    points: received
      .filter((each) => each.supplier === supplier)
      .map((each) => ({
        day: each.day,
        dayShown: dayShown(each.day, found.today, { weekday: false }),
        price: Number(roundedHalfAway(inLargeUnit(paidEach(each), material.measure))),
      })),
  }));
}

const PAID_COLUMNS = [
  { name: "Came" },
  { name: "From" },
  { name: "How much", kind: "number", className: "not-on-phone" },
  { name: "Paid", kind: "number" },
  { name: "Landed", kind: "number", className: "not-on-phone" },
  { name: "Lot", className: "not-on-phone" },
] as const;

function Paid({ received, material, found }: Part): ReactNode {
  if (received.length === 0) return null;
  const { currency } = found.workshop.settings;
  return (
    <Ledger
      caption={`What was paid for ${material.name}, the last first`}
      columns={PAID_COLUMNS}
      className="order-lines"
    >
      {received.toReversed().map((each) => (
        <Fragment key={each.lot}>
          <tr className="with-note">
            <th scope="row">
              <Link href={postingAddress(each.posting)}>{dayShown(each.day, found.today)}</Link>
            </th>
            <td className="second-line">{nameOf(found, each.supplier)}</td>
            <td className="number not-on-phone">{stockShown(each.quantity, material.measure, "there")}</td>
            <td className="number end">{largeUnitShown(paidEach(each), material.measure, currency)}</td>
            <td className="number not-on-phone">{largeUnitShown(landedEach(each), material.measure, currency)}</td>
            <td className="not-on-phone">
              <Link href={lotAddress(each.lot)}>{each.lot}</Link>
            </td>
          </tr>
          <tr className="line-note">
            <td colSpan={PAID_COLUMNS.length}>
              <HowItComes lines={paidLines(each, material, found)} />
            </td>
          </tr>
        </Fragment>
      ))}
    </Ledger>
  );
}

/** What was paid and landed, over what came; and over the packs, which an offer's price is held against. @rule ORDER-6 */
function paidLines(each: LotReceived, { measure }: Material, found: Planned): readonly WorkingLine[] {
  const { currency } = found.workshop.settings;
  const money = (micros: bigint): string => moneyShown(micros, currency, 2);
  const came = { operator: "÷", figure: stockInFull(each.quantity, measure), reason: "came" } as const;
  const packs = counted(Number(each.packs), "pack", "packs");
  return [
    { figure: money(each.paid), reason: `paid for ${packs}, before delivery and duty` },
    came,
    { figure: largeUnitShown(paidEach(each), measure, currency), reason: "paid", isResult: true },
    { figure: money(each.paid), reason: "paid" },
    { operator: "+", figure: money(each.landed - each.paid), reason: "its shares of delivery and duty" },
    { figure: money(each.landed), reason: "what the lot cost in the house", isResult: true },
    came,
    { figure: largeUnitShown(landedEach(each), measure, currency), reason: "landed", isResult: true },
    { figure: money(each.paid), reason: "paid" },
    { operator: "÷", figure: packs, reason: "that came" },
    { figure: moneyShown(ratio(each.paid, each.packs), currency, 2), reason: "for one pack", isResult: true },
  ];
}

const OFFER_COLUMNS = [{ name: "Offer" }, { name: "Asks", kind: "number" }, { name: "Whether it holds" }] as const;

/** Whether each offer still says what is paid. @rule OFFER-3 */
function Offers({ received, material, found }: Part): ReactNode {
  const offers = found.workshop.offers.filter((offer) => offer.material === material.id);
  if (offers.length === 0) return null;
  const { currency } = found.workshop.settings;
  return (
    <section className="block" aria-labelledby="offers">
      <h2 id="offers">Its offers</h2>
      <Ledger caption={`The offers of ${material.name}, and whether they still hold`} columns={OFFER_COLUMNS}>
        {offers.map((offer) => (
          <tr key={offer.id}>
            <th scope="row">
              <Link href={`/book/offers/${encodeURIComponent(offer.id)}`}>
                {nameOf(found, offer.supplier)}, {amountShown(offer.pack.typed)}
              </Link>
            </th>
            <td className="number end">
              {priceShown(offer.price, currency)}
              <small>{largeUnitShown(offerEach(offer), material.measure, currency)}</small>
            </td>
            <td className="second-line small">
              {driftSays(driftOf(offer, received, found.today), offer, found.today, currency)}
            </td>
          </tr>
        ))}
      </Ledger>
    </section>
  );
}
