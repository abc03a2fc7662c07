import Link from "next/link";
import type { ReactNode } from "react";
import type { TooLate } from "@/lib/domain/buying/frame";
import type { Material, Offer, Supplier } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { dayShown, daysShown } from "@/lib/edge/figures";
import type { BuyingView } from "./buying-view";

interface NotHeld {
  readonly view: BuyingView;
  readonly tooLate: readonly TooLate[];
  readonly unsourced: readonly Material[];
  /** Every offer, those of suppliers that are left out among them. */
  readonly offers: readonly Offer[];
  readonly supplierOf: (id: string) => Supplier;
}

/** What the frame or the lack of an offer keeps from the basket: which rule, and by how much. @rule BUY-16, BUY-17 */
export function CannotHold({ view, tooLate, unsourced, offers, supplierOf }: NotHeld): ReactNode {
  if (tooLate.length + unsourced.length === 0) return null;
  return (
    <section className="fault buying-not-held" aria-labelledby="not-held">
      <h2 id="not-held">Not in the basket</h2>
      <ul className="fault-list">
        {tooLate.map(({ material, buyBy, arrives, days }) => (
          <li key={material.id}>
            {material.name} cannot come in time: the earliest day is {dayShown(arrives, view.today)}, {daysShown(days)}{" "}
            after it should be there, {dayShown(buyBy, view.today)}. Let it come late, or move the run.
          </li>
        ))}
        {unsourced.map((material) => (
          <li key={material.id}>
            {material.name}: {reasonFor(material, offers, supplierOf)}{" "}
            <Link href="/book/offers/new">Enter an offer in the book</Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

function reasonFor(material: Material, offers: readonly Offer[], supplierOf: NotHeld["supplierOf"]): string {
  const names = [
    ...new Set(
      offers.filter((offer) => offer.material === material.id).map(({ supplier }) => supplierOf(supplier).name),
    ),
  ];
  if (names.length === 0) return "nobody offers it.";
  return `offered only by ${inARow(names)}, and left out with ${names.length === 1 ? "it" : "them"}. Take a supplier in again.`;
}
