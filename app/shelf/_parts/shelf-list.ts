/** Which materials the shelf lists, in which groups and order. */
import { type Day, daysAfter, mondayOf } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { Shelf } from "./shelf";

/** In the order in which the page shows them. */
export const GROUPS = [
  "this week",
  "to make",
  "no offer",
  "nothing to buy",
  "out of date",
  "later",
  "covered",
] as const;
export type Group = (typeof GROUPS)[number];

export const SHOWS = ["all", "order", "date", "packaging", "changed"] as const;
export type Show = (typeof SHOWS)[number];

export const SORTS = ["day", "name", "lasts"] as const;
export type Sort = (typeof SORTS)[number];

export interface Asked {
  readonly find: string;
  readonly show: Show;
  readonly by: Sort;
  /** The id of a material that is to stand open. */
  readonly open: string;
}

type Parameters = Readonly<Record<string, string | readonly string[] | undefined>>;

/** What the address asks for; what it does not know counts as not asked. */
export function askedFrom(parameters: Parameters): Asked {
  const text = (key: string): string => {
    const value = parameters[key];
    return (typeof value === "string" ? value : (value?.[0] ?? "")).trim().slice(0, 200);
  };
  return {
    find: text("find"),
    show: SHOWS.find((show) => show === text("show")) ?? "all",
    by: SORTS.find((sort) => sort === text("by")) ?? "day",
    open: text("open"),
  };
}

/** The same list with something else asked for; what stands open closes unless it is asked for again. */
export function addressOf(asked: Asked, changed: Partial<Asked>): `/shelf?${string}` {
  const { find, show, by, open } = { ...asked, open: "", ...changed };
  const query = new URLSearchParams({
    ...(find && { find }),
    ...(show !== "all" && { show }),
    ...(by !== "day" && { by }),
    ...(open && { open }),
  }).toString();
  return `/shelf?${query}`;
}

/** The materials that the last change altered, by id. */
export type Changed = ReadonlyMap<string, unknown>;

const SHOWN: Readonly<Record<Show, (outlook: MaterialOutlook, changed: Changed) => boolean>> = {
  all: () => true,
  order: ({ toBuy }) => toBuy > 0n,
  date: ({ expiring }) => expiring.length > 0,
  packaging: ({ material }) => material.kind === "packaging",
  changed: ({ material }, changed) => changed.has(material.id),
};

export const countShown = (outlooks: readonly MaterialOutlook[], show: Show, changed: Changed): number =>
  outlooks.filter((outlook) => SHOWN[show](outlook, changed)).length;

const hasLotNamed = ({ ladder }: MaterialOutlook, find: string): boolean =>
  find !== "" && ladder.some(({ lot }) => lot.toLowerCase().includes(find.toLowerCase()));

/** So many rows stand open for a lot that was looked for; where a letter or two are in the names of many, none does. */
const MOST_OPEN_BY_LOT = 6;

/** Asked for by its id, or because one of its lots is what was looked for. */
export const isOpen = (outlook: MaterialOutlook, { find, open }: Asked, listed: number): boolean =>
  outlook.material.id === open || (listed <= MOST_OPEN_BY_LOT && hasLotNamed(outlook, find));

const isFound = (outlook: MaterialOutlook, find: string): boolean =>
  outlook.material.name.toLowerCase().includes(find.toLowerCase()) || hasLotNamed(outlook, find);

/** What is asked for, in the order asked for. */
export const listed = (
  outlooks: readonly MaterialOutlook[],
  { find, show, by }: Asked,
  changed: Changed,
): readonly MaterialOutlook[] =>
  outlooks.filter((outlook) => SHOWN[show](outlook, changed) && isFound(outlook, find)).sort(ORDERS[by]);

const byName = (a: MaterialOutlook, b: MaterialOutlook): number =>
  a.material.name.localeCompare(b.material.name) || byCodePoint(a.material.id, b.material.id);

const firstOf = (a: Day | null, b: Day | null): number => (a === b ? 0 : (a ?? Infinity) - (b ?? Infinity));

const ORDERS: Readonly<Record<Sort, (a: MaterialOutlook, b: MaterialOutlook) => number>> = {
  day: (a, b) => firstOf(a.orderBy, b.orderBy) || firstOf(a.shortOn, b.shortOn) || byName(a, b),
  name: byName,
  lasts: (a, b) => firstOf(a.shortOn, b.shortOn) || byName(a, b),
};

export function groupOf(
  { material, belowSafetyOn, orderBy, toBuy, expiring }: MaterialOutlook,
  { today, instead }: Pick<Shelf, "today" | "instead">,
): Group {
  const endOfWeek = daysAfter(mondayOf(today), 6);
  if (belowSafetyOn !== null && orderBy === null) return instead.has(material.id) ? "to make" : "no offer";
  if (orderBy !== null && orderBy <= endOfWeek) return toBuy > 0n ? "this week" : "nothing to buy";
  if (expiring.length > 0) return "out of date";
  return belowSafetyOn === null ? "covered" : "later";
}
