/** Which runs use a lot, and how much each: the projection of a material opened lot by lot. @rule PLAN-10 */
import type { Day } from "./calendar";
import type { ShelfLot } from "./lots";
import { drawnFrom, type LotDrawn } from "./lots-drawn";
import type { LadderLot, MaterialOutlook } from "./plan-figures";
import { quantity, smaller, type Stock } from "./quantity";
import type { Run } from "./workshop";

export interface LotUse {
  readonly run: Run;
  readonly day: Day;
  readonly taken: Stock;
  /** The day since which it was owed, where the run took it only once more had come in; else null. */
  readonly owedSince: Day | null;
}

/** A lot, what each run takes of it in turn, what goes out of date, and what is left at the plan's end. */
export interface UsedLot {
  readonly lot: LadderLot;
  readonly uses: readonly LotUse[];
  readonly left: Stock;
}

interface Owing {
  readonly run: Run;
  readonly day: Day;
  open: bigint;
}

/**
 * The events of the projection once more, each drawn from the lots that stand.
 * @returns every lot of the ladder, in its order
 * @rule PLAN-10, LOT-1
 */
export function usedLots({ ladder, events }: Pick<MaterialOutlook, "ladder" | "events">): readonly UsedLot[] {
  const standing = new Map(ladder.filter(({ order }) => order === null).map((lot) => [lot.lot, thereOf(lot)]));
  const uses = new Map(ladder.map(({ lot }) => [lot, [] as LotUse[]]));
  const owing: Owing[] = [];

  const take = (run: Run, day: Day, wanted: bigint, owedSince: Day | null) => {
    for (const { lot, there, taken } of drawnFrom([...standing.values()], quantity<Stock>(wanted))) {
      if (taken === 0n) continue;
      standing.set(lot.id, { lot, there: quantity<Stock>(there - taken) });
      uses.get(lot.id)?.push({ run, day, taken, owedSince });
    }
  };

  const settle = (day: Day, settled: bigint) => {
    let open = settled;
    for (const owed of owing) {
      const part = smaller<bigint>(owed.open, open);
      if (part > 0n) take(owed.run, day, part, owed.day);
      owed.open -= part;
      open -= part;
    }
  };

  for (const event of events) {
    switch (event.kind) {
      case "written off":
        standing.delete(event.lot);
        break;
      case "arrived":
        for (const lot of ladder) if (lot.lot === event.lot) standing.set(lot.lot, thereOf(lot));
        break;
      case "settled":
        settle(event.day, event.quantity);
        break;
      case "drawn":
        take(event.run, event.day, event.need - event.lacking, null);
        owing.push({ run: event.run, day: event.day, open: event.lacking });
        break;
    }
  }
  return ladder.map((lot) => ({
    lot,
    uses: uses.get(lot.lot) ?? [],
    left: standing.get(lot.lot)?.there ?? quantity<Stock>(0n),
  }));
}

const thereOf = (lot: LadderLot): Pick<LotDrawn, "lot" | "there"> => ({ lot: asShelf(lot), there: lot.quantity });

const asShelf = ({ lot, received, expires, quantity: held, value, order }: LadderLot): ShelfLot => ({
  id: lot,
  received,
  expires,
  quantity: held,
  value,
  order,
});
