/** Why nothing is posted: closed, with the figures that a person needs to put it right. @rule LEDGER-8 */
import type { Day } from "@/lib/domain/calendar";
import type { LotName, Place, Posting } from "./posting";

export type Refusal =
  | { readonly kind: "future day"; readonly day: Day; readonly today: Day }
  | { readonly kind: "no such lot"; readonly lot: LotName }
  /** Dated before the lot was received or made. */
  | { readonly kind: "before the lot"; readonly lot: LotName; readonly day: Day; readonly since: Day }
  /** A lot, or an amount, of which nothing is asked; null where the whole form is empty. */
  | { readonly kind: "nothing to post"; readonly lot: LotName | null }
  | { readonly kind: "asked twice"; readonly lot: LotName }
  | {
      readonly kind: "not there";
      readonly lot: LotName;
      readonly place: Place;
      readonly asked: bigint;
      /** The most that can leave: what stands on the day on which there is least. */
      readonly there: bigint;
      /** The first day at whose end it would be missing. */
      readonly on: Day;
      /** What stands there at the end of the posting's own day, and what stands there now. */
      readonly onTheDay: bigint;
      readonly now: bigint;
      /** What is on hold of it now. */
      readonly held: bigint;
    }
  | { readonly kind: "out of date"; readonly lot: LotName; readonly expires: Day; readonly day: Day }
  /** A cost that was posted on a later day would be left without anything to belong to. */
  | { readonly kind: "cost came later"; readonly lot: LotName; readonly place: Place; readonly on: Day }
  /** Above what a figure may be. @rule QTY-6 */
  | { readonly kind: "out of range"; readonly lot: LotName };

/** What is known of a lot beside its balances. */
export interface LotRecord {
  /** Received, or made. */
  readonly since: Day;
  /** The last day of use. */
  readonly expires: Day | null;
  /** The material, or the product. */
  readonly item: string;
}

/** Null where there is no such lot. */
export type LotRecords = (lot: LotName) => LotRecord | null;

export type Decided<Told = unknown> = ({ readonly kind: "posted"; readonly posting: Posting } & Told) | Refusal;
