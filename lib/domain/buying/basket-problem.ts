/**
 * What a basket is chosen for, without the workshop it came from: so much of each material, offers with whole packs,
 * and suppliers that charge for shipping or ask for a smallest order. Made from a plan by `problemOf`, from a maker's
 * frame by narrowing that, and from published instances in tests. @rule BUY-2, BUY-3, BUY-16, BUY-17
 */
import type { MicroUnits } from "../money";
import type { Packs, Stock } from "../quantity";
import type { PriceBreak } from "../workshop";
import type { Keeping, Keeps } from "./keeping";

export interface BasketProblem {
  readonly materials: readonly WantedMaterial[];
  readonly suppliers: readonly BasketSupplier[];
  readonly offers: readonly BasketOffer[];
  /** What may be spent in cash, where what is left over has a worth and might tempt to spend more. */
  readonly cap?: MicroUnits | null;
}

export interface WantedMaterial {
  readonly id: string;
  /** µg or pieces, above zero. */
  readonly wanted: Stock;
  /** What is left over is worth so much; nothing where it is not said. */
  readonly leftOver?: LeftOverWorth | null;
  /** Nothing of it may go out of date before it is used, but what this allows. */
  readonly keeping?: Keeping | null;
}

/** What is left over counts in whole steps, each worth the same, and no more steps than are of use. */
export interface LeftOverWorth {
  readonly step: Stock;
  /** Of one whole step. */
  readonly worth: MicroUnits;
  readonly most: bigint;
}

export interface BasketOffer {
  readonly id: string;
  readonly material: string;
  readonly supplier: string;
  /** µg or pieces in one pack. */
  readonly pack: Stock;
  /** Of one pack, where no break is reached. */
  readonly price: MicroUnits;
  readonly breaks: readonly PriceBreak[];
  /** The offer is taken not at all, or for at least so many packs. */
  readonly minPacks: Packs;
  /** No more packs than these, or null where there is no such limit. */
  readonly maxPacks: Packs | null;
  /** Needed where a material's keeping counts. */
  readonly keeps?: Keeps;
}

export interface BasketSupplier {
  readonly id: string;
  readonly shipping: MicroUnits;
  /** Goods, after breaks, from which shipping is waived. */
  readonly shippingFreeFrom: MicroUnits | null;
  /** Goods, after breaks, that an order must reach. */
  readonly minimumOrder: MicroUnits | null;
}

/** Packs by offer id. An offer that is not named is not taken. */
export type PacksByOffer = ReadonlyMap<string, bigint>;
