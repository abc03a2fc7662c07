/** What of a purchase would go out of date before it is used, as far as the plan looks ahead. @rule BUY-16 */
import { type Day, daysAfter } from "../calendar";
import type { ShelfLot } from "../lots";
import type { MaterialOutlook } from "../plan-figures";
import { type Draw, project, type Projection } from "../projection";
import { quantity, type Stock, type Units } from "../quantity";

/** What a material's lots are drawn for, and how much of a purchase may be lost. */
export interface Keeping {
  readonly today: Day;
  readonly lastDay: Day;
  /** Lots that are here, and on the way on the day on which they come. */
  readonly lots: readonly KeptLot[];
  /** What runs take, in their order. */
  readonly draws: readonly { readonly day: Day; readonly need: Stock }[];
  /** No more than this may go out of date: what whole packs force. */
  readonly mostLost: Stock;
}

export interface KeptLot {
  readonly id: string;
  /** Null for a lot that is here. */
  readonly comes: Day | null;
  readonly received: Day;
  readonly expires: Day | null;
  readonly quantity: Stock;
}

/** When what is bought of an offer comes, and the last day on which it may be used; null where it has none. */
export interface Keeps {
  readonly arrives: Day;
  readonly expires: Day | null;
}

/** So much of an offer. */
export interface Bought extends Keeps {
  readonly quantity: Stock;
}

/** A purchase is drawn after every other lot of the same days. */
const BOUGHT = "\u{10FFFF}";
/** Whether a lot of a projection is what was bought, and not one of the book's. */
export const isBought = (lot: string): boolean => lot.startsWith(BOUGHT);

/** The shelf and the runs of a material, as the projection of a plan shows them. */
export const shelfToCome = (
  { ladder, events }: Pick<MaterialOutlook, "ladder" | "events">,
  today: Day,
  lastDay: Day,
): Omit<Keeping, "mostLost"> => ({
  today,
  lastDay,
  lots: ladder.map(({ lot, received, expires, quantity, order }) => ({
    id: lot,
    comes: order === null ? null : received,
    received,
    expires,
    quantity,
  })),
  draws: events.flatMap((event) => (event.kind === "drawn" ? [{ day: event.day, need: event.need }] : [])),
});

/** How much of what is bought is written off up to the plan's last day, if every run goes ahead. */
export function lostOf(shelf: Omit<Keeping, "mostLost">, bought: readonly Bought[]): bigint {
  if (bought.every(({ expires }) => expires === null || expires >= shelf.lastDay)) return 0n;
  const { expiring } = projectedWith(shelf, bought);
  return expiring.reduce((sum, { lot, quantity: lost }) => (isBought(lot) ? sum + lost : sum), 0n);
}

/** The material's projection again, with what is bought on the days on which it comes. */
export function projectedWith(shelf: Omit<Keeping, "mostLost">, bought: readonly Bought[]): Projection {
  const asLot = (lot: KeptLot): ShelfLot => ({ ...lot, value: null, order: null });
  const coming = [
    ...shelf.lots.flatMap((lot) => (lot.comes === null ? [] : [{ day: lot.comes, lot: asLot(lot) }])),
    ...bought.map(({ arrives, expires, quantity: each }, at) => ({
      day: arrives,
      lot: asLot({ id: `${BOUGHT}${String(at)}`, comes: arrives, received: arrives, expires, quantity: each }),
    })),
  ].sort((a, b) => a.day - b.day);
  return project(
    shelf.lots.filter(({ comes }) => comes === null).map(asLot),
    coming.map((each) => ({ ...each, material: "" })),
    // The projection tells of runs and asks nothing of them.
    shelf.draws.map((draw) => ({ ...draw, run: RUN })),
    shelf.today,
    shelf.lastDay,
  );
}

const RUN: Draw["run"] = { id: "", product: "", date: 0 as Day, sequence: 0, units: quantity<Units>(1n) };

/** The last day of use of what comes on a day, by its shelf life on arrival; null where that is not known. */
export const lastDayOfUse = (arrives: Day, shelfLifeDays: number | null): Day | null =>
  shelfLifeDays === null ? null : daysAfter(arrives, shelfLifeDays);
