import type { ReactNode } from "react";
import { type Fraction, ratio } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Material, Offer, Workshop } from "@/lib/domain/workshop";
import { countShown, pricePerGramShown, priceShown, stockInFull } from "@/lib/edge/figures";
import { packReason } from "@/lib/edge/pack-words";
import { Working, type WorkingLine } from "@/app/_ui/working";

/** Where it stands on the page of the offer. */
export const WORKED = "how-it-comes";

/** How the price of one gram or piece of an offer comes about, down to the pack and its density, at every price that it has. */
export function OfferWorking({ workshop, id }: { readonly workshop: Workshop; readonly id: string }): ReactNode {
  const offer = workshop.offers.find((each) => each.id === id);
  const material = workshop.materials.find((each) => each.id === offer?.material);
  if (offer === undefined || material === undefined) return null;
  const { currency } = workshop.settings;
  const one = material.measure === "mass" ? "gram" : "piece";
  const prices = [
    { price: offer.price, says: "one pack" },
    ...offer.breaks.map(({ packs, price }) => ({ price, says: `one pack, from ${countShown(packs)} packs on` })),
  ];
  return (
    <section className="block" id={WORKED} aria-labelledby={`${WORKED}-title`}>
      <h2 id={`${WORKED}-title`}>How the price of a {one} comes about</h2>
      {prices.map(({ price, says }) => (
        <Working key={says} lines={linesOf({ offer, material, price, says, currency })} />
      ))}
    </section>
  );
}

interface Priced {
  readonly offer: Offer;
  readonly material: Material;
  readonly price: MicroUnits;
  readonly says: string;
  readonly currency: CurrencyCode;
}

function linesOf({ offer: { pack }, material, price, says, currency }: Priced): readonly WorkingLine[] {
  const each: Fraction = ratio(price, pack.quantity);
  return [
    { figure: priceShown(price, currency), reason: says },
    { operator: "÷", figure: stockInFull(pack.quantity, material.measure), reason: packReason(material, pack) },
    {
      figure: pricePerGramShown(each, material.measure, currency),
      reason: material.measure === "mass" ? "for one gram" : "for one piece",
      isResult: true,
    },
  ];
}
