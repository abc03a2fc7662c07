/** Lots on the shelf and the order in which they are drawn. @rule LOT-1, LOT-2 */
import type { Day } from "./calendar";
import { byCodePoint } from "./code-point-order";
import type { MicroUnits } from "./money";
import { quantity, smaller, type Stock, sum } from "./quantity";
import type { Lot } from "./workshop";

/** A lot that is here or will come in. */
export interface ShelfLot {
  readonly id: string;
  readonly received: Day;
  readonly expires: Day | null;
  readonly quantity: Stock;
  /** Null for a lot that is still on order. */
  readonly value: MicroUnits | null;
  readonly order: string | null;
}

export const asShelfLot = (lot: Lot): ShelfLot => ({
  id: lot.id,
  received: lot.received,
  expires: lot.expires,
  quantity: lot.remaining,
  value: lot.value,
  order: null,
});

/** Whether a lot may still be used on a day. */
export const isUsable = (lot: { readonly expires: Day | null }, day: Day): boolean =>
  lot.expires === null || lot.expires >= day;

/** Below zero where `a` is drawn before `b`. @rule LOT-1 */
export const byDrawOrder = (
  a: { readonly id: string; readonly received: Day; readonly expires: Day | null },
  b: { readonly id: string; readonly received: Day; readonly expires: Day | null },
): number => (a.expires ?? Infinity) - (b.expires ?? Infinity) || a.received - b.received || byCodePoint(a.id, b.id);

/** A lot while a simulation draws on it. */
export interface StandingLot {
  readonly lot: ShelfLot;
  left: Stock;
  used: Stock;
  lost: Stock;
}

/**
 * The shelf of one material while a simulation runs: the lots in use, next to be drawn last, and what they hold.
 * It changes; every simulation makes its own.
 */
export interface StandingShelf {
  readonly standing: StandingLot[];
  holds: Stock;
}

const NONE = quantity<Stock>(0n);

/** A shelf with these lots on it, usable or not. */
export function standingShelf(lots: readonly ShelfLot[]): StandingShelf {
  const inOrder = [...lots].sort(byDrawOrder).reverse();
  return {
    standing: inOrder.map((lot) => ({ lot, left: lot.quantity, used: NONE, lost: NONE })),
    holds: inOrder.reduce((held, lot) => sum(held, lot.quantity), NONE),
  };
}

/** Puts a lot in its place in the draw order. */
export function putOnShelf(shelf: StandingShelf, lot: ShelfLot): StandingLot {
  let [low, high] = [0, shelf.standing.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const there = shelf.standing[middle];
    if (there && byDrawOrder(there.lot, lot) > 0) low = middle + 1;
    else high = middle;
  }
  const standing: StandingLot = { lot, left: lot.quantity, used: NONE, lost: NONE };
  shelf.standing.splice(low, 0, standing);
  shelf.holds = sum(shelf.holds, lot.quantity);
  return standing;
}

/** Takes off every lot that is out of date on `day`. @returns those that had something left, first expired first */
export function writeOff(shelf: StandingShelf, day: Day): readonly StandingLot[] {
  const lost: StandingLot[] = [];
  for (;;) {
    const next = shelf.standing.at(-1);
    if (!next || isUsable(next.lot, day)) return lost;
    shelf.standing.pop();
    if (next.left === 0n) continue;
    next.lost = next.left;
    shelf.holds = quantity<Stock>(shelf.holds - next.left);
    next.left = NONE;
    lost.push(next);
  }
}

/** Draws up to `wanted` by the draw order. Lots that are out of date must have been written off. @returns what it could give */
export function takeFromShelf(shelf: StandingShelf, wanted: Stock): Stock {
  const given = smaller(wanted, shelf.holds);
  let open: bigint = given;
  while (open > 0n) {
    const next = shelf.standing.at(-1);
    if (!next) throw new Error("the shelf holds less than its lots");
    const taken = smaller<bigint>(next.left, open);
    next.left = quantity<Stock>(next.left - taken);
    next.used = quantity<Stock>(next.used + taken);
    open -= taken;
    if (next.left === 0n) shelf.standing.pop();
  }
  shelf.holds = quantity<Stock>(shelf.holds - given);
  return given;
}
