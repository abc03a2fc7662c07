/** The shelf of the second implementation, day by day: what lies there, what arrives, what is written off. */
import { byCodePoint, quantity } from "./exact";
import { day, type Diary } from "./days";
import type { FileMaterial, WorkshopFile } from "./file-shape";
import { found } from "./needs";

export interface ShelfLot {
  readonly id: string;
  readonly material: string;
  /** The day it is on the shelf from: its receipt, or the day on which the order is expected. */
  readonly received: number;
  /** Infinity for none. */
  readonly expires: number;
  left: bigint;
}

export const lotsHere = (file: WorkshopFile): ShelfLot[] =>
  file.lots.map((lot) => ({
    id: lot.id,
    material: lot.material,
    received: day(lot.received),
    expires: lot.expires === null || lot.expires === undefined ? Infinity : day(lot.expires),
    left: quantity(lot.remaining, found(file.materials, lot.material).density),
  }));

export function lotsOnOrder(file: WorkshopFile, diary: Diary, today: number): ShelfLot[] {
  return file.orders.flatMap((order) => {
    let expected = day(order.due);
    if (expected <= today) {
      expected = today + 1;
      while (!diary.bothWork(found(file.suppliers, order.supplier), expected)) expected += 1;
    }
    return order.lines.map((line, index) => ({
      id: `${order.id}/${String(index + 1)}`,
      material: line.material,
      received: expected,
      expires: line.expires === null || line.expires === undefined ? Infinity : day(line.expires),
      left: quantity(line.quantity, found(file.materials, line.material).density),
    }));
  });
}

/** The lots of a material that may be used on the day, in draw order. */
export const usable = (lots: readonly ShelfLot[], material: FileMaterial, on: number): ShelfLot[] =>
  lots
    .filter((lot) => lot.material === material.id && lot.received <= on && lot.expires >= on)
    .sort((a, b) =>
      a.expires !== b.expires ? (a.expires < b.expires ? -1 : 1) : a.received - b.received || byCodePoint(a.id, b.id),
    );

export const heldBy = (lots: readonly ShelfLot[]): bigint => lots.reduce((held, lot) => held + lot.left, 0n);

/** Takes as much of `wanted` as is there, lot after lot; gives what was lacking. */
export function take(lots: readonly ShelfLot[], wanted: bigint): bigint {
  let lacking = wanted;
  for (const lot of lots) {
    const taken = lot.left < lacking ? lot.left : lacking;
    lot.left -= taken;
    lacking -= taken;
  }
  return lacking;
}

/** The runs of the file in the order in which they draw. */
export const runsInOrder = (file: WorkshopFile) =>
  file.runs.toSorted(
    (a, b) => day(a.date) - day(b.date) || (a.sequence ?? 0) - (b.sequence ?? 0) || byCodePoint(a.id, b.id),
  );
