/** What one version of a formula has otherwise than the one before, in words. @rule VERSION-1 */
import type { VersionChange } from "@/lib/domain/formula-book/version-changes";
import type { PartsPerMillion } from "@/lib/domain/quantity";
import type { FormulaLine } from "@/lib/domain/workshop";
import { percentShown } from "./figures";
import { NO_BREAK } from "./shown-digits";
import { decimalText } from "./written-figures";

type NameOf = (of: FormulaLine["of"]) => string;

const percent = (share: PartsPerMillion | "qs"): string => (share === "qs" ? "what is left" : percentShown(share));
const orNone = (text: string | null, unit = ""): string => (text === null ? "none" : `${text}${unit}`);
const DEGREES = `${NO_BREAK}°C`;

export function versionChangeInWords(change: VersionChange, nameOf: NameOf): string {
  switch (change.kind) {
    case "put in":
      return `${nameOf(change.line.of)} put in at ${percent(change.line.percent)}`;
    case "taken out":
      return `${nameOf(change.line.of)} taken out; it was ${percent(change.line.percent)}`;
    case "percent":
      return `${nameOf(change.of)}: ${percent(change.after)}; it was ${percent(change.before)}`;
    case "phase":
      return `${nameOf(change.of)}: phase ${orNone(change.after)}; it was ${orNone(change.before)}`;
    case "temperature":
      return `phase ${change.phase}: ${orNone(change.after, DEGREES)}; it was ${orNone(change.before, DEGREES)}`;
    case "fact":
      return factInWords(change);
    case "order of lines":
      return "lines in another order";
    case "phases":
      return "other phases, or in another order";
    case "steps":
      return "other steps";
    case "checks":
      return "other checks before release";
  }
}

const FACT_WORDS = {
  density: "density, g/mL",
  market: "market",
  use: "use",
  phFrom: "target pH from",
  phTo: "target pH to",
  keepsDays: "keeps, days",
} as const;

function factInWords({ fact, before, after }: Extract<VersionChange, { readonly kind: "fact" }>): string {
  const shown = (text: string | null): string =>
    text !== null && fact === "density" ? decimalText(BigInt(text), 6) : orNone(text);
  return `${FACT_WORDS[fact]}: ${shown(after)}; it was ${shown(before)}`;
}
