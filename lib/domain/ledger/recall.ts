/** Where all of a lot is now, line by line, as a recall asks for it, and how much of it is accounted for. @rule RECALL-1 */
import { type Fraction, ONE, ratio } from "@/lib/domain/fraction";
import { type LotName, type PlaceKind, type Posted } from "./posting";
import { latest, movesOf, standingAfter } from "./standing";
import type { IntoBatch, TraceForward } from "./trace";

export type RecallPlace =
  | PlaceKind
  /** Left in the vessel and in making, within plan. */
  | "lost within plan";

export interface RecallLine {
  /** The finished lot, or the lot of a material, that it went into; null where it is still as it came. */
  readonly into: LotName | null;
  /** The run whose batch took it. */
  readonly run: string | null;
  readonly place: RecallPlace;
  /** Finished units; null where it is in none. */
  readonly units: bigint | null;
  /** Of the lot that is called back: µg, pieces or units. */
  readonly holding: bigint;
}

export interface Recall {
  readonly lot: LotName;
  readonly came: bigint;
  readonly lines: readonly RecallLine[];
  readonly accounted: bigint;
  /** Accounted for ÷ came; all of it where nothing came. */
  readonly share: Fraction;
}

/** A lot of a material, through every batch that took of it. */
export function recallOfMaterial(lot: LotName, { came, places, batches }: TraceForward): Recall {
  const asItCame = places.map(({ place, quantity }) => line({ place, holding: quantity }));
  return recalled(lot, came, [...asItCame, ...batches.flatMap(linesOfBatch)]);
}

/** A finished lot. @param postings  all that touch it */
export function recallOfFinished(lot: LotName, postings: readonly Posted[]): Recall {
  const standing = standingAfter(movesOf(postings));
  const all = standing.placesOf(lot).map((place) => ({ place, quantity: latest(standing, lot, place).quantity }));
  const came = all.reduce((sum, { quantity }) => (quantity < 0n ? sum - quantity : sum), 0n);
  const lines = all
    .filter(({ quantity }) => quantity > 0n)
    .map(({ place, quantity }) => line({ place: place.kind, units: quantity, holding: quantity }));
  return recalled(lot, came, lines);
}

function linesOfBatch({ run, taken, lostWithinPlan, finished, through }: IntoBatch): readonly RecallLine[] {
  const inPlan = lostWithinPlan === 0n ? [] : [line({ run, place: "lost within plan", holding: lostWithinPlan })];
  if (through !== null) {
    const into: LotName = { of: "material", id: through.lot };
    const there = through.places.map(({ place, holding }) => line({ into, run, place, holding }));
    return [...there, ...through.batches.flatMap(linesOfBatch), ...inPlan];
  }
  if (finished === null) return [line({ run, place: "batch", holding: taken })];
  const into: LotName = { of: "finished", id: finished.lot };
  return [...finished.units.map((each) => line({ into, run, ...each })), ...inPlan];
}

const line = (given: Partial<RecallLine> & Pick<RecallLine, "place" | "holding">): RecallLine => ({
  into: null,
  run: null,
  units: null,
  ...given,
});

function recalled(lot: LotName, came: bigint, lines: readonly RecallLine[]): Recall {
  const accounted = lines.reduce((sum, { holding }) => sum + holding, 0n);
  return { lot, came, lines, accounted, share: came === 0n ? ONE : ratio(accounted, came) };
}
