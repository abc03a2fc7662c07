import type { Day } from "./calendar";
import type { Plan } from "./plan-figures";
import type { Workshop } from "./workshop";

/**
 * The whole plan of a workshop: what each product costs, which runs can be made, and what becomes of every material.
 * @param today  the day to plan from: the workshop's own where it is set, else the real date, which the caller knows
 */
export function plan(workshop: Workshop, today: Day): Plan {
  throw new Error(`not written yet: ${workshop.settings.name} ${String(today)}`);
}
