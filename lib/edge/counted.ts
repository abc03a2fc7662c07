/** Small counts as sentences say them. */
import { countShown } from "./figures";

const WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"] as const;

/** A count in words up to ten, in digits beyond: `three`, `15`. */
export const inWords = (count: number): string => WORDS[count] ?? countShown(count);

/** The same at the head of a sentence: `Three`. */
export function inWordsFirst(count: number): string {
  const words = inWords(count);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A count with its noun: `three runs`, `one run`, `no runs`. */
export const counted = (count: number, one: string, many: string): string =>
  `${inWords(count)} ${count === 1 ? one : many}`;

/** Things named one after another: `a`, `a and b`, `a, b and c`. */
export function inARow(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}
