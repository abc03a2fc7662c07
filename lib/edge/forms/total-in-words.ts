/** What the lines of a formula come to, as a sentence beside them. @rule FORMULA-1 */
import type { FormulaResult, FormulaTotal } from "@/lib/domain/formula-total";
import { percentText } from "@/lib/edge/written-figures";

/** `97.5 % so far; 2.5 % is still missing`. */
export function totalInWords({ written, result }: FormulaTotal): string {
  const soFar = `${percentText(written)} %`;
  switch (result.kind) {
    case "whole":
      return "100 %, as it must be";
    case "qs takes the rest":
      return `${soFar} and qs, which takes the ${percentText(result.rest)} % that is left`;
    case "no lines":
      return "no lines yet; 100 % is still missing";
    case "short":
      return `${soFar} so far; ${percentText(result.by)} % is still missing`;
    case "over":
      return `${soFar}, which is ${percentText(result.by)} % too much`;
    case "nothing left for qs":
      return result.over === 0n
        ? `${soFar}, which leaves nothing for qs`
        : `${soFar}, which leaves nothing for qs and is ${percentText(result.over)} % too much`;
    case "several qs":
      return `${soFar}, and qs in ${String(result.lines.length)} lines; only one can take what is left`;
  }
}

/** The same without what is written so far: `2.5 % is missing`. */
export function resultInWords(result: FormulaResult): string {
  switch (result.kind) {
    case "whole":
    case "qs takes the rest":
      return "it adds up";
    case "no lines":
      return "there are no lines";
    case "short":
      return `${percentText(result.by)} % is missing`;
    case "over":
      return `it is ${percentText(result.by)} % too much`;
    case "nothing left for qs":
      return result.over === 0n
        ? "the other lines leave nothing for qs"
        : `the other lines leave nothing for qs and are ${percentText(result.over)} % too much`;
    case "several qs":
      return `qs stands in ${String(result.lines.length)} lines; only one can take what is left`;
  }
}
