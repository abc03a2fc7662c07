/** The signs: each shape says its word without colour, in print too. Drawn on a square of fifteen. */
import { element } from "./markup";

const filled = (d: string): string => element("path", { class: "filled", d });
const line = (d: string): string => element("path", { d });

/** What stands within a sign's `svg`. */
export const SIGN_SHAPES = {
  notch: line("M1 13.5h13") + filled("M2.5 2h10l-5 8z"),
  pennant: line("M1 13.5h13M3.5 2v11") + filled("M3.5 1.5h9l-9 7z"),
  box: line("M1.5 3.5h12v8h-12zM1.5 8 6 3.5M4 11.5l8-8M9 11.5 13.5 7"),
  hourglass: line("M3 1.5h9M3 13.5h9M4 1.5c0 4 7 8 7 12M11 1.5c0 4-7 8-7 12"),
  tally: line("M3 3v9M6 3v9M9 3v9M12 3v9M1.5 10.5l12-6"),
  tick: line("M2 8l4 4.5L13 3"),
  dash: line("M2 7.5h11"),
  ring: element("circle", { cx: 7.5, cy: 7.5, r: 4.5 }),
  triangle: line("M7.5 2 14 13H1zM7.5 6v3.5M7.5 10.8v1"),
} as const;

export type SignName = keyof typeof SIGN_SHAPES;
/** Wrong is in madder; open is what can be done; still is what is covered. */
export type SignTone = "wrong" | "open" | "still";

/** A drawing and a word. @param words  markup */
export const signMarkup = (sign: SignName, tone: SignTone, words: string): string =>
  element(
    "span",
    { class: `sign ${tone}` },
    element("svg", { viewBox: "0 0 15 15", "aria-hidden": "true" }, SIGN_SHAPES[sign]) + element("span", {}, words),
  );
