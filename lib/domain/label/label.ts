/** What a maker types for the label of a product, and the batch that it is printed for. @rule LABEL-1 */
import type { Day } from "@/lib/domain/calendar";
import type { DecimalText } from "@/lib/domain/quantity";

/** Each has its own list of what a label must say. */
export const LABEL_MARKETS = ["EU", "GB", "US"] as const;
export type LabelMarket = (typeof LABEL_MARKETS)[number];

/** How the batch code is drawn beside its text. */
export const CODE_KINDS = ["QR", "Code 128"] as const;
export type CodeKind = (typeof CODE_KINDS)[number];

/** A label of a product for one market. */
export interface Label {
  readonly id: string;
  readonly product: string;
  readonly market: LabelMarket;
  /** The name on the label; null for the product's own. */
  readonly title: string | null;
  /** What the product is for, as "Hand cream". */
  readonly function: string | null;
  readonly cautions: string | null;
  /** Who answers for the product, with the address. */
  readonly responsible: string | null;
  readonly address: string | null;
  /** A telephone number, an e-mail address or a page: where harm can be reported. */
  readonly contact: string | null;
  /** The country, where it is imported. */
  readonly madeIn: string | null;
  /** How long it can be used once opened. */
  readonly monthsOpen: number | null;
  /** Without spaces, its check digit right. @rule LABEL-7 */
  readonly gtin: string | null;
  readonly code: CodeKind | null;
  readonly showsPh: boolean;
  readonly showsMade: boolean;
}

/** The batch that labels are printed for. */
export interface LabelledBatch {
  readonly code: string;
  readonly madeOn: Day;
  readonly bestBefore: Day | null;
  /** As it was measured; null where it was not, and then the formula's target stands. */
  readonly ph: DecimalText | null;
}
