/** What the live checks of a formula's form are made of: no more of the workshop than they look at. */
import type { Day } from "@/lib/domain/calendar";
import { roundedUp } from "@/lib/domain/fraction";
import { potsOn } from "@/lib/domain/formula-book/weigh-up-premixes";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { usualBatch } from "@/lib/edge/forms/batch-size";
import type { LiveChecked } from "./live-checks";

const HUNDRED_GRAMS = quantity<Micrograms>(100_000_000n);

/** @param formulaId  of the formula whose form it is; one that is not in the workshop yet has no usual batch */
export function checkedFrom(workshop: Workshop, today: Day, formulaId: string): LiveChecked {
  const product = workshop.products.find(({ formula }) => formula === formulaId) ?? null;
  const materials = workshop.materials.filter(({ measure }) => measure === "mass");
  const weighed = new Set(materials.map(({ id }) => id));
  const batch = product && quantity<Micrograms>(roundedUp(usualBatch(product).bulk));
  return {
    formulaId,
    formulas: workshop.formulas,
    materials,
    lots: workshop.lots.filter(({ material, remaining }) => weighed.has(material) && remaining > 0n),
    pots: potsOn(workshop, today),
    today,
    step: workshop.settings.balanceStep.quantity,
    batch,
    weighed: batch ?? HUNDRED_GRAMS,
  };
}
