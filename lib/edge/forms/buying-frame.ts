/** The frame of a purchase as an address carries it: what is chosen and typed, and the frame that it comes to. */
import { type BuyingFrame, OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { daysShown } from "@/lib/edge/figures";
import { readTypedWholeNumber } from "./typed-amount";

/** How the days to cover are chosen. */
export const COVERS = ["as set", "week", "four weeks", "horizon", "days"] as const;
export type Cover = (typeof COVERS)[number];

export interface AskedFrame {
  readonly cover: Cover;
  /** As typed; it counts where the cover is a number of days. */
  readonly days: string;
  readonly leftOut: readonly string[];
  readonly mustBeInTime: boolean;
}

export interface FrameReading {
  readonly asked: AskedFrame;
  readonly frame: BuyingFrame;
  /** Why the days that were typed are not followed; the workshop's own then count. */
  readonly daysFault: string | null;
}

type Parameters = Readonly<Record<string, string | readonly string[] | undefined>>;

interface FramedBy {
  readonly suppliers: readonly { readonly id: string }[];
  readonly settings: { readonly horizonDays: number };
}

const MOST_TYPED = 200;

/** Reads the frame; what an address names that is not there counts as not asked. @rule BUY-10 */
export function readFrame(parameters: Parameters, { suppliers, settings }: FramedBy): FrameReading {
  const many = (name: string): readonly string[] => [parameters[name] ?? []].flat();
  const [cover, days] = [many("cover")[0] ?? "", (many("days")[0] ?? "").slice(0, MOST_TYPED)];
  const named = new Set(many("out"));
  const asked: AskedFrame = {
    cover: COVERS.find((each) => each === cover) ?? "as set",
    days,
    leftOut: suppliers.flatMap(({ id }) => (named.has(id) ? [id] : [])),
    mustBeInTime: many("intime").includes("yes"),
  };
  const read = coverIn(asked, settings.horizonDays);
  const frame: BuyingFrame = {
    ...OPEN_FRAME,
    arrival: asked.mustBeInTime ? "in time" : OPEN_FRAME.arrival,
    leftOut: new Set(asked.leftOut),
  };
  return "fault" in read
    ? { asked, frame, daysFault: read.fault }
    : { asked, frame: { ...frame, cover: read }, daysFault: null };
}

function coverIn(asked: AskedFrame, horizonDays: number): BuyingFrame["cover"] | { readonly fault: string } {
  switch (asked.cover) {
    case "as set":
      return { kind: "workshop" };
    case "week":
      return { kind: "days", days: 7 };
    case "four weeks":
      return { kind: "days", days: 28 };
    case "horizon":
      return { kind: "horizon" };
    case "days":
      return daysIn(asked.days, horizonDays);
  }
}

function daysIn(typed: string, horizonDays: number): BuyingFrame["cover"] | { readonly fault: string } {
  const read = readTypedWholeNumber(typed);
  if ("fault" in read) return read;
  const days = read.value;
  if (days < 1) return { fault: "must be at least one day" };
  if (days > horizonDays)
    return { fault: `is more than the ${daysShown(horizonDays)} that the plan looks ahead; write at most that` };
  return { kind: "days", days };
}

/** The frame in an address again, with what else is asked; an order of fields that never changes. */
export function frameFields({
  cover,
  days,
  leftOut,
  mustBeInTime,
}: AskedFrame): readonly (readonly [string, string])[] {
  return [
    ...(cover === "as set" ? [] : [["cover", cover] as const]),
    ...(cover === "days" ? [["days", days] as const] : []),
    ...leftOut.map((id) => ["out", id] as const),
    ...(mustBeInTime ? [["intime", "yes"] as const] : []),
  ];
}

/** The place for buying in this frame. */
export function buyingAddress(
  asked: AskedFrame,
  further: Readonly<Record<string, string>> = {},
  anchor = "",
): `/buying?${string}` {
  const query = new URLSearchParams([...frameFields(asked), ...Object.entries(further)].map((pair) => [...pair]));
  return `/buying?${query.toString()}${anchor && `#${anchor}`}`;
}
