/** The frame of a purchase as an address carries it: what is chosen and typed, and the frame that it comes to. */
import type { Arrival, BuyingFrame } from "@/lib/domain/buying/buying-frame";
import type { CurrencyCode } from "@/lib/domain/money";
import { type Cover, COVERS, readCap, readCover, readOrderBy, readShare, type Read } from "./buying-frame-typed";

/** When it must come. */
export const ARRIVALS: readonly Arrival[] = ["by the rules", "in time", "any day"];

export interface AskedFrame {
  readonly cover: Cover;
  /** As typed; it counts where the cover is a number of days. */
  readonly days: string;
  /** As typed: only what must be ordered by this day. */
  readonly by: string;
  readonly arrival: Arrival;
  readonly leftOut: readonly string[];
  readonly heldTo: readonly string[];
  /** Offers that alone may fill their materials. */
  readonly pinned: readonly string[];
  /** As typed: what may be spent, and what leftovers count for, in percent. */
  readonly cap: string;
  readonly left: string;
  readonly mustKeep: boolean;
}

/** Why what was typed is not followed; it then counts as not typed. */
export type FrameTypingFaults = Readonly<Record<"days" | "by" | "cap" | "left", string | null>>;

export interface FrameReading {
  readonly asked: AskedFrame;
  readonly frame: BuyingFrame;
  readonly faults: FrameTypingFaults;
}

export type FrameParameters = Readonly<Record<string, string | readonly string[] | undefined>>;

interface FramedBy {
  readonly suppliers: readonly { readonly id: string }[];
  readonly offers: readonly { readonly id: string; readonly material: string }[];
  readonly settings: { readonly horizonDays: number; readonly currency: CurrencyCode };
}

const MOST_TYPED = 200;

/** Reads the frame; what an address names that is not there counts as not asked. @rule BUY-10 */
export function readFrame(parameters: FrameParameters, { suppliers, offers, settings }: FramedBy): FrameReading {
  const many = (name: string): readonly string[] => [parameters[name] ?? []].flat();
  const typed = (name: string) => (many(name)[0] ?? "").slice(0, MOST_TYPED);
  const named = (name: string, among: readonly { readonly id: string }[]) => {
    const ids = new Set(many(name));
    return among.flatMap(({ id }) => (ids.has(id) ? [id] : []));
  };
  const leftOut = named("out", suppliers);
  const asked: AskedFrame = {
    cover: COVERS.find((each) => each === typed("cover")) ?? "as set",
    days: typed("days"),
    by: typed("by"),
    arrival: ARRIVALS.find((each) => each === typed("arrival")) ?? "by the rules",
    leftOut,
    // Who is left out is not held to.
    heldTo: named("only", suppliers).filter((id) => !leftOut.includes(id)),
    pinned: onePerMaterial(named("pin", offers), offers),
    cap: typed("cap"),
    left: typed("left"),
    mustKeep: many("keep").includes("yes"),
  };
  const cover = readCover(asked, settings.horizonDays);
  const [orderBy, cap, leftOvers] = [
    readOrderBy(asked.by),
    readCap(asked.cap, settings.currency),
    readShare(asked.left),
  ];
  return {
    asked,
    frame: {
      cover: cover.value,
      arrival: asked.arrival,
      leftOut: new Set(leftOut),
      heldTo: new Set(asked.heldTo),
      chosen: new Set(asked.pinned),
      cap: cap.value,
      orderBy: orderBy.value,
      mustKeep: asked.mustKeep,
      leftOvers: leftOvers.value,
    },
    faults: { days: faultOf(cover), by: faultOf(orderBy), cap: faultOf(cap), left: faultOf(leftOvers) },
  };
}

const faultOf = <T>({ fault }: Read<T>): string | null => fault;

function onePerMaterial(ids: readonly string[], offers: FramedBy["offers"]): readonly string[] {
  const idByMaterial = new Map<string, string>();
  for (const { id, material } of offers)
    if (ids.includes(id) && !idByMaterial.has(material)) idByMaterial.set(material, id);
  return [...idByMaterial.values()];
}

/** The frame in an address again, with what else is asked; an order of fields that never changes. */
export function frameFields(asked: AskedFrame): readonly (readonly [string, string])[] {
  const { cover, days, by, arrival, leftOut, heldTo, pinned, cap, left, mustKeep } = asked;
  const written = (name: string, text: string) => (text === "" ? [] : [[name, text] as const]);
  return [
    ...(cover === "as set" ? [] : [["cover", cover] as const]),
    ...(cover === "days" ? [["days", days] as const] : []),
    ...written("by", by),
    ...(arrival === "by the rules" ? [] : [["arrival", arrival] as const]),
    ...leftOut.map((id) => ["out", id] as const),
    ...heldTo.map((id) => ["only", id] as const),
    ...pinned.map((id) => ["pin", id] as const),
    ...written("cap", cap),
    ...written("left", left),
    ...(mustKeep ? [["keep", "yes"] as const] : []),
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

/** What a form sends that nobody chose. */
const UNCHOSEN: Readonly<Record<string, string>> = { cover: "as set", arrival: "by the rules" };

/** A form sends its empty fields too: the address without them, or null where there are none. */
export function addressWithoutEmptyFields(parameters: FrameParameters): `/buying?${string}` | null {
  const pairs = Object.entries(parameters).flatMap(([name, value]) => [value ?? []].flat().map((text) => [name, text]));
  const full = pairs.filter(([name = "", text]) => text !== "" && text !== UNCHOSEN[name]);
  return full.length === pairs.length ? null : `/buying?${new URLSearchParams(full).toString()}`;
}
