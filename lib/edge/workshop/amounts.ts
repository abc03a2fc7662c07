/** Typed amounts as whole µg or pieces, with the sentence for each reason why one cannot be read. @rule QTY-1 to QTY-6 */
import {
  type Amount,
  type Density,
  decimalValue,
  type Measure,
  type Measured,
  readAmount,
  type Stock,
  UNITS,
} from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { quoted } from "@/lib/edge/shown-value";
import { amountText } from "@/lib/edge/written-figures";

/** What an amount is an amount of. Undefined where its own field was faulty: then it is not judged by it. */
export interface Subject {
  readonly measure: Measure | undefined;
  readonly density: Density | null | undefined;
  /** As `material "m1" (Oil)`. */
  readonly called: string;
}

/** Of a material or formula that could not be found. */
export const UNKNOWN_SUBJECT: Subject = { measure: undefined, density: undefined, called: "it" };

/** The amount with what it comes to, or undefined (and then the reason has been told, here or before). */
export function measured<Q extends Stock>(
  typed: Amount | undefined,
  subject: Subject,
  least: 0n | 1n,
  path: string,
  faults: FaultList,
): Measured<Q> | undefined {
  if (typed === undefined) return undefined;
  const measure = subject.measure ?? (typed.unit === "each" ? "count" : "mass");
  const reading = readAmount(typed, measure, subject.density ?? null);
  if (reading.kind === "read") {
    if (reading.quantity >= least) return { typed, quantity: reading.quantity as Q };
    faults.tell(path, tooLittle(typed, measure));
    return undefined;
  }
  if (reading.kind !== "no density" || subject.density === null) {
    faults.tell(path, unreadable(typed, reading.kind, subject));
  } else if (least > 0n && decimalValue(typed.number).over === 0n) {
    // No volume is no mass, whatever the density.
    faults.tell(path, tooLittle(typed, measure));
  }
  return undefined;
}

const tooLittle = (typed: Amount, measure: Measure): string =>
  `must be at least ${measure === "mass" ? "1 µg" : "1 piece"}, not ${amountText(typed)}`;

function unreadable(
  typed: Amount,
  why: "no density" | "wrong measure" | "not whole" | "out of range",
  { called }: Subject,
): string {
  const text = amountText(typed);
  switch (why) {
    case "no density":
      return `${text} is a volume, but ${called} has no density; write the amount by weight or enter the density`;
    case "wrong measure":
      return typed.unit === "each"
        ? `${text} counts pieces, but ${called} is measured by mass; write it by weight, as 250 g`
        : `${text} is a ${UNITS[typed.unit].kind}, but ${called} is counted; write whole pieces, as 12 each`;
    case "not whole":
      return `${text} is not a whole number of pieces`;
    case "out of range":
      return `${quoted(text)} is out of range (above 2^53-1 ${typed.unit === "each" ? "pieces" : "µg"})`;
  }
}
