/** What stands on a label, part by part, in the order in which it is printed. @rule LABEL-1 to LABEL-5 */
import { isoDate } from "@/lib/domain/calendar";
import type { Day } from "@/lib/domain/calendar";
import type { LabelMarket } from "@/lib/domain/label/label";
import type { LabelDraft, PhRange } from "@/lib/domain/label/label-draft";
import type { ContentFigure, NetContent } from "@/lib/domain/label/net-content";
import type { LabelPart } from "./kept-label";

/** Holds a figure and its unit, and the parts of a date, on one line. */
const NO_BREAK = "\u00a0";

/** Parts that have nothing to say are left out. */
export function labelParts(draft: LabelDraft): readonly LabelPart[] {
  const who = [draft.responsible, draft.address, draft.contact, draft.madeIn && `Made in ${draft.madeIn}`];
  const of = [draft.made && `Made ${isoDate(draft.made)}`, draft.ph && phShown(draft.ph)];
  const parts: readonly (readonly [string, string, boolean])[] = [
    ["the name", draft.title, true],
    ["what it is for", draft.function ?? "", false],
    ["the content", contentShown(draft.net), true],
    ["the ingredients", ingredientsShown(draft), false],
    ["the cautions", draft.cautions ?? "", false],
    ["how long it keeps", durabilityShown(draft), false],
    // On a line of its own: it is what is looked for in a recall.
    ["the batch", draft.batchCode === null ? "" : `Batch ${draft.batchCode}`, false],
    ["the day it was made and the pH", joined(of, ". "), false],
    ["who is responsible", joined(who, ", "), false],
  ];
  return parts
    .map(([called, text, isBold]) => ({ called, text: text.replace(/\s*\n\s*/g, " "), isBold }))
    .filter(({ text }) => text !== "");
}

const joined = (words: readonly (string | null)[], by: string): string => words.filter((word) => word).join(by);

const figureShown = ({ number, unit }: ContentFigure): string => `${number}${NO_BREAK}${unit}`;

/** `100 g`, or in the United States `Net Wt 24 oz (1.5 lb) 680 g`. */
export function contentShown({ metric, customary, larger, by }: NetContent): string {
  if (customary === null) return figureShown(metric);
  const inBrackets = larger === null ? "" : ` (${figureShown(larger)})`;
  return `${by === "weight" ? "Net Wt" : "Net"} ${figureShown(customary)}${inBrackets}, ${figureShown(metric)}`;
}

/** Capitals in the United States, so that every letter is as high as a small label lets it be. */
function ingredientsShown({ ingredients: { listed }, market }: LabelDraft): string {
  if (listed.length === 0) return "";
  const names = listed.map(({ inci }) => inci).join(", ");
  return `Ingredients: ${market === "US" ? names.toUpperCase() : names}.`;
}

function durabilityShown({ durability, monthsOpen, market }: LabelDraft): string {
  const open = monthsOpen === null ? null : `${String(monthsOpen)}M after opening`;
  const day = durability.kind === "best before" ? `${BEFORE_THE_DAY[market]} ${dayInOrder(durability.day)}` : null;
  return joined([day, open], ". ");
}

/** The words of Regulation (EC) 1223/2009, Article 19(1)(c), read in a summary; the United States ask for no day. */
const BEFORE_THE_DAY: Readonly<Record<LabelMarket, string>> = {
  EU: "Best used before the end of",
  GB: "Best used before the end of",
  US: "Best before",
};

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** Day, month and year, in that order, as Article 19(1)(c) has it; the month in letters, so that nobody takes it for the day. */
function dayInOrder(day: Day): string {
  const [year = "", month = "", dayOfMonth = ""] = isoDate(day).split("-");
  return [dayOfMonth, MONTHS[Number(month) - 1], year].join(NO_BREAK);
}

function phShown({ from, to }: PhRange): string {
  if (from === to || to === null) return `pH ${from ?? ""}`;
  return from === null ? `pH up to ${to}` : `pH ${from}–${to}`;
}
