/** The words on a ribbon, placed so that none leaves the strip or stands on another. */
import type { Day } from "@/lib/domain/calendar";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { dayShown, stockShown } from "./figures";
import { lastDayOfUse, shortAmount } from "./ribbon-sentence";

/** The narrowest strip that carries captions, on a phone, and what a letter takes of it at 13 px. */
const NARROWEST_PIXELS = 340;
const PIXELS_A_LETTER = 6.6;

const BESIDE_PIN = 11;
const BESIDE_EDGE_PIN = 15;
const BESIDE_LACK = 7;

export interface RibbonCaption {
  readonly row: "rail" | "waterline";
  readonly ink: "woad" | "madder";
  readonly text: string;
  /** Where the text is anchored, in ticks, and how many pixels it then stands off. */
  readonly at: number;
  readonly anchor: "start" | "end";
  readonly off: number;
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
  /** Where the first lot goes out of date, or null for none. */
  readonly firstLoss: number | null;
}

const withoutWeekday = (day: Day, today: Day): string => dayShown(day, today, { weekday: false });

/** It stands on the waterline in the space that the lack has emptied: at its beginning, or at the strip's end. */
export function lackCaption(
  outlook: MaterialOutlook,
  lackFrom: number | null,
  { span, today }: Pick<Strip, "span" | "today">,
): readonly RibbonCaption[] {
  const { material, shortOn } = outlook;
  if (shortOn === null || lackFrom === null) return [];
  const lacking = stockShown(shortAmount(outlook), material.measure, "lacking");
  const text = `short ${lacking}, ${withoutWeekday(shortOn, today)}`;
  const begin = { row: "waterline", ink: "madder", text, at: lackFrom, anchor: "start", off: BESIDE_LACK } as const;
  return [reach(begin, span)[1] <= span ? begin : { ...begin, at: span, anchor: "end", off: -1 }];
}

/** The order caption stands beside its notch; the first loss is said where there is still room for it. */
export function railCaptions(outlook: MaterialOutlook, strip: Strip): readonly RibbonCaption[] {
  return [orderWords(outlook, strip), lossWords(outlook, strip)].reduce<readonly RibbonCaption[]>((placed, words) => {
    if (words === null) return placed;
    const right: RibbonCaption = { row: "rail", anchor: "start", ...words };
    const sides = [right, { ...right, anchor: "end" as const, off: -right.off }];
    const free = sides.find((side) => fits(side, placed, strip.span));
    return free ? [...placed, free] : placed;
  }, []);
}

type Words = Omit<RibbonCaption, "row" | "anchor">;

function orderWords({ orderBy }: MaterialOutlook, { order, today }: Strip): Words | null {
  if (order === null || orderBy === null) return null;
  switch (order.kind) {
    case "gone":
      return { ink: "madder", text: `order day was ${dayShown(orderBy, today)}`, at: 0, off: BESIDE_EDGE_PIN };
    case "today":
      return { ink: "woad", text: "order today", at: 0, off: BESIDE_EDGE_PIN };
    case "notch":
      return { ink: "woad", text: `order by ${withoutWeekday(orderBy, today)}`, at: order.at, off: BESIDE_PIN };
  }
}

function lossWords({ material, expiring }: MaterialOutlook, { today, firstLoss }: Strip): Words | null {
  const loss = expiring.filter(({ on }) => on > today).sort((a, b) => a.on - b.on)[0];
  if (!loss || firstLoss === null) return null;
  const text = `${stockShown(loss.quantity, material.measure, "nearest")} lost, ${withoutWeekday(lastDayOfUse(loss), today)}`;
  return { ink: "madder", text, at: firstLoss, off: BESIDE_PIN };
}

/** From where to where a caption reaches on the narrowest strip, in ticks. */
function reach({ text, at, anchor, off }: RibbonCaption, span: number): readonly [number, number] {
  const taken = ((text.length * PIXELS_A_LETTER + Math.abs(off)) / NARROWEST_PIXELS) * span;
  return anchor === "start" ? [at, at + taken] : [at - taken, at];
}

function fits(caption: RibbonCaption, placed: readonly RibbonCaption[], span: number): boolean {
  const [from, until] = reach(caption, span);
  const isFree = placed.every((other) => reach(other, span)[1] < from || reach(other, span)[0] > until);
  return from >= 0 && until <= span && isFree;
}
