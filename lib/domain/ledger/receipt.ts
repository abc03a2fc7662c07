/** What is known of a lot that came in a delivery, beside its entries. @rule ORDER-5 */
import type { MicroUnits } from "@/lib/domain/money";
import type { Day } from "@/lib/domain/calendar";
import type { Packs, Stock } from "@/lib/domain/quantity";

export interface Receipt {
  readonly lot: string;
  /** The delivery's. */
  readonly posting: string;
  /** Ids; each may be gone since, and null where it was not said. */
  readonly supplier: string | null;
  readonly offer: string | null;
  /** The line of an order that it came for, counted from 0. */
  readonly order: { readonly id: string; readonly line: number } | null;
  readonly packs: Packs;
  /** For the whole lot, before delivery and duty and without reclaimable tax. */
  readonly paid: MicroUnits;
}

/** A receipt with what its posting brought. */
export interface LotReceived extends Receipt {
  /** Null where the material was removed since. */
  readonly material: string | null;
  readonly day: Day;
  readonly quantity: Stock;
  /** What the lot cost with its shares of delivery and duty; costs that came later are not among it. */
  readonly landed: MicroUnits;
}
