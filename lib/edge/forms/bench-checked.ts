/** What was found of something that the formula asks to be looked at, as its form sends it. @rule BENCH-11 */
import { isWithin } from "@/lib/domain/bench/asked-checks";
import type { NoteMark, NoteOf } from "@/lib/domain/bench/batch";
import type { DecimalText } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { decimal as aDecimal } from "@/lib/edge/figure-fields";
import { readFigure, readFound } from "./bench-fields";
import { faultsOf, type Read, readNoteTyped, type SentForm } from "./posting-forms";
import { readTypedNumber, withoutEnds } from "./typed-number";
import { textIn } from "./week-forms";

type Checked = Omit<NoteOf<"checked">, keyof NoteMark | "kind">;

/**
 * What was found of something that the formula asks. A figure is held against the limits that the form carries; the
 * books hold it against their own once more. @rule BENCH-11
 */
export function readChecked(form: SentForm): Read<Checked> {
  const [what, asked] = [textIn(form, "what"), textIn(form, "asked")];
  const [from, to] = [limitIn(form, "from"), limitIn(form, "to")];
  const typed = textIn(form, "within");
  const isFigure = from !== null || to !== null;
  const isSaid = isFigure || typed === "yes" || typed === "no";
  const read = {
    found: isFigure ? readFigure(form, "found", readTypedNumber, aDecimal) : readSeen(form, typed === "yes"),
    within: isSaid ? { value: typed === "yes" } : { fault: "is needed: say whether it is as asked" },
    why: readNoteTyped(textIn(form, "why")),
  };
  const { found, within, why } = read;
  if ("fault" in found || "fault" in within || "fault" in why) return { faults: faultsOf(read) };
  const isAsAsked = isFigure ? isWithin({ from, to }, found.value as DecimalText) : within.value;
  if (!isAsAsked && why.value === null) return { faults: { why: outsideWords(found.value, asked) } };
  return { asked: { what, asked, found: found.value, within: isAsAsked, why: why.value } };
}

export const outsideWords = (found: string, asked: string): string =>
  `is needed: ${found} is not ${asked}. Look again, or say why it is kept`;

function limitIn(form: SentForm, field: "from" | "to"): DecimalText | null {
  const read = aDecimal.safeParse(textIn(form, field));
  return read.success ? read.data : null;
}

/** What is as asked needs no words of its own. */
function readSeen(form: SentForm, isAsAsked: boolean): Outcome<string> {
  const typed = withoutEnds(textIn(form, "found"));
  return typed === "" && isAsAsked ? { value: "as asked" } : readFound(form);
}
