/**
 * What finished lots cost, as the screens say it. A finished lot that was entered without its cost stands in the ledger
 * with no value at all: its cost is not known, and never reads as nothing.
 */
import { isNothing, type LotName, type Value } from "@/lib/domain/ledger/posting";
import { counted } from "./counted";

export const NOT_KNOWN = "not known";

/** So much of a lot, and what it cost. */
export interface Costed {
  readonly lot: Pick<LotName, "of">;
  readonly quantity: bigint;
  readonly value: Value;
}

/** A material may have been free; nothing that was made was. */
export const isCostKnown = ({ lot, quantity, value }: Costed): boolean =>
  lot.of === "material" || quantity === 0n || !isNothing(value);

/** How many lots a sum leaves out, because nobody knows what they cost. */
export const costsNotKnown = (lots: readonly Costed[]): number => lots.filter((lot) => !isCostKnown(lot)).length;

/** `three finished lots whose cost is not known`. */
export const lotsNotKnown = (lots: number): string =>
  `${counted(lots, "finished lot", "finished lots")} whose cost is ${NOT_KNOWN}`;
