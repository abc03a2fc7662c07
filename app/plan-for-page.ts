import "server-only";
import { cache } from "react";
import type { Day } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { realToday } from "@/lib/edge/real-today";
import { readWorkshop } from "@/lib/store/books";

/** The workshop that is open, or null; read once for one page. */
export const workshopForPage: () => Promise<Workshop | null> = cache(readWorkshop);

export interface Planned {
  readonly workshop: Workshop;
  /** The day that the workshop is set to, else the real one. */
  readonly today: Day;
  readonly plan: Plan;
}

/** The open workshop and its whole plan, worked out once for one page; null where none is open. */
export const planForPage: () => Promise<Planned | null> = cache(async () => {
  const workshop = await workshopForPage();
  if (workshop === null) return null;
  const today = workshop.settings.today ?? realToday();
  return { workshop, today, plan: plan(workshop, today) };
});
