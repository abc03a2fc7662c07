import type { Route } from "next";
import { BASES, type Basis } from "@/lib/domain/plan-figures";

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

/** An address with its basis and, where one is wanted, its margin. The default basis is not written. */
export function withBasis(path: Route, basis: Basis, margin: string | null = null): Route {
  const query = new URLSearchParams();
  if (basis !== DEFAULT) query.set("basis", basis);
  if (margin !== null) query.set("margin", margin);
  return query.size === 0 ? path : (`${path}?${query.toString()}` as Route);
}

/** The address of one product. Ids hold any characters; a path takes two of them, `.` and `..`, for steps of its own. */
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
