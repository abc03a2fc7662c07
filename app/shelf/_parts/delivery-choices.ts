/** What can be chosen in the form of a delivery: what is retired is not offered. */
import type { Choice } from "@/app/_ui/choice-filter";
import { type Desk, forNewWork } from "@/lib/domain/desk";
import type { Workshop } from "@/lib/domain/workshop";
import { namedChoices, offerChoices } from "@/lib/edge/record-choices";

export const deliveryChoices = (workshop: Workshop, desk: Desk): Readonly<Record<string, readonly Choice[]>> => ({
  offers: offerChoices(workshop, forNewWork(desk, "offers", workshop.offers)),
  materials: namedChoices(workshop, "materials", forNewWork(desk, "materials", workshop.materials)),
  suppliers: namedChoices(workshop, "suppliers", forNewWork(desk, "suppliers", workshop.suppliers)),
});
