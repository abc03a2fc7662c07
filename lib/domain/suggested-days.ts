/**
 * The days on which a run that cannot be made could be made after all, each planned through before it is offered.
 * @rule SUGGEST-1 to SUGGEST-4
 */
import type { Arrival } from "./arrivals";
import { type BenchMinutes, benchDays, minutesOfRun, minutesThere } from "./bench-hours";
import { type Day, daysAfter, earlier, later, weekday } from "./calendar";
import { madeInTurn, type RunToJudge, type StockToCome } from "./feasibility";
import { compare, minus, whole } from "./fraction";
import { premixesHolding } from "./made-ahead";
import type { Prepared } from "./plan";
import type { Plan, RunOutlook } from "./plan-figures";
import type { Material, Run, Workshop } from "./workshop";

export interface SuggestedDay {
  readonly day: Day;
  /** Puts the run last on that day, so that it takes nothing from the day's other runs. */
  readonly sequence: number;
  /** The orders without which it, or a run before it, could not be made then, earliest arrival first. @rule SUGGEST-3 */
  readonly dependsOn: readonly OrderAwaited[];
}

export interface OrderAwaited {
  readonly order: string;
  readonly day: Day;
}

export interface SuggestedDays {
  /** Earliest first. */
  readonly days: readonly SuggestedDay[];
  /** Whether there were more days that might do, and that were not tried. */
  readonly more: boolean;
}

/** A workshop as it is planned, and what is known of the maker's hours. */
export interface Planned {
  readonly workshop: Workshop;
  readonly prepared: Prepared;
  readonly plan: Plan;
  /** Null where the maker has not said. */
  readonly benchMinutes: BenchMinutes | null;
}

/** Days that are planned through for one run at most, and orders that are tried out for one of them. @rule SUGGEST-4 */
const MOST_DAYS_TRIED = 12;
const MOST_ORDERS_TRIED = 60;
/** Days with room that are tried from each arrival on. @rule SUGGEST-2 */
const DAYS_FROM_AN_ARRIVAL = 3;
/** The latest place within a day that a workshop can hold. */
const LAST_SEQUENCE = 1_000_000;

/**
 * The earliest later days on which the whole run could be made, and every run that can be made now still could.
 * @param short  the outlook of a run that cannot be made, from the same plan
 * @param most   days to offer at most
 * @rule SUGGEST-1 to SUGGEST-4
 */
export function suggestedDays(short: RunOutlook, planned: Planned, most: number): SuggestedDays {
  const { prepared, plan } = planned;
  const turn = prepared.runs.find(({ run }) => run === short.run);
  if (!turn) throw new Error(`run "${short.run.id}" is not among the runs that were prepared`);
  const others = prepared.runs.filter((each) => each !== turn);
  const mustStay = new Set(plan.runs.filter(({ makeable }) => makeable).map(({ run }) => run));
  const found: SuggestedDay[] = [];
  for (const [tried, day] of daysToTry(short, turn, planned).entries()) {
    if (found.length === most || tried === MOST_DAYS_TRIED) return { days: found, more: true };
    const suggestion = tryDay(day, turn, others, mustStay, prepared.stock);
    if (suggestion) found.push(suggestion);
  }
  return { days: found, more: false };
}

/** Plans the whole workshop through with the run on that day. @rule SUGGEST-1 */
function tryDay(
  day: Day,
  turn: RunToJudge,
  others: readonly RunToJudge[],
  mustStay: ReadonlySet<Run>,
  stock: StockToCome,
): SuggestedDay | null {
  const after = others.findIndex(({ run }) => run.date > day);
  const place = after < 0 ? others.length : after;
  const last = others[place - 1]?.run;
  const sequence = last?.date === day ? last.sequence + 1 : 0;
  if (sequence > LAST_SEQUENCE) return null;
  const moved: RunToJudge = { ...turn, day, run: { ...turn.run, date: day, sequence } };
  const upToIt = [...others.slice(0, place), moved];
  const inTurn = [...upToIt, ...others.slice(place)];
  const made = madeInTurn(inTurn, stock);
  if (made[place] !== true || !inTurn.every(({ run }, at) => made[at] === true || !mustStay.has(run))) return null;
  // A run that is not made draws nothing, and with fewer orders it would be made even less.
  const before = upToIt.filter((_, at) => made[at] === true);
  const stillMade = (without: ReadonlySet<string>) =>
    madeInTurn(before, withoutOrders(stock, without)).every((each) => each);
  return { day, sequence, dependsOn: ordersAwaited(moved, stock, stillMade) };
}

/**
 * The days worth planning through, earliest first: those with room on and just after each day on which one of the
 * run's materials comes in, from the first by which what it is short of can have. Between two such days waiting
 * gains nothing worth a trial: what the others draw is theirs on either day.
 * @rule SUGGEST-2
 */
function daysToTry(short: RunOutlook, turn: RunToJudge, planned: Planned): readonly Day[] {
  const { prepared, plan } = planned;
  const start = firstDayOfEnough(short, turn, prepared.stock);
  if (start === null) return [];
  const arrivals = arrivalsFor(turn, prepared.stock).map(({ day }) => later(day, start));
  const hasRoom = roomFor(turn, planned, start);
  const days = new Set<Day>();
  for (const arrival of new Set([start, ...arrivals])) {
    let left = DAYS_FROM_AN_ARRIVAL;
    for (let day = arrival; day <= plan.lastDay && left > 0; day = daysAfter(day, 1)) {
      if (!hasRoom(day)) continue;
      days.add(day);
      left -= 1;
    }
  }
  return [...days].sort((a, b) => a - b);
}

/**
 * The first day by which as much has come in as the run is short of, or something of a premix made ahead that holds it:
 * of what that saves only planning it through can tell. Null where that is never. @rule SUGGEST-2
 */
function firstDayOfEnough(short: RunOutlook, { opened }: RunToJudge, { arrivalsByMaterial }: StockToCome): Day | null {
  const afterwards = ({ id }: Material): readonly Arrival[] =>
    (arrivalsByMaterial.get(id) ?? []).filter(({ day }) => day > short.day);
  let first = daysAfter(short.day, 1);
  for (const { material, by } of short.short) {
    let open: bigint = by;
    const enough = afterwards(material).find(({ lot }) => {
      open -= lot.quantity;
      return open <= 0n;
    });
    const instead = opened === null ? [] : premixesHolding(opened, material).flatMap((premix) => afterwards(premix));
    const days = [enough, ...instead].flatMap((arrival) => arrival?.day ?? []);
    if (days.length === 0) return null;
    first = later(first, days.reduce(earlier));
  }
  return first;
}

/** Whether the workshop is open and the maker has the minutes, or without her hours that it is a weekday. @rule SUGGEST-2 */
export function roomFor(turn: RunToJudge, { workshop, plan, benchMinutes }: Planned, from: Day): (day: Day) => boolean {
  const closedDays = new Set(workshop.settings.closedDays);
  if (benchMinutes === null) return (day) => weekday(day) <= 5 && !closedDays.has(day);
  const asks = minutesOfRun(turn.product, turn.run.units);
  const leftOn = new Map(benchDays(workshop, benchMinutes, from, plan.lastDay).map(({ day, left }) => [day, left]));
  return (day) => {
    const left = leftOn.get(day) ?? null;
    // A day without hours is no day for a run, even for one that asks for no minutes.
    return (
      minutesThere(benchMinutes, day, closedDays) > 0 && left !== null && compare(minus(left, asks), whole(0n)) >= 0
    );
  };
}

const arrivalsFor = ({ asks }: RunToJudge, { arrivalsByMaterial }: StockToCome): readonly Arrival[] =>
  asks.flatMap(({ use: { material } }) => arrivalsByMaterial.get(material.id) ?? []);

/**
 * The orders that are needed: latest first, each order that brings one of the run's materials is left out where the
 * run, and those before it, could still be made without it. Were those before it not asked about, an order would look
 * idle because without it another run fails and leaves what it would have drawn. Orders are left out many at a time,
 * and half as many where that is too many, so that plenty of them cost little; where that is still too much, the rest
 * are counted as needed.
 * @param stillMade  whether the run and those before it can be made without these orders
 * @rule SUGGEST-3, SUGGEST-4
 */
function ordersAwaited(
  moved: RunToJudge,
  stock: StockToCome,
  stillMade: (without: ReadonlySet<string>) => boolean,
): readonly OrderAwaited[] {
  const dayByOrder = new Map(
    arrivalsFor(moved, stock).flatMap(({ day, lot }) =>
      lot.order !== null && day <= moved.day ? [[lot.order, day]] : [],
    ),
  );
  let open = [...dayByOrder].map(([order, day]) => ({ order, day })).sort((a, b) => b.day - a.day);
  const needed: OrderAwaited[] = [];
  const leftOut = new Set<string>();
  let size = open.length;
  for (let tried = 0; open.length > 0 && tried < MOST_ORDERS_TRIED; tried += 1) {
    const block = open.slice(0, size);
    const without = new Set([...leftOut, ...block.map(({ order }) => order)]);
    const canBeMade = stillMade(without);
    if (!canBeMade && block.length > 1) {
      size = Math.ceil(block.length / 2);
      continue;
    }
    if (canBeMade) without.forEach((order) => leftOut.add(order));
    else needed.push(...block);
    open = open.slice(block.length);
    size = canBeMade ? size : open.length;
  }
  return [...needed, ...open].sort((a, b) => a.day - b.day);
}

const withoutOrders = (
  { lotsByMaterial, arrivalsByMaterial }: StockToCome,
  orders: ReadonlySet<string>,
): StockToCome => ({
  lotsByMaterial,
  arrivalsByMaterial: new Map(
    [...arrivalsByMaterial].map(([material, arrivals]) => [
      material,
      arrivals.filter(({ lot }) => lot.order === null || !orders.has(lot.order)),
    ]),
  ),
});
