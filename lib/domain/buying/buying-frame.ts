/**
 * What a maker may set for a purchase: how far it is to last, who is left out or held to, when it must come, what may
 * be spent, and what becomes of leftovers. A frame narrows a shopping list; what it makes impossible is told with the
 * figures. @rule BUY-10, BUY-11, BUY-16 to BUY-18
 */
import { type Day, daysBetween } from "../calendar";
import type { MicroUnits } from "../money";
import type { LineTooLarge } from "../orders";
import type { MaterialOutlook } from "../plan-figures";
import { type PartsPerMillion, quantity } from "../quantity";
import type { Material, Offer, Supplier, Workshop } from "../workshop";
import type { Candidate, Purchase, ShoppingList } from "./shopping-list";
import { type Ahead, keptPurchase, leftOverWorthOf, type OutOfDateBeforeUse } from "./purchase-in-frame";

export interface BuyingFrame {
  readonly cover: Cover;
  readonly arrival: Arrival;
  /** Ids of suppliers that are not ordered from. */
  readonly leftOut: ReadonlySet<string>;
  /** Ids of suppliers that are ordered from wherever they have an offer. */
  readonly heldTo: ReadonlySet<string>;
  /** Ids of offers that alone may fill their materials. */
  readonly chosen: ReadonlySet<string>;
  /** What may be spent, shipping included; null for no limit. */
  readonly cap: MicroUnits | null;
  /** Only what must be ordered by this day, and what rides along; null for everything. */
  readonly orderBy: Day | null;
  /** Nothing is bought that goes out of date before it is used. */
  readonly mustKeep: boolean;
  /** Useful leftovers count for so much of their price; 0 for nothing. */
  readonly leftOvers: PartsPerMillion;
}

/** Days to be covered from the first arrival on: the workshop's own, so many, or up to the horizon. */
export type Cover =
  { readonly kind: "workshop" } | { readonly kind: "days"; readonly days: number } | { readonly kind: "horizon" };

/** Candidates by the rules; only offers that come in time; or every offer, however late. */
export type Arrival = "by the rules" | "in time" | "any day";

export const OPEN_FRAME: BuyingFrame = {
  cover: { kind: "workshop" },
  arrival: "by the rules",
  leftOut: new Set(),
  heldTo: new Set(),
  chosen: new Set(),
  cap: null,
  orderBy: null,
  mustKeep: false,
  leftOvers: quantity<PartsPerMillion>(0n),
};

/** A rule that cannot hold in the frame, and by how much. */
export type FrameFault =
  /** Everyone who offers the material is left out, so nothing of it can be bought. */
  | { readonly kind: "everyone left out"; readonly material: Material; readonly suppliers: readonly string[] }
  /** No offer comes in time; the first is so many days late. */
  | {
      readonly kind: "nothing in time";
      readonly material: Material;
      readonly buyBy: Day;
      readonly first: Day;
      readonly daysLate: number;
    }
  /** A supplier or an offer is held to that nothing is wanted from; of a minimum order, all is lacking. */
  | { readonly kind: "nothing wanted"; readonly supplier: Supplier; readonly minimumOrder: MicroUnits | null }
  | { readonly kind: "chosen offer not wanted"; readonly offer: Offer }
  | OutOfDateBeforeUse
  /** An order stays below its minimum unless something is bought that goes out of date. */
  | { readonly kind: "minimum out of reach"; readonly supplier: Supplier; readonly by: MicroUnits }
  /** What would be ordered is more than the books can hold, so that it cannot be kept. */
  | ({ readonly kind: "line too large" } & LineTooLarge)
  | { readonly kind: "over the cap"; readonly cap: MicroUnits; readonly least: MicroUnits; readonly by: MicroUnits };

export interface FramedList {
  readonly list: ShoppingList;
  readonly faults: readonly FrameFault[];
}

/** A purchase with every offer that may be considered for it, before any is ruled out by the day it comes. */
export interface OpenPurchase extends Omit<Purchase, "candidates" | "leftOver" | "keeping"> {
  readonly outlook: MaterialOutlook;
  readonly offered: readonly Candidate[];
  /** Which of them are candidates by the rules. */
  readonly byTheRules: (offered: readonly Candidate[]) => readonly Candidate[];
}

/**
 * The purchases as the frame allows them. A purchase that it makes impossible is told and left off the list.
 * @param open       with what those who are not left out offer
 * @param unoffered  materials that none of those offers
 */
export function framed(
  open: readonly OpenPurchase[],
  unoffered: readonly Material[],
  frame: BuyingFrame,
  { suppliers, offers }: Pick<Workshop, "suppliers" | "offers">,
  ahead: Ahead,
): FramedList {
  const faults: FrameFault[] = [];
  const unsourced = unoffered.filter((material) => {
    const names = new Set(offers.flatMap((offer) => (offer.material === material.id ? [offer.supplier] : [])));
    if (names.size > 0) faults.push({ kind: "everyone left out", material, suppliers: [...names] });
    return names.size === 0;
  });
  const purchases = open.flatMap(({ offered, byTheRules, outlook, ...purchase }): readonly Purchase[] => {
    const held = heldOffers(offered, frame);
    const candidates = inTheFrame(held, frame.arrival, byTheRules);
    if (candidates.length > 0) {
      const leftOver = leftOverWorthOf({ candidates }, outlook, frame.leftOvers, ahead);
      const whole: Purchase = { ...purchase, candidates, leftOver, keeping: null };
      const kept = frame.mustKeep ? keptPurchase(whole, outlook, ahead) : { purchase: whole, fault: null };
      if (kept.fault) faults.push(kept.fault);
      return kept.purchase ? [kept.purchase] : [];
    }
    const first = Math.min(...held.map(({ arrives }) => arrives)) as Day;
    const { material, buyBy } = purchase;
    faults.push({ kind: "nothing in time", material, buyBy, first, daysLate: daysBetween(buyBy, first) });
    return [];
  });
  const wanted = open.flatMap(({ offered }) => offered.map(({ offer }) => offer));
  for (const supplier of suppliers)
    if (frame.heldTo.has(supplier.id) && !wanted.some((offer) => offer.supplier === supplier.id))
      faults.push({ kind: "nothing wanted", supplier, minimumOrder: supplier.minimumOrder });
  for (const offer of offers)
    if (frame.chosen.has(offer.id) && !wanted.includes(offer)) faults.push({ kind: "chosen offer not wanted", offer });
  return { list: { purchases, unsourced }, faults };
}

/** A chosen offer stands alone; else those of a supplier that is held to; else all. */
function heldOffers(allowed: readonly Candidate[], { chosen, heldTo }: BuyingFrame): readonly Candidate[] {
  const alone = allowed.filter(({ offer }) => chosen.has(offer.id));
  if (alone.length > 0) return alone;
  const held = allowed.filter(({ offer }) => heldTo.has(offer.supplier));
  return held.length > 0 ? held : allowed;
}

function inTheFrame(
  held: readonly Candidate[],
  arrival: Arrival,
  byTheRules: OpenPurchase["byTheRules"],
): readonly Candidate[] {
  switch (arrival) {
    case "by the rules":
      return byTheRules(held);
    case "in time":
      return held.filter(({ late }) => !late);
    case "any day":
      return held;
  }
}

/** Whether the least that a basket costs is above the cap; with a gap, above it even if all of that were saved. */
export function overCap(
  { total, gap }: { readonly total: MicroUnits; readonly gap: MicroUnits | null },
  cap: MicroUnits | null,
): FrameFault | null {
  if (cap === null) return null;
  const least = quantity<MicroUnits>(total - (gap ?? 0n));
  if (least <= cap) return null;
  return { kind: "over the cap", cap, least, by: quantity<MicroUnits>(least - cap) };
}
