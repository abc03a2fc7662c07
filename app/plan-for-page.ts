import "server-only";
import { cache } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { Desk } from "@/lib/domain/desk";
import { plan, type Prepared, preparedFor } from "@/lib/domain/plan";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { realToday } from "@/lib/edge/real-today";
import { readBooks } from "@/lib/store/books";

/** All that the app keeps, or null where no workshop is open; read once for one page. */
export const readOnce = cache(readBooks);

/** The workshop that is open, or null. */
export const workshopForPage = async (): Promise<Workshop | null> => (await readOnce())?.workshop ?? null;

export interface Planned {
  readonly workshop: Workshop;
  readonly desk: Desk;
  /** The day that the workshop is set to, else the real one. */
  readonly today: Day;
  readonly plan: Plan;
  /** What the plan was judged from. */
  readonly prepared: Prepared;
}

/** The open workshop and its whole plan, worked out once for one page; null where none is open. */
export const planForPage: () => Promise<Planned | null> = cache(async () => {
  const books = await readOnce();
  if (books === null) return null;
  const { workshop, desk } = books;
  const today = workshop.settings.today ?? realToday();
  const prepared = preparedFor(workshop, today);
  return { workshop, desk, today, plan: plan(workshop, today, prepared), prepared };
});
