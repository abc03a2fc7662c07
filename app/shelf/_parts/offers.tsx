import Link from "next/link";
import type { ReactNode } from "react";
import { ratio } from "@/lib/domain/fraction";
import type { Offer } from "@/lib/domain/workshop";
import { amountShown, countShown, dayShown, daysShown, priceShown, pricePerGramShown } from "@/lib/edge/figures";
import { paidAddress } from "@/lib/edge/ledger-address";
import { leadWords, type MaterialPart } from "./shelf";

/** Who sells it, in what packs, at what price, and how long it takes. */
export function Offers({ outlook: { material, pricedOffer, offersConsidered }, shelf }: MaterialPart): ReactNode {
  const { supplierOf, workshop } = shelf;
  const offers = shelf.offersOf(material);
  if (offers.length === 0) return <h3 className="shelf-further">Nobody offers it</h3>;
  const currency = workshop.settings.currency;
  return (
    <>
      <h3 className="shelf-further">{offers.length === 1 ? "The offer" : "Offers"}</h3>
      <table className="ledger">
        <thead>
          <tr>
            <th scope="col">Pack</th>
            <th scope="col">From</th>
            <th scope="col" className="number">
              Price
            </th>
            <th scope="col" className="number">
              {material.measure === "mass" ? "A gram" : "Each"}
            </th>
          </tr>
        </thead>
        <tbody>
          {offers.map((offer) => (
            <tr key={offer.id}>
              <th scope="row">
                {amountShown(offer.pack.typed)}
                {offer === pricedOffer && <small>ordered and priced by</small>}
                {!offersConsidered.includes(offer) && <small>not from the preferred supplier</small>}
              </th>
              <td className="second-line">
                {supplierOf(offer.supplier).name}
                <small>{leadWords(supplierOf(offer.supplier))}</small>
                {offer.shelfLifeDays !== null && <small>keeps {daysShown(offer.shelfLifeDays)} after it comes</small>}
              </td>
              <td className="number end">
                {priceShown(offer.price, currency)}
                {offer.confirmedOn !== null && (
                  <small>confirmed {dayShown(offer.confirmedOn, shelf.today, { weekday: false })}</small>
                )}
                {conditions(offer, (price) => priceShown(price, currency)).map((words) => (
                  <small key={words}>{words}</small>
                ))}
              </td>
              <td className="number not-on-phone">
                {pricePerGramShown(ratio(offer.price, offer.pack.quantity), material.measure, currency)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="shelf-facts">
        <Link href={paidAddress(material.id)} prefetch={false}>
          What was paid for it
        </Link>
        , and whether its offers still say that.
      </p>
    </>
  );
}

const conditions = ({ breaks, minPacks }: Offer, shown: (price: bigint) => string): readonly string[] => [
  ...(minPacks > 1n ? [`at least ${countShown(minPacks)} packs`] : []),
  ...[...breaks]
    .sort((a, b) => (a.packs < b.packs ? -1 : 1))
    .map(({ packs, price }) => `${shown(price)} from ${countShown(packs)} packs`),
];
