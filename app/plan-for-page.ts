import "server-only";
import { cache } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { Desk } from "@/lib/domain/desk";
import { changedMaterials, type MaterialFigures } from "@/lib/domain/plan-changes";
import type { Prepared } from "@/lib/domain/plan";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { DEFAULT_NOTATION } from "@/lib/domain/notation";
import { writeIn } from "@/lib/edge/notation";
import { realToday } from "@/lib/edge/real-today";
import { readBooks } from "@/lib/store/books";
import { planOnce } from "./plans-kept";
import { shownBefore } from "./shown-before";

/** All that the app keeps, or null where no workshop is open; read once for one page, whose figures are written as it says. */
export const readOnce = cache(async () => {
  const books = await readBooks();
  writeIn(books?.desk.notation ?? DEFAULT_NOTATION);
  return books;
});

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
  /** The materials whose figures the last change altered, with what they were. */
  readonly materialsBefore: ReadonlyMap<string, MaterialFigures>;
}

interface Shown {
  readonly workshop: string;
  readonly today: Day;
  readonly figures: ReadonlyMap<string, MaterialFigures>;
}

/** Whatever page plans shows some of these figures, or leads to a change of them. */
const remembered = shownBefore<Shown>({
  areOfOne: (one, other) => one.workshop === other.workshop && one.today === other.today,
  differ: ({ figures: one }, { figures: other }) => one.size !== other.size || changedMaterials(one, other).size > 0,
});

/** The open workshop and its whole plan, worked out once for one page; null where none is open. */
export const planForPage: () => Promise<Planned | null> = cache(async () => {
  const books = await readOnce();
  if (books === null) return null;
  const { workshop, desk } = books;
  const today = workshop.settings.today ?? realToday();
  const { plan, prepared, figures } = planOnce(workshop, today, desk.batches);
  const before = remembered({ workshop: workshop.settings.name, today, figures });
  const materialsBefore = changedMaterials(before?.figures ?? new Map(), figures);
  return { workshop, desk, today, plan, prepared, materialsBefore };
});
