import { type MicroUnits } from "@/lib/domain/money";
import { quantity } from "@/lib/domain/quantity";
import type { PriceName, Prices } from "./sold";

/** What stood in the two fields when the form was sent. */
export type TypedPrices = Readonly<Record<PriceName, string>>;

/**
 * Both prices in one text, in millionths, as forms and answers carry them: `6800000 none`. An answer to a form that was
 * sent without scripts is drawn as JSON, which has no whole numbers of any size.
 */
export type CarriedPrices = string;

export const pricesCarried = ({ priceToShops, priceToCustomers }: Prices): CarriedPrices =>
  [priceToShops, priceToCustomers].map((price) => price?.toString() ?? NONE).join(" ");

/** The prices of a text that {@link pricesCarried} has made. */
export function pricesOf(carried: CarriedPrices): Prices {
  const [priceToShops = null, priceToCustomers = null] = carried
    .split(" ")
    .map((price) => (price === NONE ? null : quantity<MicroUnits>(BigInt(price))));
  return { priceToShops, priceToCustomers };
}

const NONE = "none";

interface Sent {
  readonly typed: TypedPrices;
  /** The prices that the fields were drawn from, to be sent the next time. */
  readonly seen: CarriedPrices;
}

/** What the form of the prices is told after it was sent. */
export type PriceAnswer =
  | { readonly kind: "not sent" }
  | (Sent & {
      readonly kind: "set";
      readonly now: CarriedPrices;
      readonly was: CarriedPrices;
      readonly takenBack: boolean;
    })
  | (Sent & { readonly kind: "already so"; readonly now: CarriedPrices })
  | (Sent & { readonly kind: "changed meanwhile"; readonly now: CarriedPrices })
  | (Sent & {
      readonly kind: "refused";
      readonly faults: Partial<TypedPrices>;
      /** About the form as a whole. */
      readonly says: string | null;
    });

export const NOT_SENT: PriceAnswer = { kind: "not sent" };
