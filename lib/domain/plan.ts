import { projectAhead } from "./ahead-projection";
import { type Arrival, arrivalsOf, deliveryFrom } from "./arrivals";
import { type Day, daysAfter, later } from "./calendar";
import { byCodePoint } from "./code-point-order";
import { costOf } from "./costing";
import { asksOf, judgeRuns, type RunToJudge, type StockToCome } from "./feasibility";
import { asksOfBatch, type InBatches, NOTHING_IN_BATCHES } from "./bench/in-batches";
import { compositions } from "./formula";
import { byId, grouped } from "./index-by-id";
import { asShelfLot } from "./lots";
import { aheadBook, type AheadBook, type OpenedProduct } from "./made-ahead";
import { usesOf } from "./needs";
import { outlookOf } from "./outlook";
import type { MaterialOutlook, Plan } from "./plan-figures";
import { priceBook } from "./prices";
import { type Draw, project, type Projection } from "./projection";
import type { Run, Workshop } from "./workshop";

/**
 * The whole plan of a workshop: what each product costs, which runs can be made, and what becomes of every material.
 * Everything is indexed once; each run, lot and arrival is then touched once, on the days on which something happens.
 * @param today  the day to plan from: the workshop's own where it is set, else the real date, which the caller knows
 * @param prepared  of the same workshop and day, where the caller has it
 * @param near  of a workshop that differs in its runs alone, on the same day: what they do not touch is as it was there
 * @returns products, runs and materials in the workshop's order
 */
export function plan(
  workshop: Workshop,
  today: Day,
  prepared: Prepared = preparedFor(workshop, today),
  near: NearPlan | null = null,
): Plan {
  const { settings } = workshop;
  const { stock, runs, deliveryOf, ahead } = prepared;
  const lastDay = daysAfter(today, settings.horizonDays);
  const frame = { today, lastDay, coverDays: settings.coverDays ?? settings.horizonDays };

  const offersByMaterial = grouped(workshop.offers, (offer) => offer.material);
  const lotsAndArrivals = (id: string) =>
    [stock.lotsByMaterial.get(id) ?? [], stock.arrivalsByMaterial.get(id) ?? []] as const;
  const projectOf = (id: string, draws: readonly Draw[]) => project(...lotsAndArrivals(id), draws, today, lastDay);
  const within = runs.filter(({ day }) => day <= lastDay);
  const { projections, draws } =
    ahead === null ? { projections: NONE, draws: drawsOn(within) } : projectAhead(within, ahead.premixes, projectOf);
  const outlookByRun = new Map(judgeRuns(runs, stock).map((outlook) => [outlook.run, outlook]));
  const asBefore = near === null ? NONE_AS_BEFORE : untouched(near, draws, lastDay);
  return {
    today,
    lastDay,
    costs: near?.plan.costs ?? costsOf(workshop, today, prepared, offersByMaterial),
    runs: workshop.runs.flatMap((run) => outlookByRun.get(run) ?? []),
    materials: workshop.materials.map((material) => {
      const known = asBefore.get(material.id);
      if (known !== undefined) return known;
      const projection = projections.get(material.id) ?? projectOf(material.id, draws.get(material.id) ?? []);
      return outlookOf(
        material,
        lotsAndArrivals(material.id)[0],
        projection,
        offersByMaterial.get(material.id) ?? [],
        deliveryOf,
        frame,
      );
    }),
  };
}

const NONE: ReadonlyMap<string, Projection> = new Map();
const NONE_AS_BEFORE: ReadonlyMap<string, MaterialOutlook> = new Map();

/** The plan of a workshop, and what it was judged from. */
export interface NearPlan {
  readonly plan: Plan;
  readonly prepared: Prepared;
}

/** The materials on which the very same runs draw the same on the same days: their outlooks are as they were. */
function untouched(
  near: NearPlan,
  draws: ReadonlyMap<string, readonly Draw[]>,
  lastDay: Day,
): ReadonlyMap<string, MaterialOutlook> {
  // Where premixes are made ahead, what is drawn follows from what all runs before have left.
  if (near.prepared.ahead !== null) return NONE_AS_BEFORE;
  const before = drawsOn(near.prepared.runs.filter(({ day }) => day <= lastDay));
  return new Map(
    near.plan.materials
      .filter(({ material: { id } }) => drawAlike(before.get(id) ?? [], draws.get(id) ?? []))
      .map((outlook) => [outlook.material.id, outlook]),
  );
}

const drawAlike = (some: readonly Draw[], others: readonly Draw[]): boolean =>
  some.length === others.length &&
  some.every(({ run, day, need }, at) => {
    const other = others[at];
    return other?.run === run && other.day === day && other.need === need;
  });

function costsOf(
  { settings, materials, lots, products }: Workshop,
  today: Day,
  { usesByProduct, openedByProduct }: Prepared,
  offersByMaterial: ReadonlyMap<string, Workshop["offers"]>,
): Plan["costs"] {
  const lotsByMaterial = grouped(lots, (lot) => lot.material);
  const books = new Map(
    materials.map(({ id }) => [id, priceBook(offersByMaterial.get(id) ?? [], lotsByMaterial.get(id) ?? [], today)]),
  );
  const bookOf = (id: string) => books.get(id) ?? { replacement: null, average: null, usableLots: [] };
  return products.map((product) =>
    costOf(product, usesByProduct.get(product.id) ?? [], bookOf, settings, openedByProduct.get(product.id)),
  );
}

/** A workshop indexed for judging runs: shelves and arrivals by material, runs in the order in which they draw. */
export interface Prepared {
  readonly stock: StockToCome;
  readonly runs: readonly RunToJudge[];
  /** As if no premix were made ahead. */
  readonly usesByProduct: ReadonlyMap<string, ReturnType<typeof usesOf>>;
  /** Null where no premix is made ahead. */
  readonly ahead: AheadBook | null;
  /** Of each product that holds premixes made ahead. */
  readonly openedByProduct: ReadonlyMap<string, OpenedProduct>;
  readonly deliveryOf: (supplierId: string) => ReturnType<typeof deliveryFrom>;
}

/**
 * Indexes a workshop once.
 * @param inBatches  of runs that are at the bench: they ask for what was not weighed yet
 * @param near  of a workshop that differs in its runs alone, on the same day: all but the runs is indexed already
 * @rule NEED-2, PLAN-2, PLAN-4, BENCH-6
 */
export function preparedFor(
  workshop: Workshop,
  today: Day,
  inBatches: InBatches = NOTHING_IN_BATCHES,
  near: Prepared | null = null,
): Prepared {
  const shelf = near ?? shelfOf(workshop, today);
  return { ...shelf, runs: runsToJudge(workshop, shelf, today, inBatches) };
}

function runsToJudge(
  { runs, products, materials }: Workshop,
  { usesByProduct, openedByProduct }: Omit<Prepared, "runs">,
  today: Day,
  inBatches: InBatches,
): readonly RunToJudge[] {
  const productOf = byId("product", products);
  const materialOf = byId("material", materials);
  return inTurn(runs).map((run) => {
    const uses = openedByProduct.get(run.product)?.atMost.uses ?? usesByProduct.get(run.product) ?? [];
    const batch = inBatches.get(run.id);
    const product = productOf(run.product);
    return {
      run,
      product,
      day: later(run.date, today),
      asks: batch ? asksOfBatch(batch, product, uses, materialOf) : asksOf(uses, run.units),
      // What is made ahead was decided on when the batch was started.
      opened: batch ? null : (openedByProduct.get(run.product) ?? null),
    };
  });
}

/** All but the runs. */
function shelfOf(workshop: Workshop, today: Day): Omit<Prepared, "runs"> {
  const materialOf = byId("material", workshop.materials);
  const compositionOf = compositions(workshop.formulas);
  const deliveries = workshop.suppliers.map((supplier) => ({
    id: supplier.id,
    delivery: deliveryFrom(supplier, workshop.settings.closedDays),
  }));
  const found = byId("supplier", deliveries);
  const deliveryOf = (id: string) => found(id).delivery;
  const usesByProduct = new Map(
    workshop.products.map((product) => [product.id, usesOf(product, compositionOf(product.formula), materialOf)]),
  );
  const ahead = aheadBook(workshop);
  const openedByProduct = new Map(
    ahead === null
      ? []
      : workshop.products.flatMap((product): readonly (readonly [string, OpenedProduct])[] => {
          const opened = ahead.openedOf(product);
          return opened === null ? [] : [[product.id, opened]];
        }),
  );
  const arrivals: readonly Arrival[] = [...arrivalsOf(workshop.orders, deliveryOf, today)].sort(
    (a, b) => a.day - b.day,
  );
  const lots = workshop.lots.map((lot) => ({ material: lot.material, lot: asShelfLot(lot) }));
  const lotsByMaterial = new Map(
    [...grouped(lots, ({ material }) => material)].map(([id, group]) => [id, group.map(({ lot }) => lot)]),
  );
  const stock = { lotsByMaterial, arrivalsByMaterial: grouped(arrivals, ({ material }) => material) };
  return { stock, usesByProduct, deliveryOf, ahead, openedByProduct };
}

/** Runs in the order in which they draw. @rule PLAN-4 */
export const inTurn = (runs: readonly Run[]): readonly Run[] =>
  runs.toSorted((a, b) => a.date - b.date || a.sequence - b.sequence || byCodePoint(a.id, b.id));

/** What runs need, by material, in their order. */
function drawsOn(runs: readonly RunToJudge[]): ReadonlyMap<string, readonly Draw[]> {
  const draws = runs.flatMap(({ run, day, asks }) =>
    asks.map(({ use, need }) => ({ material: use.material.id, day, run, need })),
  );
  return grouped(draws, ({ material }) => material);
}
