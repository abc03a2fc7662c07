/** What every part of the page is drawn from. */
import type { PlannedLine, PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import type { Lasting } from "@/lib/domain/buying/lasting";
import type { Day } from "@/lib/domain/calendar";
import type { Drift } from "@/lib/domain/landed";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Stock } from "@/lib/domain/quantity";
import type { LeastLeft } from "@/lib/domain/to-buy";
import type { Delivery } from "@/lib/domain/arrivals";
import type { Material, Order, Supplier } from "@/lib/domain/workshop";
import { amountShown, countShown, moneyShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { type AskedFrame, buyingAddress } from "@/lib/edge/forms/buying-frame";

export interface WantedThen {
  readonly quantity: Stock;
  /** What leads to that; null where the day on which least is left asks for nothing. */
  readonly least: LeastLeft | null;
  readonly onHand: Stock;
  readonly buyBy: Day;
  readonly orderBy: Day;
  /** It is lacking, and by the frame it waits. */
  readonly waits: boolean;
}

export interface BuyingView {
  readonly today: Day;
  readonly currency: CurrencyCode;
  readonly asked: AskedFrame;
  /** What is to be bought of each material, by its id. */
  readonly wanted: ReadonlyMap<string, WantedThen>;
  /** What the basket leaves over of each material, by its id. */
  readonly leftOver: ReadonlyMap<string, Stock>;
  /** How long each material that is bought then lasts, by its id. */
  readonly lasting: ReadonlyMap<string, Lasting>;
  /** What speaks against the price of an offer of the basket, by its id. */
  readonly drifts: ReadonlyMap<string, Drift>;
  readonly lastDay: Day;
  readonly orders: readonly Order[];
  readonly productOf: (id: string) => { readonly name: string };
  /** The calendars of a supplier and the workshop. */
  readonly deliveryOf: (supplier: Supplier) => Delivery;
}

export const moneyIn = ({ currency }: Pick<BuyingView, "currency">, amount: bigint): string =>
  moneyShown(amount, currency);

/** `3 × 1 kg` */
export const packsShown = ({ offer, packs }: PlannedLine): string =>
  `${countShown(packs)}${NO_BREAK}×${NO_BREAK}${amountShown(offer.pack.typed)}`;

/** What is left of a material beyond what was wanted, or nothing to say. */
export function leftOverWords(material: Material, { leftOver }: BuyingView): string | null {
  const left = leftOver.get(material.id) ?? 0n;
  return left === 0n ? null : `${stockShown(left, material.measure, "there")} more than needed`;
}

/** All lines of an order come on one day. */
export const arrivesOn = ({ lines: [first] }: PlannedOrder): Day => {
  if (first === undefined) throw new Error("an order without a line");
  return first.arrives;
};

export const whyAnchor = (offer: string): string => `why-${encodeURIComponent(offer)}`;

/** The same page with the reason for one line. */
export const whyAddress = (asked: AskedFrame, offer: string): `/buying?${string}` =>
  buyingAddress(asked, { why: offer }, whyAnchor(offer));
