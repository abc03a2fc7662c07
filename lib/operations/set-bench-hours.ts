import type { BenchMinutes } from "@/lib/domain/bench-hours";
import type { Books } from "@/lib/domain/desk";
import { onTheBooks } from "./on-the-books";
import { standing } from "./standing";

/** Minutes from Monday to Sunday, each at most those of a day; null for not said. */
export interface SetBenchHours {
  /** As they were shown. */
  readonly from: BenchMinutes | null;
  readonly to: BenchMinutes | null;
}

export type SetBenchHoursResult =
  /** `was` takes it back. */
  | { readonly kind: "set"; readonly was: BenchMinutes | null; readonly books: Books }
  | { readonly kind: "already so" }
  | { readonly kind: "stale"; readonly now: BenchMinutes | null };

/** Keeps the maker's hours at the bench. @rule BOOK-6 */
export const setBenchHours = (asked: SetBenchHours) => onTheBooks((books) => decideBenchHours(books, asked));

export function decideBenchHours({ workshop, desk }: Books, { from, to }: SetBenchHours): SetBenchHoursResult {
  const was = desk.benchMinutes;
  switch (standing(inShort(was), { from: inShort(from), to: inShort(to) })) {
    case "as asked":
      return { kind: "already so" };
    case "changed":
      return { kind: "stale", now: was };
    case "as drawn":
      return { kind: "set", was, books: { workshop, desk: { ...desk, benchMinutes: to } } };
  }
}

const inShort = (minutes: BenchMinutes | null): string | null => minutes && minutes.join(" ");
