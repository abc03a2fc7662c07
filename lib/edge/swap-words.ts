/** What a swap of materials changes in a formula, in sentences. @rule SWAP-1, SWAP-2 */
import type { SwapAsked, SwapChange, SwapPreview } from "@/lib/domain/formula-book/swap";
import { formulaTotal } from "@/lib/domain/formula-total";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { counted, inARow } from "./counted";
import { percentShown } from "./figures";
import { NO_BREAK } from "./shown-digits";

type NameOf = (of: FormulaLine["of"]) => string;

/** Each line that changes, what gives way to it, and whether the new one then stands in the formula more than once. */
export function swapInWords(
  { formula: after, changes }: Pick<SwapPreview, "formula" | "changes">,
  before: Formula,
  asked: SwapAsked,
  nameOf: NameOf,
): readonly string[] {
  const [old, is] = [asked.from, asked.to].map((id) => nameOf({ kind: "material", id })) as [string, string];
  const lines = before.lines.flatMap(({ of }, at) => (of.kind === "material" && of.id === asked.from ? [at] : []));
  const places = `${lines.length === 1 ? "Line" : "Lines"} ${inARow(lines.map((at) => String(at + 1)))}`;
  return [
    `${places}: ${is} in the place of ${old}.`,
    ...changes.map((change) => changeInWords(change, is, asked)),
    ...givesWay(before, after, nameOf),
    ...standsTwice(after, asked, is),
  ];
}

function changeInWords(change: SwapChange, is: string, asked: SwapAsked): string {
  switch (change.kind) {
    case "percent":
      return `Line ${String(change.line + 1)}, ${is}, goes from ${percentShown(change.before)} to ${percentShown(change.after)}, ${asked.percent === null ? "inside its use range" : "as you asked"}.`;
    case "phase":
      return `Line ${String(change.line + 1)}, ${is}, moves from phase ${change.before ?? "none"} to phase ${change.after}${asked.phase === null ? ", which is cool enough" : ""}.`;
    case "needs a cooler phase":
      return `${is} needs a phase below ${change.addBelow}${NO_BREAK}°C, and none is written.`;
    case "needs another pH":
      return `${is} needs another target pH: it works ${[change.material.phFrom && `from pH ${change.material.phFrom}`, change.material.phTo && `up to pH ${change.material.phTo}`].filter(Boolean).join(" ")}.`;
  }
}

/** What the line with `qs` takes before and after, where it is another percent. */
function givesWay(before: Formula, after: Formula, nameOf: NameOf): readonly string[] {
  const [was, is] = [formulaTotal(before).result, formulaTotal(after).result];
  if (was.kind !== "qs takes the rest" || is.kind !== "qs takes the rest" || was.rest === is.rest) return [];
  const line = after.lines[is.line];
  if (line === undefined) return [];
  return [
    `Line ${String(is.line + 1)}, ${nameOf(line.of)}, takes the rest: it goes from ${percentShown(was.rest)} to ${percentShown(is.rest)}.`,
  ];
}

function standsTwice({ lines }: Formula, { to }: SwapAsked, is: string): readonly string[] {
  const places = lines.flatMap(({ of, percent }, at) =>
    of.kind === "material" && of.id === to
      ? [`line ${String(at + 1)} at ${percent === "qs" ? "qs" : percentShown(percent)}`]
      : [],
  );
  return places.length < 2
    ? []
    : [`${is} then stands in the formula ${counted(places.length, "time", "times")}: ${inARow(places)}.`];
}
