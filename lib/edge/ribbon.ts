/**
 * The ribbon of one material as drawing data: what is held and what is lacking, from today to the last day.
 * Across, everything stands in ticks (see ribbon-time); heights are pixels. Quantities become heights by whole-number
 * ratios; no figure is read back from a drawing.
 */
import type { Day } from "@/lib/domain/calendar";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { type BodyHeight, lackCaption, type OrderPin, railCaptions, type RibbonCaption } from "./ribbon-captions";
import { ribbonSentence } from "./ribbon-sentence";
import { spanOf, tickOf, timed, type TimedEvent } from "./ribbon-time";

/** Heights in pixels: the rail that pins hang from, the zone above the waterline, the zone below it. */
export const RIBBON_SIZES = {
  docket: { rail: 15, have: 34, lack: 13 },
  row: { rail: 9, have: 26, lack: 13 },
  slim: { rail: 4, have: 17, lack: 5 },
} as const;

export type RibbonSize = keyof typeof RIBBON_SIZES;

/** More columns than this cannot be told apart on a screen, nor more pins; what falls into one is drawn together. */
const MOST_COLUMNS = 720;
const MOST_PINS = 60;
/** Kept free under the rail, so that a full body does not touch its pins. */
const HEADROOM = 2;
/** A safety line lower than this share of the zone is left out. */
const LOWEST_SAFETY_LINE_PERCENT = 6n;
/** A lack is never drawn shallower than this share of its zone. */
const LEAST_LACK_PERCENT = 45n;

export interface Ribbon {
  /** The material's id. */
  readonly of: string;
  readonly size: RibbonSize;
  readonly span: number;
  readonly height: number;
  readonly waterline: number;
  /** The body's outline and the line along its top, as path data: x in ticks, y in pixels. Empty for nothing held. */
  readonly body: string;
  readonly edge: string;
  /** Height of the safety line, or null where it is left out. */
  readonly safety: number | null;
  /** Each step of what is lacking, with its depth below the waterline. */
  readonly lack: readonly Step[];
  /** What will go out of date unused, while it stands at the foot of the body, with its height above the waterline. */
  readonly waste: readonly Step[];
  readonly losses: readonly number[];
  readonly arrivals: readonly number[];
  readonly order: OrderPin | null;
  readonly captions: readonly RibbonCaption[];
  readonly sentence: string;
}

export interface Step {
  readonly from: number;
  readonly width: number;
  readonly reach: number;
}

/**
 * Draws one material's outlook.
 * @param today    the plan's first day, at the left edge
 * @param lastDay  the plan's last day, at the right edge
 */
export function ribbonOf(outlook: MaterialOutlook, today: Day, lastDay: Day, size: RibbonSize): Ribbon {
  const { rail, have, lack } = RIBBON_SIZES[size];
  const [span, waterline] = [spanOf(today, lastDay), rail + have];
  const events = timed(outlook.events, today);
  const moments = momentsOf(outlook.onHand, events, span);
  const safetyStock: bigint = outlook.material.safetyStock?.quantity ?? 0n;
  // A safety stock above all that is ever held would stand outside the zone; the zone then reaches up to it.
  const top = moments.reduce((most, moment) => larger(most, moment.most), safetyStock);
  const heightOf = (held: bigint): number => pixels(held, top, have - HEADROOM);
  const isLineDrawn = safetyStock > 0n && safetyStock * 100n >= top * LOWEST_SAFETY_LINE_PERCENT;
  const losses = pinsAt(events, "written off", span).filter((tick) => tick > 0);
  const order = orderPin(outlook, today);
  const strip = { span, today, order, losses };
  const railWords = size === "docket" ? railCaptions(outlook, strip) : [];
  const above = { body: bodyHeights(moments, heightOf), have, rail, hasRailWords: railWords.length > 0 };
  return {
    of: outlook.material.id,
    size,
    span,
    height: waterline + lack,
    waterline,
    ...bodyPaths(moments, span, waterline, heightOf),
    safety: isLineDrawn ? waterline - heightOf(safetyStock) : null,
    lack: lackSteps(moments, span, lack),
    waste: wasteSteps(events, span, heightOf),
    losses,
    arrivals: pinsAt(events, "arrived", span),
    order,
    captions: [...(size === "slim" ? [] : lackCaption(outlook, firstLack(moments), strip, above)), ...railWords],
    sentence: ribbonSentence(outlook, today, lastDay),
  };
}

/** All that happens in one column: what stands after it, and the extremes that it passed through. */
interface Moment {
  readonly tick: number;
  readonly shelf: bigint;
  readonly owed: bigint;
  readonly most: bigint;
  readonly least: bigint;
  readonly mostOwed: bigint;
}

const larger = (a: bigint, b: bigint): bigint => (a > b ? a : b);
const smaller = (a: bigint, b: bigint): bigint => (a < b ? a : b);

const columnWidth = (span: number): number => Math.ceil(span / MOST_COLUMNS);
const columnOf = (tick: number, span: number): number => Math.floor(tick / columnWidth(span)) * columnWidth(span);

/** A quantity as pixels, to a hundredth; what is not nothing is never drawn lower than one. */
const pixels = (part: bigint, whole: bigint, most: number): number =>
  part <= 0n || whole <= 0n ? 0 : Math.max(1, Number((part * BigInt(most * 100)) / whole) / 100);

function momentsOf(onHand: bigint, events: readonly TimedEvent[], span: number): readonly Moment[] {
  let last: Moment = { tick: 0, shelf: onHand, owed: 0n, most: onHand, least: onHand, mostOwed: 0n };
  const moments: Moment[] = [];
  for (const [index, { tick, event }] of events.entries()) {
    // Within one moment only what stands at its end counts: a delivery that settles what was owed is one step.
    if (events[index + 1]?.tick === tick) continue;
    const { shelf, owed } = event;
    const column = columnOf(tick, span);
    if (last.tick < column) {
      moments.push(last);
      last = { tick: column, shelf, owed, most: shelf, least: shelf, mostOwed: owed };
    } else {
      const [most, least] = [larger(last.most, shelf), smaller(last.least, shelf)];
      last = { ...last, shelf, owed, most, least, mostOwed: larger(last.mostOwed, owed) };
    }
  }
  return [...moments, last];
}

/** Steps only: along at one height, then straight up or down. Where nothing is held there is no line. */
function bodyPaths(
  moments: readonly Moment[],
  span: number,
  waterline: number,
  heightOf: (held: bigint) => number,
): { readonly body: string; readonly edge: string } {
  let [path, height] = ["", 0];
  const goTo = (tick: number, held: bigint): void => {
    const to = heightOf(held);
    if (to === height) return;
    path += `${height === 0 ? `M${tick} ${waterline}` : `H${tick}`}V${round(waterline - to)}`;
    height = to;
  };
  for (const { tick, shelf, most, least } of moments) {
    if (heightOf(most) > height) goTo(tick, most);
    if (heightOf(least) < height) goTo(tick, least);
    goTo(tick, shelf);
  }
  const edge = height === 0 ? path : `${path}H${span}`;
  return { edge, body: height === 0 ? path : `${edge}V${waterline}` };
}

/** The heights that the body's edge stands at or passes through. */
const bodyHeights = (moments: readonly Moment[], heightOf: (held: bigint) => number): readonly BodyHeight[] =>
  moments.flatMap(({ tick, shelf, most, least }) =>
    [most, least, shelf].map((held) => ({ from: tick, height: heightOf(held) })),
  );

const round = (value: number): number => Math.round(value * 100) / 100;

function lackSteps(moments: readonly Moment[], span: number, zone: number): readonly Step[] {
  const mostOwed = moments.reduce((most, moment) => larger(most, moment.mostOwed), 0n);
  return moments.reduce<readonly Step[]>((steps, { tick, owed, mostOwed: passing }, index) => {
    const lacking = owed > 0n ? owed : passing;
    if (lacking === 0n) return steps;
    // A lack that is settled within its column is drawn as wide as the column.
    const until = owed > 0n ? (moments[index + 1]?.tick ?? span) : Math.min(tick + columnWidth(span), span);
    const percent = LEAST_LACK_PERCENT + ((100n - LEAST_LACK_PERCENT) * lacking) / mostOwed;
    return [...steps, { from: tick, width: until - tick, reach: Number(percent * BigInt(zone)) / 100 }];
  }, []);
}

const firstLack = (moments: readonly Moment[]): number | null =>
  moments.find(({ mostOwed }) => mostOwed > 0n)?.tick ?? null;

/** The band stands from when a lot that will not be used up is there until it is written off; bands add up. */
function wasteSteps(events: readonly TimedEvent[], span: number, heightOf: (held: bigint) => number): readonly Step[] {
  const arrivedAt = new Map<string, number>();
  const changeAt = new Map<number, bigint>();
  const change = (tick: number, by: bigint) =>
    changeAt.set(columnOf(tick, span), (changeAt.get(columnOf(tick, span)) ?? 0n) + by);
  for (const { tick, event } of events) {
    if (event.kind === "arrived") arrivedAt.set(event.lot, tick);
    if (event.kind !== "written off") continue;
    change(arrivedAt.get(event.lot) ?? 0, event.quantity);
    change(tick, -event.quantity);
  }
  const ticks = [...changeAt.keys()].sort((a, b) => a - b);
  let standing = 0n;
  return ticks.flatMap((from, index) => {
    standing += changeAt.get(from) ?? 0n;
    const until = ticks[index + 1];
    return standing > 0n && until !== undefined ? [{ from, width: until - from, reach: heightOf(standing) }] : [];
  });
}

/** Where something of that kind happens: of those that would stand on one another, the first. */
function pinsAt(events: readonly TimedEvent[], kind: "arrived" | "written off", span: number): readonly number[] {
  const room = Math.ceil(span / MOST_PINS);
  const pins = new Map<number, number>();
  for (const { tick, event } of events) {
    const place = Math.floor(tick / room);
    if (event.kind === kind && !pins.has(place)) pins.set(place, tick);
  }
  return [...pins.values()];
}

function orderPin({ orderBy }: MaterialOutlook, today: Day): OrderPin | null {
  if (orderBy === null) return null;
  if (orderBy < today) return { kind: "gone", at: 0 };
  return orderBy === today ? { kind: "today", at: 0 } : { kind: "notch", at: tickOf(orderBy, today) };
}
