/** Which batch, on which paper, from which label on and how many: read from the address of a label's page. @rule LABEL-9 */
import { type LabelPaper, labelsOnASheet } from "@/lib/domain/label/paper";
import { readTypedWholeNumber } from "./typed-amount";

export interface LabelAsked {
  readonly startAt: number;
  readonly count: number;
  readonly faults: { readonly from: string | null; readonly count: string | null };
}

const MOST_SHEETS = 20;

/** What cannot be read is told, and stands at one sheet from the first label on. */
export function readLabelAsked(from: string, count: string, paper: LabelPaper): LabelAsked {
  const onOne = labelsOnASheet(paper);
  const most = onOne * MOST_SHEETS;
  const start = wholeIn(from, 1, onOne, `is no label of this sheet: it has ${String(onOne)}`);
  const left = start.value === null ? onOne : onOne - start.value + 1;
  const many = wholeIn(count, 1, most, `is out of range 1 to ${String(most)}, which is ${String(MOST_SHEETS)} sheets`);
  return {
    startAt: start.value ?? 1,
    count: many.value ?? left,
    faults: { from: start.fault, count: many.fault },
  };
}

interface Read {
  readonly value: number | null;
  readonly fault: string | null;
}

function wholeIn(typed: string, least: number, most: number, outside: string): Read {
  if (typed.trim() === "") return { value: null, fault: null };
  const read = readTypedWholeNumber(typed);
  if ("fault" in read) return { value: null, fault: read.fault };
  const { value } = read;
  return value >= least && value <= most ? { value, fault: null } : { value: null, fault: `${typed} ${outside}` };
}
