/** The words on a ribbon, placed so that none leaves the strip, or stands on another, a pin or the body's edge. */
import type { Day } from "@/lib/domain/calendar";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { dayShown, stockShown } from "./figures";
import { lastDayOfUse, shortAmount } from "./ribbon-sentence";
import { TICKS_A_DAY } from "./ribbon-time";

/** The narrowest strip that carries captions, on a phone, and what a letter takes of it at 13 px. */
const NARROWEST_PIXELS = 340;
const PIXELS_A_LETTER = 6.6;

const BESIDE_PIN = 11;
const BESIDE_EDGE_PIN = 15;
const BESIDE_LACK = 7;

/** Half an hourglass, and the line below it. */
const HALF_A_PIN = 5;
/** From the waterline up: the foot and the head of words that stand on it. */
const FOOT = 4;
const HEAD = 17;
const ABOVE_BODY = 2;
/** In a longer strip a day without its year could be of two. */
const YEAR_LEFT_OUT_DAYS = 330;

export interface RibbonCaption {
  readonly row: "rail" | "waterline";
  readonly ink: "woad" | "madder";
  readonly text: string;
  /** Where the text is anchored, in ticks, and how many pixels it then stands off. */
  readonly at: number;
  readonly anchor: "start" | "end";
  readonly off: number;
  /** How many pixels above its row, clear of what is drawn there. */
  readonly lift?: number;
}

export interface OrderPin {
  /** On a day to come, today, or gone by. */
  readonly kind: "notch" | "today" | "gone";
  readonly at: number;
}

interface Strip {
  readonly span: number;
  readonly today: Day;
  readonly order: OrderPin | null;
  /** Where lots go out of date: an hourglass and a line down to the waterline. */
  readonly losses: readonly number[];
}

/** How high the body stands from a tick on until the next; more than one at a tick where it passes through them. */
export interface BodyHeight {
  readonly from: number;
  readonly height: number;
}

/** What stands above the waterline. */
interface Above {
  readonly body: readonly BodyHeight[];
  /** The zone above the waterline, and the rail over it. */
  readonly have: number;
  readonly rail: number;
  /** Whether words stand on the rail. */
  readonly hasRailWords: boolean;
}

function dayInStrip(day: Day, { span, today }: Pick<Strip, "span" | "today">): string {
  const isPlain = span <= YEAR_LEFT_OUT_DAYS * TICKS_A_DAY;
  return dayShown(day, today, { weekday: false, ...(isPlain && { year: false }) });
}

/**
 * It stands on the waterline in the space that the lack has emptied: at its beginning, or at the strip's end. Where the
 * body's edge would cross it there, it stands above the body, or to the left of the body's end.
 */
export function lackCaption(
  outlook: MaterialOutlook,
  lackFrom: number | null,
  strip: Strip,
  above: Above,
): readonly RibbonCaption[] {
  const { span } = strip;
  const { material, shortOn } = outlook;
  if (shortOn === null || lackFrom === null) return [];
  const lacking = stockShown(shortAmount(outlook), material.measure, "lacking");
  const text = `short ${lacking}, ${dayInStrip(shortOn, strip)}`;
  const begin: RibbonCaption = {
    row: "waterline",
    ink: "madder",
    text,
    at: lackFrom,
    anchor: "start",
    off: BESIDE_LACK,
  };
  const end: RibbonCaption = { ...begin, at: span, anchor: "end", off: -1 };
  const left: RibbonCaption = { ...begin, anchor: "end", off: -BESIDE_LACK };
  const placed = [begin, end, left].flatMap((caption) => [caption, lifted(caption, strip, above)]);
  const free = placed.find((caption) => caption !== null && isFree(caption, strip, above));
  // Words that have no free place are still better than none: what is lacking is why the ribbon is looked at.
  return [free ?? (reach(begin, span)[1] <= span ? begin : end)];
}

/** The same words above the body, where they stand in its way. */
function lifted(caption: RibbonCaption, { span }: Strip, { body }: Above): RibbonCaption | null {
  const highest = heightsIn(reach(caption, span), body).reduce((most, height) => Math.max(most, height), 0);
  const lift = Math.ceil(highest + ABOVE_BODY - FOOT);
  return lift > 0 ? { ...caption, lift } : null;
}

function isFree(caption: RibbonCaption, { span, losses, order }: Strip, above: Above): boolean {
  const [from, until] = reach(caption, span);
  const [foot, head] = [FOOT + (caption.lift ?? 0), HEAD + (caption.lift ?? 0)];
  const heights = heightsIn([from, until], above.body);
  const isCrossed = !heights.every((height) => height <= foot) && !heights.every((height) => height >= head);
  const pins = order === null ? [] : [order.at];
  const top = above.have + (above.hasRailWords || touches([from, until], pins, span) ? 0 : above.rail);
  return from >= 0 && until <= span && head <= top && !isCrossed && !touches([from, until], losses, span);
}

/** The heights of the body's edge between two ticks. */
function heightsIn([from, until]: Reach, body: readonly BodyHeight[]): readonly number[] {
  return body
    .filter((step, at) => {
      const next = body.find((other, later) => later > at && other.from > step.from)?.from ?? Infinity;
      return step.from <= until && next >= from;
    })
    .map(({ height }) => height);
}

/** The order caption stands beside its notch; the first loss is said where there is still room for it. */
export function railCaptions(outlook: MaterialOutlook, strip: Strip): readonly RibbonCaption[] {
  return [orderWords(outlook, strip), lossWords(outlook, strip)].reduce<readonly RibbonCaption[]>((placed, words) => {
    if (words === null) return placed;
    const right: RibbonCaption = { row: "rail", anchor: "start", ...words };
    const sides = [right, { ...right, anchor: "end" as const, off: -right.off }];
    const free = sides.find((side) => fits(side, placed, strip));
    return free ? [...placed, free] : placed;
  }, []);
}

type Words = Omit<RibbonCaption, "row" | "anchor">;

function orderWords({ orderBy }: MaterialOutlook, strip: Strip): Words | null {
  const { order, today } = strip;
  if (order === null || orderBy === null) return null;
  switch (order.kind) {
    case "gone":
      return { ink: "madder", text: `order day was ${dayShown(orderBy, today)}`, at: 0, off: BESIDE_EDGE_PIN };
    case "today":
      return { ink: "woad", text: "order today", at: 0, off: BESIDE_EDGE_PIN };
    case "notch":
      return { ink: "woad", text: `order by ${dayInStrip(orderBy, strip)}`, at: order.at, off: BESIDE_PIN };
  }
}

function lossWords({ material, expiring }: MaterialOutlook, strip: Strip): Words | null {
  const loss = expiring.filter(({ on }) => on > strip.today).sort((a, b) => a.on - b.on)[0];
  const [first] = strip.losses;
  if (!loss || first === undefined) return null;
  const text = `${stockShown(loss.quantity, material.measure, "nearest")} lost, ${dayInStrip(lastDayOfUse(loss), strip)}`;
  return { ink: "madder", text, at: first, off: BESIDE_PIN };
}

type Reach = readonly [from: number, until: number];

/** From where to where a caption reaches on the narrowest strip, in ticks. On a wider one it reaches less far. */
function reach({ text, at, anchor, off }: RibbonCaption, span: number): Reach {
  const taken = inTicks(text.length * PIXELS_A_LETTER + Math.abs(off), span);
  return anchor === "start" ? [at, at + taken] : [at - taken, at];
}

const inTicks = (pixels: number, span: number): number => (pixels / NARROWEST_PIXELS) * span;

/** Whether a pin or its line stands between two ticks. */
const touches = ([from, until]: Reach, pins: readonly number[], span: number): boolean =>
  pins.some((pin) => pin + inTicks(HALF_A_PIN, span) > from && pin - inTicks(HALF_A_PIN, span) < until);

function fits(caption: RibbonCaption, placed: readonly RibbonCaption[], { span, losses, order }: Strip): boolean {
  const [from, until] = reach(caption, span);
  const isClear = placed.every((other) => reach(other, span)[1] < from || reach(other, span)[0] > until);
  const pins = [...losses, ...(order === null ? [] : [order.at])].filter((pin) => pin !== caption.at);
  return from >= 0 && until <= span && isClear && !touches([from, until], pins, span);
}
