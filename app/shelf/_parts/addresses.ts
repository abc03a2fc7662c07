/** Pages of the shelf that others point to. Ids hold any characters. */
import type { Route } from "next";

/** What a path takes for steps of its own. */
const TAKEN = new Set([".", ".."]);

const stepOf = (id: string): string => encodeURIComponent(TAKEN.has(id) || id.startsWith("~") ? `~${id}` : id);

/** The id that a step of an address names, or null where it is no text. */
export function idInStep(step: string): string | null {
  try {
    const id = decodeURIComponent(step);
    return id.startsWith("~") ? id.slice(1) : id;
  } catch {
    return null;
  }
}

/** A lot of a material; `asked` opens one of its forms, or names the posting that was made last. */
export function lotAddress(id: string, asked: Readonly<Record<string, string>> = {}): Route {
  const query = new URLSearchParams(asked).toString();
  return `/shelf/lots/${stepOf(id)}${query === "" ? "" : `?${query}`}` as Route;
}
