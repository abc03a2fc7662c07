/** Taking a posting back: by another one that says the opposite. Both stay. @rule LEDGER-16 */
import type { Day } from "@/lib/domain/calendar";
import { quantity } from "@/lib/domain/quantity";
import { settled } from "./drawing";
import { type LotName, lotKey, type Moved, negated, type Place, placeKey, type Posted } from "./posting";
import type { Decided, Refusal } from "./refusal";
import type { Standing } from "./standing";

export interface Reversal {
  readonly key: string;
  readonly reverses: string;
  readonly day: Day;
  readonly today: Day;
  readonly reason: string;
}

export type ReversalResult =
  | Decided
  | { readonly kind: "no such posting" }
  | { readonly kind: "already reversed"; readonly by: Posted }
  /** A reversal is not reversed: what it took back is posted anew. */
  | { readonly kind: "is a reversal"; readonly posting: Posted }
  | { readonly kind: "before the posting"; readonly posting: Posted }
  /** What was there is gone: what has left since, latest first, must be taken back before, or posted otherwise. */
  | {
      readonly kind: "drawn since";
      readonly refusal: Extract<Refusal, { readonly kind: "not there" }>;
      readonly since: readonly DrawnSince[];
    };

export interface DrawnSince {
  readonly posting: Posted;
  readonly quantity: bigint;
}

/**
 * Decides on taking a posting back.
 * @param original  the posting, and the one that already reverses it
 * @param touching  the postings that touch a lot in a place, to name what was drawn since
 */
export function reverse(
  asked: Reversal,
  original: { readonly posting: Posted | null; readonly reversedBy: Posted | null },
  standing: Standing,
  touching: (lot: LotName, place: Place) => readonly Posted[],
): ReversalResult {
  const { posting, reversedBy } = original;
  if (!posting) return { kind: "no such posting" };
  if (reversedBy) return { kind: "already reversed", by: reversedBy };
  if (posting.kind === "reversal") return { kind: "is a reversal", posting };
  if (asked.day > asked.today) return { kind: "future day", day: asked.day, today: asked.today };
  if (asked.day < posting.day) return { kind: "before the posting", posting };
  const decided = settled(standing, {
    id: asked.key,
    kind: "reversal",
    day: asked.day,
    reason: asked.reason,
    reverses: posting.id,
    entries: posting.entries.map((entry) => ({
      ...entry,
      quantity: quantity<Moved>(-entry.quantity),
      value: negated(entry.value),
    })),
  });
  if (decided.kind !== "not there") return decided;
  return { kind: "drawn since", refusal: decided, since: drawnSince(decided, posting, touching) };
}

function drawnSince(
  { lot, place }: Extract<Refusal, { readonly kind: "not there" }>,
  posting: Posted,
  touching: (lot: LotName, place: Place) => readonly Posted[],
): readonly DrawnSince[] {
  const postings = touching(lot, place);
  const takenBack = new Set(postings.flatMap(({ reverses, id }) => (reverses === null ? [] : [reverses, id])));
  return postings
    .filter(
      ({ id, sequence, day }) =>
        !takenBack.has(id) && id !== posting.id && (sequence > posting.sequence || day > posting.day),
    )
    .map((each) => ({ posting: each, quantity: leaving(each, lot, place) }))
    .filter((each) => each.quantity > 0n)
    .sort((a, b) => b.posting.day - a.posting.day || b.posting.sequence - a.posting.sequence);
}

/** How much of the lot left the place with a posting. */
const leaving = ({ entries }: Posted, lot: LotName, place: Place): bigint =>
  entries
    .filter((entry) => lotKey(entry.lot) === lotKey(lot) && placeKey(entry.place) === placeKey(place))
    .reduce((sum, entry) => sum - entry.quantity, 0n);
