import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { Lot } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { standing } from "./standing";

export interface SetToday {
  /** The day that was shown as set; null for the real date. */
  readonly from: Day | null;
  /** Null goes back to the real date. */
  readonly to: Day | null;
  readonly realToday: Day;
}

export type SetTodayResult =
  /** `was` takes it back. */
  | { readonly kind: "set"; readonly today: Day; readonly was: Day | null; readonly books: Books }
  | { readonly kind: "already so"; readonly today: Day }
  | { readonly kind: "stale"; readonly now: Day | null }
  /** Lots that would not have come yet on that day: what is on the shelf has come. */
  | { readonly kind: "lots come later"; readonly today: Day; readonly lots: readonly Lot[] };

/** Sets the day that the workshop plans from, or goes back to the real date. */
export const setToday = (asked: SetToday) => onTheBooks((books) => decideToday(books, asked));

export function decideToday({ workshop, desk }: Books, { from, to, realToday }: SetToday): SetTodayResult {
  const was = workshop.settings.today;
  const today = to ?? realToday;
  switch (standing(was, { from, to })) {
    case "as asked":
      return { kind: "already so", today };
    case "changed":
      return { kind: "stale", now: was };
    case "as drawn": {
      const lots = workshop.lots.filter(({ received }) => received > today);
      if (lots.length > 0) return { kind: "lots come later", today, lots };
      const settings = { ...workshop.settings, today: to };
      return { kind: "set", today, was, books: { workshop: { ...workshop, settings }, desk } };
    }
  }
}
