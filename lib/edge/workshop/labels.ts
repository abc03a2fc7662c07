/** Labels and the papers they are printed on, as the file holds them. @rule FILE-5, LABEL-7, LABEL-9 */
import { compare, type Fraction, roundedUp, times, whole } from "@/lib/domain/fraction";
import { isGtin } from "@/lib/domain/label/gs1";
import { CODE_KINDS, type Label, LABEL_MARKETS } from "@/lib/domain/label/label";
import { fitsPage, type LabelPaper, overhang, PAGES } from "@/lib/domain/label/paper";
import { decimalValue, type DecimalText } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { id, name, note, oneOf, orElse, reference, textField, wholeNumber, yesOrNo } from "@/lib/edge/fields";
import { millimetres } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, indexById, readEntries, referredTo } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import type { ProductIndex } from "./products";

const WORDS = note(1000);
const gtin = textField("a number of GS1 in double quotes", (typed) =>
  isGtin(typed)
    ? { value: typed }
    : {
        fault: `${quoted(typed)} is no GTIN: 8, 12, 13 or 14 digits without spaces, the last of which checks the others`,
      },
);
const NO_GAP = "0" as DecimalText;

const LABEL = {
  id,
  product: reference("product"),
  market: oneOf(LABEL_MARKETS),
  title: orElse(name, null),
  function: orElse(name, null),
  cautions: orElse(WORDS, null),
  responsible: orElse(name, null),
  address: orElse(WORDS, null),
  contact: orElse(name, null),
  madeIn: orElse(name, null),
  monthsOpen: orElse(wholeNumber(1, 120), null),
  gtin: orElse(gtin, null),
  code: orElse(oneOf(CODE_KINDS), null),
  showsPh: orElse(yesOrNo, false),
  showsMade: orElse(yesOrNo, false),
};

const PAPER = {
  id,
  name,
  page: oneOf(PAGES),
  columns: wholeNumber(1, 100),
  rows: wholeNumber(1, 100),
  labelWidth: millimetres,
  labelHeight: millimetres,
  top: millimetres,
  left: millimetres,
  gapAcross: orElse(millimetres, NO_GAP),
  gapDown: orElse(millimetres, NO_GAP),
};

export function readLabels(
  list: readonly Json[] | undefined,
  products: ProductIndex,
  faults: FaultList,
): readonly Label[] {
  const entries = readEntries(list, LABEL, "labels", faults);
  indexById(list, entries, faults);
  return entries.flatMap(({ path, fields }): readonly Label[] => {
    referredTo(products, "product", fields.product, `${path}.product`, faults);
    const read = complete(fields);
    return read ? [read] : [];
  });
}

/** A paper whose labels are on its page. */
export function readPapers(list: readonly Json[] | undefined, faults: FaultList): readonly LabelPaper[] {
  const entries = readEntries(list, PAPER, "papers", faults);
  indexById(list, entries, faults);
  return entries.flatMap(({ path, fields }): readonly LabelPaper[] => {
    const read = complete(fields);
    if (read === undefined) return [];
    for (const side of ["labelWidth", "labelHeight"] as const) {
      if (decimalValue(read[side]).over === 0n) faults.tell(`${path}.${side}`, "must be above 0");
    }
    if (!fitsPage(read)) {
      const { across, down } = overhang(read);
      const isAcross = compare(across, whole(0n)) > 0;
      const over = isAcross ? `to the right by ${inMillimetres(across)}` : `below by ${inMillimetres(down)}`;
      faults.tell(
        `${path}.${isAcross ? "columns" : "rows"}`,
        `the labels go over the page ${over}; measure the sheet again`,
      );
    }
    return [read];
  });
}

/** To the next hundredth. */
function inMillimetres(length: Fraction): string {
  const hundredths = roundedUp(times(length, whole(100n)))
    .toString()
    .padStart(3, "0");
  return `${hundredths.slice(0, -2)}.${hundredths.slice(-2)} mm`;
}
