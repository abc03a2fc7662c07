/** The size of a run as a person types it: `24`, `24 units`, `6 kg`, `5000 g`. @rule QTY-2, QTY-3 */
import { type Micrograms, readAmount, type Units } from "@/lib/domain/quantity";
import { type Outcome, units } from "@/lib/edge/fields";
import { amount } from "@/lib/edge/figure-fields";
import { readTypedAmount, readTypedWholeNumber } from "./typed-amount";
import { withoutEnds } from "./typed-number";

export type TypedRunSize =
  { readonly kind: "units"; readonly units: Units } | { readonly kind: "vessel"; readonly mass: Micrograms };

const aUnitCount = units(1);

/** A bare number counts units; a weight is what the vessel is to hold. */
export function readTypedRunSize(typed: string): Outcome<TypedRunSize> {
  if (withoutEnds(typed) === "") return { fault: "is needed; write units, as 24, or a weight, as 6 kg" };
  return /\p{L}/u.test(typed) ? readWithUnit(typed) : readUnits(typed);
}

function readUnits(typed: string): Outcome<TypedRunSize> {
  const count = readTypedWholeNumber(typed);
  if ("fault" in count) return count;
  const read = aUnitCount.safeParse(count.value);
  if (read.success) return { value: { kind: "units", units: read.data } };
  return {
    fault: count.value === 0 ? "must be at least 1 unit; remove the run where none is to be made" : firstIssue(read),
  };
}

function readWithUnit(typed: string): Outcome<TypedRunSize> {
  const written = readTypedAmount(typed);
  if ("fault" in written) return written;
  const [number = "", unit = ""] = written.value.split(" ");
  if (unit === "each") return readUnits(number);
  const read = amount.safeParse(written.value);
  if (!read.success) return { fault: firstIssue(read) };
  const mass = readAmount(read.data, "mass", null);
  if (mass.kind === "no density")
    return {
      fault: `${written.value} is a volume; write what the vessel holds as a weight, as 6 kg, or the units, as 24`,
    };
  if (mass.kind !== "read") return { fault: `${written.value} is too large` };
  if (mass.quantity === 0n) return { fault: "must be above zero" };
  return { value: { kind: "vessel", mass: mass.quantity as Micrograms } };
}

const firstIssue = (read: {
  readonly error?: { readonly issues: readonly { readonly message: string }[] } | undefined;
}) => read.error?.issues[0]?.message ?? "must be a size";
