import type { Route } from "next";
import { BASES, type Basis } from "@/lib/domain/plan-figures";
import { type Sold, SOLD } from "./sold";

export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  replacement: "If bought now",
  shelf: "From the shelf",
  average: "Average paid",
};

/** What an address may carry: each key once, several times or not at all. */
export type Query = Readonly<Record<string, string | readonly string[] | undefined>>;

const DEFAULT: Basis = "replacement";

/** The basis that an address asks for; the default where it asks for none or for one that does not exist. */
export const basisOf = (query: Query): Basis => BASES.find((basis) => basis === query.basis) ?? DEFAULT;

/** What the address of one product asks for. */
export interface Asked {
  readonly basis: Basis;
  /** Whose price the sway is of. */
  readonly sold: Sold;
  /** As typed; null where it is not asked. */
  readonly margin: string | null;
  /** Costs of a month, as typed; null where they are not asked. */
  readonly month: string | null;
}

const typed = (value: Query[string]): string | null => (typeof value === "string" ? value.trim() : null);

export const askedOf = (query: Query): Asked => ({
  basis: basisOf(query),
  sold: SOLD.find((sold) => sold === query.sold) ?? "shops",
  margin: typed(query.margin),
  month: typed(query.month),
});

/** What an address carries of what is asked: what nobody asked, and the defaults, are not written. */
export const carriedBy = ({ basis, sold, margin, month }: Asked): readonly (readonly [keyof Asked, string])[] => [
  ...(basis === DEFAULT ? [] : [["basis", basis] as const]),
  ...(sold === "shops" ? [] : [["sold", sold] as const]),
  ...(margin === null ? [] : [["margin", margin] as const]),
  ...(month === null ? [] : [["month", month] as const]),
];

const addressOf = (path: Route, carried: readonly (readonly [string, string])[]): Route =>
  carried.length === 0
    ? path
    : (`${path}?${new URLSearchParams(carried.map(([key, value]) => [key, value])).toString()}` as Route);

/** An address with its basis. */
export const withBasis = (path: Route, basis: Basis): Route =>
  addressOf(path, basis === DEFAULT ? [] : [["basis", basis]]);

/** The address of one product with what is asked of it. */
export const productAddress = (id: string, asked: Asked): Route => addressOf(productPath(id), carriedBy(asked));

/** The path of one product. Ids hold any characters; a path takes two of them, `.` and `..`, for steps of its own. */
export function productPath(id: string): Route {
  const isStep = id === "." || id === "..";
  return `/cost/${encodeURIComponent(isStep || id.startsWith("~") ? `~${id}` : id)}` as Route;
}

/** The id that an address names, or null where it is no text. */
export function productIdOf(segment: string): string | null {
  try {
    const id = decodeURIComponent(segment);
    return id.startsWith("~") ? id.slice(1) : id;
  } catch {
    return null;
  }
}
