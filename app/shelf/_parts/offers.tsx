import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger, type LedgerColumn, OpeningRow } from "@/app/_ui/ledger";
import { packPriceLines, pricesOf } from "@/app/_ui/pack-price";
import { Working } from "@/app/_ui/working";
import { ratio } from "@/lib/domain/fraction";
import type { Measure } from "@/lib/domain/quantity";
import type { Offer } from "@/lib/domain/workshop";
import { amountShown, countShown, dayShown, daysShown, priceShown, pricePerGramShown } from "@/lib/edge/figures";
import { paidAddress } from "@/lib/edge/ledger-address";
import { leadWords, type MaterialPart } from "./shelf";

/** Who sells it, in what packs, at what price, and how long it takes. */
export function Offers({ outlook, shelf }: MaterialPart): ReactNode {
  const { material } = outlook;
  const offers = shelf.offersOf(material);
  if (offers.length === 0) return <h3 className="shelf-further">Nobody offers it</h3>;
  const { currency } = shelf.workshop.settings;
  return (
    <>
      <h3 className="shelf-further">{offers.length === 1 ? "The offer" : "Offers"}</h3>
      <Ledger caption={`Offers of ${material.name}`} columns={columnsFor(material.measure)} opens>
        {offers.map((offer) => (
          <OpeningRow
            key={offer.id}
            id={`offer-${encodeURIComponent(offer.id)}`}
            name={amountShown(offer.pack.typed)}
            cells={<OfferCells offer={offer} outlook={outlook} shelf={shelf} />}
            across={COLUMNS}
          >
            {pricesOf(offer).map(({ price, says }) => (
              <Working key={says} lines={packPriceLines({ offer, material, price, says, currency })} />
            ))}
          </OpeningRow>
        ))}
      </Ledger>
      <p className="shelf-facts">
        <Link href={paidAddress(material.id)} prefetch={false}>
          What was paid for it
        </Link>
        , and whether its offers still say that.
      </p>
    </>
  );
}

const COLUMNS = 4;

const columnsFor = (measure: Measure): readonly LedgerColumn[] => [
  { name: "Pack" },
  { name: "From" },
  { name: "Price", kind: "number" },
  { name: measure === "mass" ? "A gram" : "Each", kind: "number" },
];

interface Cells extends MaterialPart {
  readonly offer: Offer;
}

function OfferCells({ offer, outlook: { material, pricedOffer, offersConsidered }, shelf }: Cells): ReactNode {
  const { supplierOf, workshop, today } = shelf;
  const { currency } = workshop.settings;
  return (
    <>
      <td className="second-line">
        {supplierOf(offer.supplier).name}
        <small>{leadWords(supplierOf(offer.supplier))}</small>
        {offer.shelfLifeDays !== null && <small>keeps {daysShown(offer.shelfLifeDays)} after it comes</small>}
        {offer === pricedOffer && <small>the offer that orders and prices use</small>}
        {!offersConsidered.includes(offer) && <small>not from the preferred supplier</small>}
      </td>
      <td className="number end">
        {priceShown(offer.price, currency)}
        {offer.confirmedOn !== null && (
          <small>confirmed {dayShown(offer.confirmedOn, today, { weekday: false })}</small>
        )}
        {conditions(offer, (price) => priceShown(price, currency)).map((words) => (
          <small key={words}>{words}</small>
        ))}
      </td>
      <td className="number not-on-phone">
        {pricePerGramShown(ratio(offer.price, offer.pack.quantity), material.measure, currency)}
      </td>
    </>
  );
}

const conditions = ({ breaks, minPacks }: Offer, shown: (price: bigint) => string): readonly string[] => [
  ...(minPacks > 1n ? [`at least ${countShown(minPacks)} packs`] : []),
  ...[...breaks]
    .sort((a, b) => (a.packs < b.packs ? -1 : 1))
    .map(({ packs, price }) => `${shown(price)} from ${countShown(packs)} packs`),
];
