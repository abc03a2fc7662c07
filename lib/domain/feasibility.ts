/** Can it be made, and what can be made, with what is in the house. @rule MAKE-1 to MAKE-3 */
import { aheadAsks, mostAhead } from "./ahead-needs";
import type { Arrival } from "./arrivals";
import type { Day } from "./calendar";
import { putOnShelf, type ShelfLot, type StandingShelf, standingShelf, takeFromShelf, writeOff } from "./lots";
import type { OpenedProduct } from "./made-ahead";
import { exactFor, type MaterialUse, roundedUpFor } from "./needs";
import type { RunDraw, RunOutlook } from "./plan-figures";
import { quantity, type Stock, type Units } from "./quantity";
import { roundedDown } from "./fraction";
import type { Material, Product, Run } from "./workshop";

/** A run with what it draws, ready to be judged. */
export interface RunToJudge {
  readonly run: Run;
  readonly product: Product;
  /** Its date, or today where that has passed. */
  readonly day: Day;
  /** By material id. Worked out once: a run is judged many times where days are tried out. */
  readonly asks: readonly RunAsk[];
  /** Where its formula holds premixes made ahead, so that the shelf decides what it asks; `asks` is then the most. */
  readonly opened: OpenedProduct | null;
}

/** What a run asks of one material. */
export interface RunAsk {
  readonly use: MaterialUse;
  readonly need: Stock;
  readonly least: Stock;
  /** What stands in the run's batch of it already, where that is open. @rule BENCH-6 */
  readonly inBatch?: Stock;
}

/** What so many units ask of each material that the product uses. @rule NEED-3, NEED-4 */
export const asksOf = (uses: readonly MaterialUse[], units: Units): readonly RunAsk[] =>
  uses.map((use) => ({ use, need: roundedUpFor(use.need, units), least: roundedUpFor(use.least, units) }));

/** What is here and what comes in, by material id; arrivals by day. */
export interface StockToCome {
  readonly lotsByMaterial: ReadonlyMap<string, readonly ShelfLot[]>;
  readonly arrivalsByMaterial: ReadonlyMap<string, readonly Arrival[]>;
}

/**
 * Judges runs one after another against the same shelf, all or nothing: a run that lacks any of its least draws
 * nothing, so that a later one may still be made.
 * @param runs    in the order in which they draw (date, sequence, id)
 * @param before  is shown the shelves at the turn of each run, before it draws
 * @returns an outlook for each, in that order
 * @rule MAKE-1, MAKE-2, MAKE-3
 */
export function judgeRuns(
  runs: readonly RunToJudge[],
  stock: StockToCome,
  before: (run: RunToJudge, shelfFor: ShelfFor) => void = () => undefined,
): readonly RunOutlook[] {
  const shelfFor = shelvesInTime(stock);
  return runs.map((run) => {
    const shelfOn: ShelfFor = (material) => shelfFor(material, run.day);
    before(run, shelfOn);
    return judge(run, shelfOn);
  });
}

/** Whether each of these runs can be made, in their order: the same judgement without its figures. @rule MAKE-1 */
export function madeInTurn(runs: readonly RunToJudge[], stock: StockToCome): readonly boolean[] {
  const shelfFor = shelvesInTime(stock);
  return runs.map(({ run, day, asks, opened }) => {
    const shelfOn: ShelfFor = (material) => shelfFor(material, day);
    return drawnOf(opened === null ? standingFor(asks, shelfOn) : standingAhead(opened, run.units, shelfOn)).makeable;
  });
}

/** The shelf of a material on a day; days are asked for in their order. */
function shelvesInTime(stock: StockToCome): (material: Material, day: Day) => StandingShelf {
  const shelves = new Map<string, ShelfInTime>();
  const shelfOf = (id: string): ShelfInTime => {
    const known = shelves.get(id);
    if (known) return known;
    const shelf = {
      shelf: standingShelf(stock.lotsByMaterial.get(id) ?? []),
      arrivals: stock.arrivalsByMaterial.get(id) ?? [],
      next: 0,
    };
    shelves.set(id, shelf);
    return shelf;
  };
  return (material, day) => shelfOn(shelfOf(material.id), day);
}

/** A material's shelf with the arrivals that have not been let in yet. It changes. */
interface ShelfInTime {
  readonly shelf: StandingShelf;
  readonly arrivals: readonly Arrival[];
  next: number;
}

function shelfOn(inTime: ShelfInTime, day: Day): StandingShelf {
  for (let due = inTime.arrivals[inTime.next]; due && due.day <= day; due = inTime.arrivals[inTime.next]) {
    putOnShelf(inTime.shelf, due.lot);
    inTime.next += 1;
  }
  writeOff(inTime.shelf, day);
  return inTime.shelf;
}

export type ShelfFor = (material: Material) => StandingShelf;

function judge({ run, product, day, asks, opened }: RunToJudge, shelfFor: ShelfFor): RunOutlook {
  if (opened === null) {
    const asked = standingFor(asks, shelfFor);
    return { run, product, day, ...mostOf(asked.map(withBatch)), ...drawnOf(asked) };
  }
  // Before anything is drawn: the most is what the whole shelf allows.
  const most = mostAhead(opened, run.units, (material) => shelfFor(material).holds);
  return { run, product, day, ...most, ...drawnOf(standingAhead(opened, run.units, shelfFor)) };
}

/** What a run asks of a material, its shelf, and what that holds before the run draws. */
interface Standing extends Omit<RunDraw, "drawn"> {
  readonly shelf: StandingShelf;
}

const standingFor = (asks: readonly RunAsk[], shelfFor: ShelfFor) =>
  asks.map(({ use, need, least, inBatch = NONE }) => {
    const shelf = shelfFor(use.material);
    return { use, material: use.material, need, least, shelf, there: shelf.holds, insteadOf: null, inBatch };
  });

const NONE = quantity<Stock>(0n);

/** What a run can be made of is what its batch holds and what the shelf still has. */
const withBatch = <Asked extends { readonly there: Stock; readonly inBatch: Stock }>(asked: Asked): Asked => ({
  ...asked,
  there: quantity<Stock>(asked.there + asked.inBatch),
});

/** @rule AHEAD-4 */
const standingAhead = (opened: OpenedProduct, units: Units, shelfFor: ShelfFor): readonly Standing[] =>
  aheadAsks(opened, units, (material) => shelfFor(material).holds).map((ask) => {
    const shelf = shelfFor(ask.material);
    return { ...ask, shelf, there: shelf.holds };
  });

/** What the run draws: all or nothing. @rule MAKE-1, MAKE-2 */
function drawnOf(asked: readonly Standing[]): Pick<RunOutlook, "makeable" | "short" | "draws"> {
  const short = asked
    .filter(({ there, least }) => there < least)
    .map(({ material, there, least }) => ({ material, by: quantity<Stock>(least - there) }));
  const makeable = short.length === 0;
  const draws = asked.map(({ material, shelf, there, need, least, insteadOf }): RunDraw => ({
    material,
    need,
    least,
    there,
    drawn: makeable ? takeFromShelf(shelf, need) : quantity<Stock>(0n),
    insteadOf,
  }));
  return { makeable, short, draws };
}

/**
 * The most units whose least is there. Materials come by id, so the first of equals is the lower.
 * @rule MAKE-3
 */
export function mostOf(asked: readonly { readonly use: MaterialUse; readonly there: Stock }[]): {
  readonly mostUnits: Units;
  readonly limiting: Material;
} {
  let most: { readonly mostUnits: Units; readonly limiting: Material } | null = null;
  for (const { use, there } of asked) {
    const allowed = unitsAllowed(use, there);
    if (allowed !== null && (most === null || allowed < most.mostUnits)) {
      most = { mostUnits: allowed, limiting: use.material };
    }
  }
  if (!most) throw new Error("a product whose formula has no line: the edge should have refused it");
  return most;
}

/** How many units of the product the material allows, or null where it sets no limit. */
function unitsAllowed({ least }: MaterialUse, there: Stock): Units | null {
  const fixed = exactFor(least, quantity<Units>(0n));
  const forUnits = there * fixed.under - fixed.over;
  if (forUnits < 0n) return quantity<Units>(0n);
  if (least.perUnit === 0n) return null;
  return quantity<Units>(roundedDown({ over: forUnits, under: least.perUnit }));
}
