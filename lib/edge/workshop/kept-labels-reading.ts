/** Labels that were kept when a batch was released, as the past in the file holds them. @rule FILE-5, BENCH-9 */
import type { KeptLabel, LabelPart } from "@/lib/domain/label/kept-label";
import { CODE_KINDS, LABEL_MARKETS } from "@/lib/domain/label/label";
import type { FaultList } from "@/lib/edge/fault-list";
import { id, name, note, oneOf, orElse, yesOrNo } from "@/lib/edge/fields";
import { millimetres } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, readEntries, records } from "@/lib/edge/record-reading";

/** More than any label holds. */
const LONGEST_PART = 1_000_000;

const KEPT = {
  label: id,
  market: oneOf(LABEL_MARKETS),
  code: orElse(oneOf(CODE_KINDS), null),
  codeText: orElse(note(1000), null),
  gs1: orElse(yesOrNo, false),
  width: orElse(millimetres, null),
  height: orElse(millimetres, null),
  parts: records,
};
const PART = { called: name, text: note(LONGEST_PART), bold: orElse(yesOrNo, false) };

export const readKeptLabels = (list: readonly Json[], path: string, faults: FaultList): readonly KeptLabel[] =>
  readEntries(list, KEPT, path, faults).flatMap(({ path: at, fields }): readonly KeptLabel[] => {
    const read = complete(fields);
    if (!read) return [];
    const { label, market, code, codeText, gs1, width, height } = read;
    if ((code === null) !== (codeText === null))
      faults.tell(`${at}.codeText`, "is what the code holds: it is there where the label has a code, and only there");
    if ((width === null) !== (height === null)) faults.tell(`${at}.height`, "a size is a width and a height");
    return [
      {
        label,
        market,
        parts: readParts(read.parts, `${at}.parts`, faults),
        code: code === null || codeText === null ? null : { text: codeText, isGs1: gs1, kind: code },
        size: width === null || height === null ? null : { width, height },
      },
    ];
  });

const readParts = (list: readonly Json[], path: string, faults: FaultList): readonly LabelPart[] =>
  readEntries(list, PART, path, faults).flatMap(({ fields }): readonly LabelPart[] => {
    const read = complete(fields);
    return read ? [{ called: read.called, text: read.text, isBold: read.bold }] : [];
  });
