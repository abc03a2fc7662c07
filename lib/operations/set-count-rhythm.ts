import type { Books } from "@/lib/domain/desk";
import { type Rhythm, rhythmOf } from "@/lib/domain/ledger/counts-due";
import { onTheBooks } from "./on-the-books";
import { standing } from "./standing";

export interface SetCountRhythm {
  readonly material: string;
  /** As it was shown. */
  readonly from: Rhythm;
  readonly to: Rhythm;
}

export type SetCountRhythmResult =
  | { readonly kind: "set"; readonly books: Books }
  | { readonly kind: "already so" }
  | { readonly kind: "stale"; readonly now: Rhythm }
  | { readonly kind: "no such material" };

/** Keeps how often a material is counted. @rule LEDGER-25 */
export const setCountRhythm = (asked: SetCountRhythm) => onTheBooks((books) => decideCountRhythm(books, asked));

export function decideCountRhythm({ workshop, desk }: Books, asked: SetCountRhythm): SetCountRhythmResult {
  const { material, from, to } = asked;
  if (!workshop.materials.some(({ id }) => id === material)) return { kind: "no such material" };
  const now = rhythmOf(desk.countRhythms, material);
  switch (standing(inShort(now), { from: inShort(from), to: inShort(to) })) {
    case "as asked":
      return { kind: "already so" };
    case "changed":
      return { kind: "stale", now };
    case "as drawn": {
      const others = desk.countRhythms.filter((each) => each.material !== material);
      const countRhythms = to === null ? others : [...others, { material, ...to }];
      return { kind: "set", books: { workshop, desk: { ...desk, countRhythms } } };
    }
  }
}

const inShort = (rhythm: Rhythm): string => (rhythm === null ? "" : `${String(rhythm.days)} ${String(rhythm.draws)}`);
