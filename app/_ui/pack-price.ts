/** How the price of one gram or piece comes about: the price of a pack over what is in it, by its unit or its density. */
import { ratio } from "@/lib/domain/fraction";
import type { CurrencyCode, MicroUnits } from "@/lib/domain/money";
import type { Material, Offer } from "@/lib/domain/workshop";
import { countShown, pricePerGramShown, priceShown, stockInFull } from "@/lib/edge/figures";
import { packReason } from "@/lib/edge/pack-words";
import type { WorkingLine } from "./working";

interface Priced {
  readonly offer: Pick<Offer, "pack">;
  readonly material: Material;
  readonly price: MicroUnits;
  readonly says: string;
  readonly currency: CurrencyCode;
}

export const packPriceLines = ({
  offer: { pack },
  material,
  price,
  says,
  currency,
}: Priced): readonly WorkingLine[] => [
  { figure: priceShown(price, currency), reason: says },
  { operator: "÷", figure: stockInFull(pack.quantity, material.measure), reason: packReason(material, pack) },
  {
    figure: pricePerGramShown(ratio(price, pack.quantity), material.measure, currency),
    reason: material.measure === "mass" ? "for one gram" : "for one piece",
    isResult: true,
  },
];

/** The prices of an offer, that of one pack first, with from how many packs on each counts. */
export const pricesOf = ({
  price,
  breaks,
}: Pick<Offer, "price" | "breaks">): readonly { readonly price: MicroUnits; readonly says: string }[] => [
  { price, says: "one pack" },
  ...breaks
    .toSorted((a, b) => Number(a.packs - b.packs))
    .map((each) => ({ price: each.price, says: `one pack, from ${countShown(each.packs)} packs on` })),
];
