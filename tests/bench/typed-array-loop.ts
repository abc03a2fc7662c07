/**
 * The projection as a plain loop over typed arrays, day by day and material by material: what a machine needs for the
 * bare arithmetic, to hold `plan` against. It knows balances alone: no costs, no judged runs, no lots by name, no events.
 */
import { type Day, daysBetween } from "@/lib/domain/calendar";
import { byDrawOrder } from "@/lib/domain/lots";
import { preparedFor } from "@/lib/domain/plan";
import type { Workshop } from "@/lib/domain/workshop";

const NEVER = 1e9;

export interface LoopInput {
  readonly days: number;
  /** Where the lots of each material begin in the lists of lots; one longer than there are materials. */
  readonly firstLot: Int32Array;
  /** In draw order within a material: the day that each comes in and its last day of use, counted from today. */
  readonly comesIn: Float64Array;
  readonly lastUse: Float64Array;
  readonly quantity: Float64Array;
  /** What the runs of a day need, by material and day. */
  readonly need: Float64Array;
}

/** Lays a workshop out in typed arrays; not part of what is timed. */
export function loopInput(workshop: Workshop, today: Day): LoopInput {
  const days = workshop.settings.horizonDays + 1;
  const { stock, runs } = preparedFor(workshop, today);
  const lots = workshop.materials.map(({ id }) =>
    [
      ...(stock.lotsByMaterial.get(id) ?? []).map((lot) => ({ lot, comesIn: 0 })),
      ...(stock.arrivalsByMaterial.get(id) ?? []).map(({ lot, day }) => ({ lot, comesIn: daysBetween(today, day) })),
    ].sort((a, b) => byDrawOrder(a.lot, b.lot)),
  );
  const all = lots.flat();
  const need = new Float64Array(workshop.materials.length * days);
  const rowOf = new Map(workshop.materials.map(({ id }, index) => [id, index]));
  for (const { day, asks } of runs) {
    const column = daysBetween(today, day);
    if (column >= days) continue;
    for (const { use, need: asked } of asks) {
      const cell = (rowOf.get(use.material.id) ?? 0) * days + column;
      need[cell] = (need[cell] ?? 0) + Number(asked);
    }
  }
  return {
    days,
    firstLot: Int32Array.from([0, ...lots.map((_, index) => lots.slice(0, index + 1).flat().length)]),
    comesIn: Float64Array.from(all, ({ comesIn }) => comesIn),
    lastUse: Float64Array.from(all, ({ lot }) => (lot.expires === null ? NEVER : daysBetween(today, lot.expires))),
    quantity: Float64Array.from(all, ({ lot }) => Number(lot.quantity)),
    need,
  };
}

/** The balance of every material at the end of every day. */
export function projectByLoop({ days, firstLot, comesIn, lastUse, quantity, need }: LoopInput): Float64Array {
  const left = quantity.slice();
  const balance = new Float64Array(need.length);
  const at = (list: Float64Array | Int32Array, index: number): number => list[index] ?? 0;
  for (let material = 0; material < firstLot.length - 1; material += 1) {
    const [first, end] = [at(firstLot, material), at(firstLot, material + 1)];
    let owed = 0;
    for (let day = 0; day < days; day += 1) {
      owed += at(need, material * days + day);
      let holds = 0;
      for (let lot = first; lot < end; lot += 1) {
        if (at(comesIn, lot) > day) continue;
        if (at(lastUse, lot) < day) left[lot] = 0;
        const drawn = Math.min(at(left, lot), owed);
        left[lot] = at(left, lot) - drawn;
        owed -= drawn;
        holds += at(left, lot);
      }
      balance[material * days + day] = holds - owed;
    }
  }
  return balance;
}
