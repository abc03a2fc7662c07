/**
 * Closing a planned run as made, until batches are recorded weighing by weighing: the run leaves the plan, what it
 * needed leaves the shelf, and what was filled stands as a finished lot.
 * @rule CLOSE-1 to CLOSE-5
 */
import { aheadAsks } from "./ahead-needs";
import type { Day } from "./calendar";
import type { Books, ClosedRun } from "./desk";
import { compositions } from "./formula";
import { ratio, roundedHalfEven } from "./fraction";
import { byId, grouped } from "./index-by-id";
import { byDrawOrder, isUsable } from "./lots";
import { aheadBook } from "./made-ahead";
import { type MicroUnits, totalMoney } from "./money";
import { roundedUpFor, usesOf } from "./needs";
import type { RunDraw, RunShortage } from "./plan-figures";
import { quantity, smaller, type Stock, type Units } from "./quantity";
import { isTaken, withOutput } from "./run-output";
import type { FinishedLot, Lot, Material, Product, Run, Workshop } from "./workshop";

/** What the maker says of a run that was made. */
export interface MadeRun {
  readonly run: string;
  /** The day on which it counts as made, and whose shelf it draws on. */
  readonly today: Day;
  /** What was filled: it may be more or less than was planned, and nothing where the batch failed. */
  readonly unitsMade: Units;
  readonly finishedLot: Pick<FinishedLot, "id" | "bestBefore">;
  /** Whether to go on where the shelf, as it is written down, could not have given what the run took. */
  readonly ifShort: "refuse" | "draw what is there";
}

export type MadeRunResult =
  | {
      readonly kind: "made";
      readonly books: Books;
      /** What it asks of each material, by id. */
      readonly asked: readonly MaterialAsked[];
      /** By material id and then in the draw order. */
      readonly draws: readonly LotDraw[];
      /** Of all that was drawn. */
      readonly value: MicroUnits;
    }
  /** Each material whose least is not there, by id; nothing is changed. */
  | { readonly kind: "short"; readonly short: readonly RunShortage[] }
  | { readonly kind: "already made"; readonly closed: ClosedRun }
  | { readonly kind: "no such run" }
  | { readonly kind: "finished lot exists" };

/** What a run took from one lot, and the value that went with it. */
export interface LotDraw {
  /** As it was before. */
  readonly lot: Lot;
  readonly quantity: Stock;
  readonly value: MicroUnits;
}

/**
 * Closes a run as made.
 * @returns the books with the run taken out of the plan, its draws taken from the lots and its units finished; or why
 *          not, and then nothing is changed
 * @rule CLOSE-1 to CLOSE-5
 */
export function closeAsMade(books: Books, made: MadeRun): MadeRunResult {
  const { workshop, desk } = books;
  const run = workshop.runs.find(({ id }) => id === made.run);
  if (!run) {
    const closed = desk.closedRuns.find((each) => each.run.id === made.run);
    return closed ? { kind: "already made", closed } : { kind: "no such run" };
  }
  const product = byId("product", workshop.products)(run.product);
  if (isTaken(workshop, product, made.finishedLot.id)) return { kind: "finished lot exists" };

  const asked = askedOf(workshop, run, made.today);
  const short = asked
    .filter(({ there, least }) => there < least)
    .map(({ material, there, least }) => ({ material, by: quantity<Stock>(least - there) }));
  if (short.length > 0 && made.ifShort === "refuse") return { kind: "short", short };

  const draws = asked.flatMap(({ lots, need }) => drawsFrom(lots, need));
  return {
    kind: "made",
    books: { workshop: afterwards(workshop, run, made, draws), desk: withClosed(books, run, made) },
    asked,
    draws,
    value: totalMoney(draws.map(({ value }) => value)),
  };
}

/** What the run would draw on a day: its need by LOT-1, as far as it is there. @rule CLOSE-2, CLOSE-3 */
export const drawsFor = (workshop: Workshop, run: Run, day: Day): readonly LotDraw[] =>
  askedOf(workshop, run, day).flatMap(({ lots, need }) => drawsFrom(lots, need));

/** What a run asks of a material and what the shelf has of it. */
export interface MaterialAsked extends Pick<RunDraw, "material" | "need" | "least" | "there" | "insteadOf"> {
  /** Usable on the day, in draw order, those that came after it last. */
  readonly lots: readonly Lot[];
}

/** What the run asks of each material and what the shelf has of it, by material id. @rule NEED-3, LOT-1, AHEAD-4 */
function askedOf(workshop: Workshop, run: Run, today: Day): readonly MaterialAsked[] {
  const product = byId("product", workshop.products)(run.product);
  const usable = grouped(
    workshop.lots.filter((lot) => isUsable(lot, today)),
    (lot) => lot.material,
  );
  const lotsOf = ({ id }: Material): readonly Lot[] => (usable.get(id) ?? []).toSorted(hereFirst(today));
  const thereOf = (material: Material): Stock =>
    quantity<Stock>(lotsOf(material).reduce((held, { remaining }) => held + remaining, 0n));
  return asksFor(workshop, product, run, thereOf).map((ask) => ({
    ...ask,
    lots: lotsOf(ask.material),
    there: thereOf(ask.material),
  }));
}

/** What came after the day is asked for only where the rest is not enough: the ledger then says that it was not there. */
const hereFirst =
  (day: Day) =>
  (a: Lot, b: Lot): number =>
    Number(a.received > day) - Number(b.received > day) || byDrawOrder(a, b);

function asksFor(workshop: Workshop, product: Product, run: Run, thereOf: (material: Material) => Stock) {
  const opened = aheadBook(workshop)?.openedOf(product) ?? null;
  if (opened !== null) return aheadAsks(opened, run.units, thereOf);
  const composition = compositions(workshop.formulas)(product.formula);
  return usesOf(product, composition, byId("material", workshop.materials)).map(({ material, need, least }) => ({
    material,
    need: roundedUpFor(need, run.units),
    least: roundedUpFor(least, run.units),
    insteadOf: null,
  }));
}

/** Takes `wanted` from lots in their order, as far as they go. @rule CLOSE-2, CLOSE-3 */
function drawsFrom(lots: readonly Lot[], wanted: Stock): readonly LotDraw[] {
  const draws: LotDraw[] = [];
  let open = wanted;
  for (const lot of lots) {
    if (open === 0n) break;
    const drawn = smaller(open, lot.remaining);
    if (drawn === 0n) continue;
    draws.push({ lot, quantity: drawn, value: valueOf(lot, drawn) });
    open = quantity<Stock>(open - drawn);
  }
  return draws;
}

/** All of a lot takes all of its value, whatever the rounding: the fraction is then the value itself. @rule CLOSE-3 */
const valueOf = (lot: Lot, drawn: Stock): MicroUnits =>
  quantity<MicroUnits>(roundedHalfEven(ratio(lot.value * drawn, lot.remaining)));

/** The workshop without the run, its draws and with its units. @rule CLOSE-1, CLOSE-4 */
function afterwards(workshop: Workshop, run: Run, made: MadeRun, draws: readonly LotDraw[]): Workshop {
  const drawOf = new Map(draws.map((draw) => [draw.lot, draw]));
  const without = {
    ...workshop,
    lots: workshop.lots.map((lot) => {
      const draw = drawOf.get(lot);
      if (!draw) return lot;
      return {
        ...lot,
        remaining: quantity<Stock>(lot.remaining - draw.quantity),
        value: quantity<MicroUnits>(lot.value - draw.value),
      };
    }),
    runs: workshop.runs.filter((each) => each !== run),
  };
  return withOutput(without, {
    product: byId("product", workshop.products)(run.product),
    lot: made.finishedLot,
    made: made.today,
    units: made.unitsMade,
    value: totalMoney(draws.map(({ value }) => value)),
  });
}

const withClosed = ({ desk }: Books, run: Run, made: MadeRun): Books["desk"] => ({
  ...desk,
  closedRuns: [...desk.closedRuns, { run, madeOn: made.today, unitsMade: made.unitsMade, versions: [] }],
});
