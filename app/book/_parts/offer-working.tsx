import type { ReactNode } from "react";
import { packPriceLines, pricesOf } from "@/app/_ui/pack-price";
import { Working } from "@/app/_ui/working";
import type { Workshop } from "@/lib/domain/workshop";

/** Where it stands on the page of the offer. */
export const WORKED = "how-it-comes";

/** How the price of one gram or piece of an offer comes about, down to the pack and its density, at every price that it has. */
export function OfferWorking({ workshop, id }: { readonly workshop: Workshop; readonly id: string }): ReactNode {
  const offer = workshop.offers.find((each) => each.id === id);
  const material = workshop.materials.find((each) => each.id === offer?.material);
  if (offer === undefined || material === undefined) return null;
  const { currency } = workshop.settings;
  const one = material.measure === "mass" ? "gram" : "piece";
  return (
    <section className="block" id={WORKED} aria-labelledby={`${WORKED}-title`}>
      <h2 id={`${WORKED}-title`}>How the price of a {one} comes about</h2>
      {pricesOf(offer).map(({ price, says }) => (
        <Working key={says} lines={packPriceLines({ offer, material, price, says, currency })} />
      ))}
    </section>
  );
}
