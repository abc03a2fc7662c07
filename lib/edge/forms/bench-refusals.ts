/** Why something was not written down at the bench, at its field or above it. @rule BENCH-3 to BENCH-8 */
import type { BatchState, SheetLine } from "@/lib/domain/bench/batch";
import type { NoteRefused } from "@/lib/domain/bench/refused-note";
import { type Judged, judged } from "@/lib/domain/bench/weights";
import type { Refusal } from "@/lib/domain/ledger/refusal";
import type { ReversalResult } from "@/lib/domain/ledger/reverse";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { offInWords, tenfoldInWords } from "@/lib/edge/bench-weights";
import { askedInWords } from "@/lib/edge/bench-words";
import { clockShown } from "@/lib/edge/clock-shown";
import { inARow } from "@/lib/edge/counted";
import { massInFull, stockInFull } from "@/lib/edge/figures";
import { outsideWords } from "./bench-checked";
import type { Faults } from "./posting-forms";
import { refusalWords } from "./refusal-words";

export interface NoteAnswer {
  readonly faults: Faults;
  readonly says: string | null;
}

const above = (says: string): NoteAnswer => ({ faults: {}, says });
const at = (field: string, fault: string): NoteAnswer => ({ faults: { [field]: fault }, says: null });

type Told =
  | NoteRefused
  | Refusal
  | Exclude<ReversalResult, { readonly kind: "posted" }>
  | { readonly kind: "code taken"; readonly code: string; readonly next: string | null }
  | { readonly kind: "no such batch" | "no workshop" | "finished lot exists" | "not finished" };

/** What the form of a note is told, and at which field. */
export function noteRefused(told: Told): NoteAnswer {
  switch (told.kind) {
    case "not now":
      return above(`The batch is ${STATES[told.state]}: nothing of this kind is written down in it any more.`);
    case "no such line":
    case "no such batch":
      return above("There is no such batch or line any more. Load the page again.");
    case "no workshop":
      return above("No workshop is open any more. Open one on the first page.");
    case "lot is needed":
      return at("lot", "is needed: tap the lot that you weigh from, or scan it");
    case "lot of another material":
      return at("lot", `${told.lot} is a lot of ${told.is}; this line is ${told.wanted}`);
    case "weighed already":
      return above(
        `${told.line.called}: ${massInFull(told.by.net)} was written down at ${timeOf(told.by.at)} by ${told.by.who} meanwhile. Look at it, then weigh what is still missing, or strike it.`,
      );
    case "out of tolerance":
      return at("why", offWords(told.line, told.judged));
    case "no such note":
      return above("There is no such note any more. Load the page again.");
    case "struck already":
      return above("That was struck already; nothing more was changed.");
    case "lines not weighed":
    case "more than was weighed":
    case "not checked":
    case "no such check":
    case "not a figure":
    case "outside its limits":
      return asked(told);
    case "reason is needed":
      return at("why", "is needed; say why, in a few words");
    case "code taken":
      return at("code", codeTaken(told));
    case "finished lot exists":
      return above(
        "Another lot has this code, though it may be on no list any more. Give the batch another code below, and say why; then close it.",
      );
    case "not finished":
      return above("It was judged otherwise meanwhile. Load the page again.");
    case "no such posting":
    case "is a reversal":
    case "already reversed":
    case "before the posting":
    case "drawn since":
      return above("It was posted otherwise meanwhile. Load the page again.");
    case "future day":
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "not there":
    case "out of date":
    case "cost came later":
    case "out of range":
      return placed(told);
  }
}

type Asked = Extract<
  NoteRefused,
  {
    readonly kind:
      | "lines not weighed"
      | "more than was weighed"
      | "not checked"
      | "no such check"
      | "not a figure"
      | "outside its limits";
  }
>;

/** What closing asks about, each at a field of its own, and what a check asks. @rule BENCH-7, BENCH-11 */
function asked(told: Asked): NoteAnswer {
  switch (told.kind) {
    case "lines not weighed":
      return at("whyNotWeighed", `is needed: ${inARow(told.lines.map(({ called }) => called))} not weighed to the end`);
    case "more than was weighed":
      return at(
        "whyMoreFilled",
        `is needed: so many units hold ${massInFull(told.holds)} with what was left over, and ${massInFull(told.weighed)} was weighed`,
      );
    case "not checked":
      return at(
        "whyNotChecked",
        `is needed: nobody has looked at ${inARow(told.checks.map((check) => `${check.what} (${askedInWords(check)})`))} yet; write down what is found, or say why not`,
      );
    case "no such check":
      return above("The formula asks for no such check any more. Load the page again.");
    case "not a figure":
      return at("found", `must be a figure, ${askedInWords(told.check)}`);
    case "outside its limits":
      return at("why", outsideWords(told.found, askedInWords(told.check)));
  }
}

/** What a code that names something already is told. @rule BENCH-2, BENCH-10 */
export const codeTaken = ({ code, next }: { readonly code: string; readonly next: string | null }): string =>
  `${code} names another batch or lot already, perhaps one that is on no list any more${next === null ? "" : `; ${next} is free`}`;

function placed(told: Refusal): NoteAnswer {
  if (told.kind === "out of date")
    return at(
      "why",
      `is needed: ${refusalWords(told, shown).words}. Whether it may still be used is for its supplier and local rules to say`,
    );
  if (told.kind === "no such lot") return at("lot", `there is no lot ${told.lot.id} on the shelf`);
  const { at: place, words } = refusalWords(told, shown);
  return place === "lot" ? at("weight", words) : above(words);
}

/** The clock of the day on which it was written. */
const timeOf = (moment: string): string => clockShown(new Date(moment), new Date(moment));

const shown = (_lot: unknown, amount: bigint): string => stockInFull(amount, "mass");

const STATES: Readonly<Record<BatchState, string>> = {
  open: "open",
  held: "closed and waits for a second look",
  released: "released",
  rejected: "rejected",
  "given up": "given up",
};

/** What is asked where a weight is outside the tolerance. */
export function offWords({ target, tolerance }: SheetLine, judgement: Judged): string {
  const by = `${offInWords(judgement.off, tolerance, IN_FULL)} at a target of ${massInFull(target)}.`;
  const tenfold = tenfoldInWords(judgement, IN_FULL);
  return ["is needed:", by, tenfold, "Weigh again, or say why it is kept"].filter((words) => words !== null).join(" ");
}

/** The step of the balance is not known here: every decimal that there is, and no other. */
const IN_FULL = 0;

/** What a device asks by itself before it sends a weight; null where nothing is asked. */
export function askedOfWeight(
  line: SheetLine,
  already: bigint,
  weight: { readonly net: Stock; readonly more: boolean; readonly why: string | null },
): NoteAnswer | null {
  const after = judged(line, quantity<Stock>(already), weight.net);
  const isShort = weight.more && after.off <= 0n;
  return after.within || isShort || weight.why !== null ? null : at("why", offWords(line, after));
}
