/** How a value that somebody typed is shown in a message: on one line, not too long, and with nothing hidden in it. */
import type { Json } from "./json-tree";

const MOST_UNITS = 60;

// Control characters, lone surrogates, line separators and format characters (which can turn a line round) are
// shown as escapes. The zero-width joiner is let through, because emoji are written with it.
const HIDDEN = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]|(?!\u200d)\p{Cf}/u;

/** The text with what cannot be seen written as JSON escapes, cut where it grows longer than sixty. */
export function escaped(text: string): string {
  let visible = "";
  // Character by character, so that the rest of a text of many megabytes is never looked at.
  for (const character of text) {
    if (visible.length >= MOST_UNITS) return `${visible}…`;
    visible += HIDDEN.test(character) ? escapeOf(character) : character;
  }
  return visible;
}

const escapeOf = (hidden: string): string =>
  Array.from({ length: hidden.length }, (_, at) => `\\u${hidden.charCodeAt(at).toString(16).padStart(4, "0")}`).join(
    "",
  );

/** The text in quotes, as {@link escaped}. */
export const quoted = (text: string): string => `"${escaped(text)}"`;

/** A value of a file as a message shows it. */
export function shown(value: Json | undefined): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") return quoted(value);
  if (value === null || typeof value !== "object") return String(value);
  if ("written" in value) return escaped(value.written);
  return Array.isArray(value) ? "a list" : "an object";
}
