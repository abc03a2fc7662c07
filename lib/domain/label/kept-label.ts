/** A label as it was when its batch was released: everything that it takes to draw it again. @rule BENCH-9 */
import type { DecimalText } from "@/lib/domain/quantity";
import type { CodeContent } from "./gs1";
import type { CodeKind, LabelMarket } from "./label";

/** One of the things that stand on a label, in their order. */
export interface LabelPart {
  /** What it is called where it does not fit. */
  readonly called: string;
  readonly text: string;
  readonly isBold: boolean;
}

export interface KeptLabel {
  /** The id that it had in the Book. */
  readonly label: string;
  readonly market: LabelMarket;
  readonly parts: readonly LabelPart[];
  /** What is drawn beside the text; null where nothing is. */
  readonly code: (CodeContent & { readonly kind: CodeKind }) | null;
  /** Of one label of the first paper, which printing proposes, mm; null where no paper was measured yet. */
  readonly size: LabelSize | null;
}

export interface LabelSize {
  readonly width: DecimalText;
  readonly height: DecimalText;
}
