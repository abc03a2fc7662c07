/** How much of a lot is meant, as a person types it: `250`, `0.25 kg`, `12 pieces`. @rule QTY-2, QTY-3 */
import { decimalTyped } from "@/lib/edge/notation";
import { type Measure, readAmount } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { amount } from "@/lib/edge/figure-fields";
import { decimalText } from "@/lib/edge/written-figures";
import { readTypedAmount } from "./typed-amount";
import { withoutEnds } from "./typed-number";

/** The unit of a bare number, by what is measured. */
const UNIT_OF = { mass: "g", count: "each" } as const;

/**
 * A bare number is in grams, or counts pieces.
 * @returns µg or pieces; null where nothing is written
 */
export function readTypedStock(typed: string, measure: Measure): Outcome<bigint | null> {
  const text = withoutEnds(typed);
  if (text === "") return { value: null };
  const written = readTypedAmount(/\p{L}/u.test(text) ? text : `${text} ${UNIT_OF[measure]}`);
  if ("fault" in written) return written;
  const read = amount.safeParse(written.value);
  if (!read.success) return { fault: read.error.issues[0]?.message ?? "must be an amount" };
  const held = readAmount(read.data, measure, null);
  switch (held.kind) {
    case "read":
      return { value: held.quantity };
    case "no density":
      return { fault: `${written.value} is a volume; write what the balance shows, as 250 g` };
    case "wrong measure":
      return {
        fault: measure === "mass" ? "is weighed; write a weight, as 250 g" : "is counted; write a whole number, as 12",
      };
    case "not whole":
      return { fault: "must be a whole number, as 12" };
    case "out of range":
      return { fault: `${written.value} is too large` };
  }
}

/** What a lot gives, as its field shows it: all decimals, without unit and grouping. */
export const stockAsTyped = (held: bigint, measure: Measure): string =>
  decimalTyped(decimalText(held, measure === "mass" ? 6 : 0));
