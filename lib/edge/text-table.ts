/** Tables for a terminal: plain text, columns lined up, no line wider than the widest a terminal is taken to be. */
import { escaped } from "./shown-value";

export interface Column {
  readonly title: string;
  /** Figures stand to the right, words to the left. */
  readonly align: "left" | "right";
}

const WIDEST_LINE = 110;
const NARROWEST_WORDS = 12;
const GAP = "  ";

/** The rows under their titles, or no line at all where there is no row. Words are cut where a line would be too wide. */
export function tableLines(columns: readonly Column[], rows: readonly (readonly string[])[]): readonly string[] {
  if (rows.length === 0) return [];
  const cells = rows.map((row) => columns.map((_, at) => escaped(row[at] ?? "")));
  const natural = columns.map(({ title }, at) =>
    cells.reduce((widest, row) => Math.max(widest, widthOf(row[at] ?? "")), widthOf(title)),
  );
  const widths = fitted(columns, natural);
  const lineOf = (row: readonly string[]) =>
    columns
      .map(({ align }, at) => padded(row[at] ?? "", widths[at] ?? 0, align))
      .join(GAP)
      .trimEnd();
  return [
    lineOf(columns.map(({ title }) => title)),
    widths.map((width) => "-".repeat(width)).join(GAP),
    ...cells.map(lineOf),
  ];
}

/** Takes what is too wide away from the widest column of words, a character at a time. */
function fitted(columns: readonly Column[], natural: readonly number[]): readonly number[] {
  const widths = [...natural];
  const excess = () => widths.reduce((sum, width) => sum + width + GAP.length, -GAP.length) - WIDEST_LINE;
  while (excess() > 0) {
    const words = widths.map((width, at) => (columns[at]?.align === "left" ? width : 0));
    const widest = words.indexOf(Math.max(...words));
    if ((words[widest] ?? 0) <= NARROWEST_WORDS) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}

function padded(text: string, width: number, align: Column["align"]): string {
  const cut = widthOf(text) <= width ? text : cutTo(text, width);
  const blanks = " ".repeat(Math.max(0, width - widthOf(cut)));
  return align === "left" ? cut + blanks : blanks + cut;
}

function cutTo(text: string, width: number): string {
  let kept = "";
  for (const character of text) {
    if (widthOf(kept + character) >= width) break;
    kept += character;
  }
  return `${kept}…`;
}

// Marks stand on the character before them; emoji and the scripts of East Asia take two places (Unicode TR11).
const NO_PLACE = /[\p{M}\p{Cf}]/u;
const TWO_PLACES =
  /\p{Emoji_Presentation}|[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]/u;

/** How many places of a terminal the text takes. */
export const widthOf = (text: string): number =>
  [...text].reduce((width, character) => {
    if (NO_PLACE.test(character)) return width;
    return width + (TWO_PLACES.test(character) ? 2 : 1);
  }, 0);
