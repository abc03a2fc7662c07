/** What the maker has just done, as the address of the page after it carries it. */
import type { AskedFrame } from "@/lib/edge/forms/buying-frame";
import { frameFields } from "@/lib/edge/forms/buying-frame";

const DEEDS = [
  "ordered",
  "taken back",
  "offer changed",
  "ordered otherwise",
  "ordered meanwhile",
  "already received",
  "too large",
  "not there",
  "not understood",
] as const;

export interface Deed {
  readonly did: (typeof DEEDS)[number];
  /** The order, or the supplier that it was taken back from. */
  readonly about: string;
}

type Parameters = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Null where the address says nothing that can be understood. */
export function deedFrom({ did, about }: Parameters): Deed | null {
  const known = DEEDS.find((each) => each === did);
  return known ? { did: known, about: typeof about === "string" ? about : "" } : null;
}

/** The frame in one text, as a form carries it. */
export const frameCarried = (asked: AskedFrame): string =>
  new URLSearchParams(frameFields(asked).map((pair) => [...pair])).toString();

/** The same page with what was done in its address. */
export function addressOfDeed(frame: string, { did, about }: Deed): `/buying?${string}` {
  const query = new URLSearchParams(frame);
  query.set("did", did);
  if (about !== "") query.set("about", about);
  return `/buying?${query.toString()}`;
}
