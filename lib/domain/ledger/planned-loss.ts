/** What a run's plan loses of each material, in quantity, and what its minutes cost. @rule LEDGER-11, LEDGER-12 */
import { dividedBy, type Fraction, plus, roundedHalfAway, roundedUp, times, whole } from "@/lib/domain/fraction";
import type { Composition } from "@/lib/domain/formula";
import type { MicroUnits } from "@/lib/domain/money";
import { type MaterialUse, roundedUpFor } from "@/lib/domain/needs";
import { type DecimalText, decimalValue, quantity, type Units } from "@/lib/domain/quantity";
import type { Product, Settings } from "@/lib/domain/workshop";

export interface PlannedLoss {
  readonly material: string;
  /** What the run needs: rounded up, as it is drawn. */
  readonly need: bigint;
  /** The part of the need that does not end up in or on a unit. */
  readonly ofNeed: bigint;
}

/**
 * Heel, process loss and spoilage of a run, material by material: its need less what its units hold.
 * @param uses         of the product
 * @param composition  of its formula
 */
export function plannedLosses(
  product: Product,
  uses: readonly MaterialUse[],
  composition: Composition,
  units: Units,
): readonly PlannedLoss[] {
  return uses.map(({ material, need }) => {
    const asked = roundedUpFor(need, units);
    const kept = roundedUp(heldByUnits(product, composition, material.id, units));
    return { material: material.id, need: asked, ofNeed: asked - kept };
  });
}

function heldByUnits(product: Product, composition: Composition, material: string, units: Units): Fraction {
  const filled = units * (product.fill.quantity + (product.overfill?.quantity ?? 0n));
  const share = composition.get(material);
  const packaging = product.packaging.filter((item) => item.material === material);
  const perRun = product.perRun.filter((item) => item.material === material);
  const counted =
    packaging.reduce((sum, { amount }) => sum + units * amount.quantity, 0n) +
    perRun.reduce((sum, { amount }) => sum + amount.quantity, 0n);
  return share === undefined ? whole(counted) : plus(times(whole(filled), share), whole(counted));
}

export interface TimeCost {
  readonly labour: MicroUnits;
  readonly overhead: MicroUnits;
}

/** What so many minutes cost, rounded half away from zero. @rule COST-2, MONEY-4 */
export function timeCost(minutes: Fraction, { labourPerHour, overheadPerHour }: Settings): TimeCost {
  const hours = dividedBy(minutes, whole(60n));
  const at = (rate: MicroUnits): MicroUnits => quantity<MicroUnits>(roundedHalfAway(times(hours, whole(rate))));
  return { labour: at(labourPerHour), overhead: at(overheadPerHour) };
}

/** The minutes that a run of so many units is planned to take. @rule BOOK-6 */
export const plannedMinutes = (
  {
    labourMinutesPerRun,
    labourMinutesPerUnit,
  }: { readonly labourMinutesPerRun: DecimalText; readonly labourMinutesPerUnit: DecimalText },
  units: Units,
): Fraction => plus(decimalValue(labourMinutesPerRun), times(whole(units), decimalValue(labourMinutesPerUnit)));
