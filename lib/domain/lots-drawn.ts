/** Which lots a run draws, and how much of each; and what the most that could be made would take of them. @rule LOT-1, MAKE-3 */
import { aheadAsks } from "./ahead-needs";
import { judgeRuns, type RunToJudge, type StockToCome } from "./feasibility";
import { byDrawOrder, type ShelfLot, type StandingShelf } from "./lots";
import { type Growing, type MaterialUse, roundedUpFor } from "./needs";
import type { OpenedProduct } from "./made-ahead";
import type { RunOutlook } from "./plan-figures";
import { quantity, smaller, type Stock, type Units } from "./quantity";
import type { Material, Product, Run } from "./workshop";

/** A lot, what there is of it, and what is taken of that. */
export interface LotDrawn {
  readonly lot: ShelfLot;
  readonly there: Stock;
  readonly taken: Stock;
}

type LotThere = Pick<LotDrawn, "lot" | "there">;

/**
 * So much, drawn from lots that may be used.
 * @returns every lot in draw order, those of which nothing is taken as well
 * @rule LOT-1
 */
export function drawnFrom(lots: readonly LotThere[], wanted: Stock): readonly LotDrawn[] {
  let open: bigint = wanted;
  return lots
    .toSorted((a, b) => byDrawOrder(a.lot, b.lot))
    .map(({ lot, there }) => {
      const taken = quantity<Stock>(smaller<bigint>(there, open));
      open -= taken;
      return { lot, there, taken };
    });
}

/** The most units that there is enough for, down to the lots of what sets that limit. */
export interface MostWorking {
  readonly mostUnits: Units;
  readonly limiting: Material;
  /** Its lots, with what the most units take of each at the least. */
  readonly lots: readonly LotDrawn[];
  /** What its lots hold together. */
  readonly there: Stock;
  /** What stands of it in the run's own batch already. */
  readonly inBatch: Stock;
  /** What the product takes of it at least; null where that depends on what is made ahead, and was found by trying. */
  readonly least: Growing | null;
  /** What the most units take of it at least, and what one unit more would. */
  readonly takes: Stock;
  readonly oneMoreTakes: Stock;
}

/** What the figures of the most that can be made were worked out from. */
export interface MostAsked {
  readonly product: Product;
  readonly mostUnits: Units;
  readonly limiting: Material;
  readonly opened: OpenedProduct | null;
  readonly uses: readonly MaterialUse[];
  readonly lotsOf: (material: Material) => readonly LotThere[];
  readonly inBatch?: Stock;
}

/** @rule MAKE-3, AHEAD-4 */
export function mostWorking({ mostUnits, limiting, opened, uses, lotsOf, inBatch = NONE }: MostAsked): MostWorking {
  const least = opened ? null : (uses.find(({ material }) => material === limiting)?.least ?? null);
  const leastFor = (units: bigint): Stock => {
    if (least) return roundedUpFor(least, quantity<Units>(units));
    if (!opened) return NONE;
    const asks = aheadAsks(opened, quantity<Units>(units), (material) => held(lotsOf(material)));
    return asks.find(({ material }) => material === limiting)?.least ?? NONE;
  };
  const takes = mostUnits === 0n ? NONE : leastFor(mostUnits);
  const fromLots = quantity<Stock>(takes > inBatch ? takes - inBatch : 0n);
  const lots = lotsOf(limiting);
  return {
    mostUnits,
    limiting,
    lots: drawnFrom(lots, fromLots),
    there: held(lots),
    inBatch,
    least,
    takes,
    oneMoreTakes: leastFor(mostUnits + 1n),
  };
}

const NONE = quantity<Stock>(0n);
const held = (lots: readonly LotThere[]): Stock => quantity<Stock>(lots.reduce((all, { there }) => all + there, 0n));

/** The lots of a run at its turn. */
export interface LotsOfRun {
  /** Of each material that it draws, by id, with what it takes of each lot. */
  readonly drawn: ReadonlyMap<string, readonly LotDrawn[]>;
  readonly most: MostWorking;
}

/**
 * The lots that stand for these runs at their turns, and what they take of each. Every run up to the last of them is
 * judged again, so it is for those that are looked at.
 * @param runs  every run, in the order in which they draw
 * @rule MAKE-1, MAKE-3, LOT-1
 */
export function lotsOfRuns(
  asked: ReadonlySet<Run>,
  runs: readonly RunToJudge[],
  stock: StockToCome,
): ReadonlyMap<Run, LotsOfRun> {
  const last = runs.findLastIndex(({ run }) => asked.has(run));
  const seen = new Map<Run, ReadonlyMap<string, readonly LotThere[]>>();
  const outlooks = judgeRuns(runs.slice(0, last + 1), stock, ({ run, asks }, shelfFor) => {
    if (!asked.has(run)) return;
    seen.set(run, new Map(asks.map(({ use: { material } }) => [material.id, standingIn(shelfFor(material))])));
  });
  return new Map(
    outlooks.flatMap((outlook, at) => {
      const [toJudge, lots] = [runs[at], seen.get(outlook.run)];
      return toJudge && lots ? [[outlook.run, lotsOfRun(outlook, toJudge, lots)] as const] : [];
    }),
  );
}

const standingIn = ({ standing }: StandingShelf): readonly LotThere[] =>
  standing.map(({ lot, left }) => ({ lot, there: left })).filter(({ there }) => there > 0n);

function lotsOfRun(
  { product, mostUnits, limiting, draws }: RunOutlook,
  { asks, opened }: RunToJudge,
  lots: ReadonlyMap<string, readonly LotThere[]>,
): LotsOfRun {
  const lotsOf = ({ id }: Material) => lots.get(id) ?? [];
  const inBatch = asks.find(({ use }) => use.material === limiting)?.inBatch ?? NONE;
  const uses = asks.map(({ use }) => use);
  return {
    drawn: new Map(draws.map(({ material, drawn }) => [material.id, drawnFrom(lotsOf(material), drawn)])),
    most: mostWorking({ product, mostUnits, limiting, opened, uses, lotsOf, inBatch }),
  };
}
