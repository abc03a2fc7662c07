/** What becomes of one material if every run goes ahead. @rule PLAN-1, PLAN-5, PLAN-9 */
import type { Arrival } from "./arrivals";
import { type Day, daysAfter } from "./calendar";
import { byCodePoint } from "./code-point-order";
import {
  byDrawOrder,
  putOnShelf,
  type ShelfLot,
  type StandingLot,
  standingShelf,
  takeFromShelf,
  writeOff,
} from "./lots";
import type { Balance, Expiry, LadderLot, ShelfEvent } from "./plan-figures";
import { quantity, type Stock, sum } from "./quantity";
import type { Run } from "./workshop";

/** What a run needs of the material, on the day it draws. */
export interface Draw {
  readonly day: Day;
  readonly run: Run;
  readonly need: Stock;
  /** What it takes beyond its need where that is there, instead of a premix: it is never owed. @rule AHEAD-5 */
  readonly instead?: Stock;
}

export interface Projection {
  /** The balance at the end of today and of each later day on which it changes. */
  readonly balances: readonly Balance[];
  readonly events: readonly ShelfEvent[];
  readonly expiring: readonly Expiry[];
  readonly ladder: readonly LadderLot[];
}

/**
 * Goes from one day on which something happens to the next, from today to the last day.
 * @param lots      of the material, here today; those out of date are written off first
 * @param arrivals  of the material, by day
 * @param draws     on the material, in the order in which the runs draw
 */
export function project(
  lots: readonly ShelfLot[],
  arrivals: readonly Arrival[],
  draws: readonly Draw[],
  today: Day,
  lastDay: Day,
): Projection {
  const shelf = standingShelf(lots);
  const all: StandingLot[] = [...shelf.standing];
  const events: ShelfEvent[] = [];
  const expiring: Expiry[] = [];
  const balances: Balance[] = [];
  let owed = 0n;
  let [nextArrival, nextDraw] = [0, 0];
  const after = (day: Day) => ({ day, shelf: shelf.holds, owed: quantity<Stock>(owed) });

  const takeOffOutOfDate = (day: Day) => {
    for (const { lot, lost } of writeOff(shelf, day)) {
      expiring.push({ lot: lot.id, on: daysAfter(lot.expires ?? day, 1), quantity: lost });
      events.push({ kind: "written off", lot: lot.id, quantity: lost, ...after(day) });
    }
  };

  const settle = (day: Day) => {
    const settled = takeFromShelf(shelf, quantity<Stock>(owed));
    owed -= settled;
    if (settled > 0n) events.push({ kind: "settled", quantity: settled, ...after(day) });
  };

  for (let day = today; day <= lastDay; day = nextDayWithSomething()) {
    takeOffOutOfDate(day);
    let arrived = false;
    for (let due = arrivals[nextArrival]; due && due.day <= day; due = arrivals[(nextArrival += 1)]) {
      all.push(putOnShelf(shelf, due.lot));
      events.push({ kind: "arrived", lot: due.lot.id, quantity: due.lot.quantity, ...after(day) });
      arrived = true;
    }
    if (arrived) {
      takeOffOutOfDate(day);
      settle(day);
    }
    for (let draw = draws[nextDraw]; draw && draw.day <= day; draw = draws[(nextDraw += 1)]) {
      const lacking = quantity<Stock>(draw.need - takeFromShelf(shelf, draw.need));
      owed += lacking;
      const need = draw.instead === undefined ? draw.need : sum(draw.need, takeFromShelf(shelf, draw.instead));
      if (need > 0n) events.push({ kind: "drawn", run: draw.run, need, lacking, ...after(day) });
    }
    balances.push({ day, balance: shelf.holds - owed });
  }

  function nextDayWithSomething(): Day {
    const nextOut = shelf.standing.at(-1)?.lot.expires ?? Infinity;
    return Math.min(arrivals[nextArrival]?.day ?? Infinity, draws[nextDraw]?.day ?? Infinity, nextOut + 1) as Day;
  }

  return { balances, events, expiring: expiring.sort((a, b) => byCodePoint(a.lot, b.lot)), ladder: ladderOf(all) };
}

const ladderOf = (lots: readonly StandingLot[]): readonly LadderLot[] =>
  lots
    .map(({ lot, used, lost }) => ({
      lot: lot.id,
      received: lot.received,
      expires: lot.expires,
      value: lot.value,
      quantity: lot.quantity,
      used,
      lost,
      order: lot.order,
    }))
    .sort((a, b) => byDrawOrder({ ...a, id: a.lot }, { ...b, id: b.lot }));
