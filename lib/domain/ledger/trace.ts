/** From a lot forward to what became of it, and from a finished lot back to suppliers. @rule LEDGER-20 */
import { byCodePoint } from "@/lib/domain/code-point-order";
import { finishedLot, type LotName, lotKey, type PlaceKind, type Posted, type Value } from "./posting";
import { sharedOut } from "./sharing";
import { latest, movesOf, type Standing, standingAfter } from "./standing";
import { batchUses, standingPostings } from "./standing-postings";

/** Where some of a lot is now. */
export interface Whereabouts {
  readonly place: PlaceKind;
  readonly quantity: bigint;
}

export interface IntoBatch {
  readonly run: string;
  /** What the batch took of the lot. */
  readonly taken: bigint;
  /** What left it within plan. */
  readonly lostWithinPlan: bigint;
  /** Null while the batch is open. */
  readonly finished: { readonly lot: string; readonly units: readonly UnitsSomewhere[] } | null;
}

export interface UnitsSomewhere {
  readonly place: PlaceKind;
  readonly units: bigint;
  /** What these units hold of the lot that is traced: shared by units, to the last µg. */
  readonly holding: bigint;
}

export interface TraceForward {
  /** What came in: from the supplier, and what a count found over. */
  readonly came: bigint;
  /** In the house, and gone otherwise than through a batch. */
  readonly places: readonly Whereabouts[];
  readonly batches: readonly IntoBatch[];
  /** What came less all of the above: nothing, on healthy books. */
  readonly unaccounted: bigint;
}

/** @param postings  all that touch the lot, the batches it went into and the finished lots that came of them */
export function traceForward(postings: readonly Posted[], lot: LotName): TraceForward {
  const standing = standingAfter(movesOf(postings));
  const uses = batchUses(postings).filter((use) => lotKey(use.lot) === lotKey(lot));
  const batches = uses
    .toSorted((a, b) => byCodePoint(a.run, b.run))
    .map(({ run, taken, finished }): IntoBatch => {
      const kept = latest(standing, lot, { kind: "batch", run }).quantity;
      const made = finished === null ? null : { lot: finished, units: unitsHolding(standing, finished, kept) };
      return { run, taken, lostWithinPlan: taken - kept, finished: made };
    });
  const withinPlan = batches.reduce((sum, { lostWithinPlan }) => sum + lostWithinPlan, 0n);
  const all = wherever(standing, lot).map(({ place, quantity }) => ({
    place,
    quantity: quantity - (place === "lost" ? withinPlan : 0n),
  }));
  const came = all.filter(({ quantity }) => quantity < 0n).reduce((sum, { quantity }) => sum - quantity, 0n);
  const places = all.filter(({ quantity }) => quantity > 0n);
  const gone = places.reduce((sum, { quantity }) => sum + quantity, 0n);
  return { came, places, batches, unaccounted: came - gone - uses.reduce((sum, { taken }) => sum + taken, 0n) };
}

/** Every place that holds some of a lot, its batches apart; below zero where it came from. */
function wherever(standing: Standing, lot: LotName): readonly Whereabouts[] {
  return standing
    .placesOf(lot)
    .filter((place) => place.kind !== "batch")
    .map((place) => ({ place: place.kind, quantity: latest(standing, lot, place).quantity }))
    .filter(({ quantity }) => quantity !== 0n)
    .sort((a, b) => byCodePoint(a.place, b.place));
}

function unitsHolding(standing: Standing, made: string, kept: bigint): readonly UnitsSomewhere[] {
  const places = wherever(standing, finishedLot(made)).filter(({ quantity }) => quantity > 0n);
  if (places.length === 0) return [];
  const shares = sharedOut(
    kept,
    places.map(({ quantity }) => quantity),
  );
  return places.map(({ place, quantity }, at) => ({ place, units: quantity, holding: shares[at] ?? 0n }));
}

export interface TraceBack {
  readonly lot: string;
  readonly runs: readonly string[];
  /** What the batches took, by lot, with what it was worth then, late costs with it. */
  readonly from: readonly Source[];
  readonly units: readonly Whereabouts[];
}

export interface Source {
  readonly run: string;
  readonly lot: LotName;
  readonly taken: bigint;
  readonly value: Value;
  /** The posting with which the lot came in: a delivery, or the opening of the books. */
  readonly cameWith: Posted | null;
}

/** @param postings  all that touch the finished lot, its batches and the lots that went into them */
export function traceBack(postings: readonly Posted[], finished: string): TraceBack {
  const standing = standingAfter(movesOf(postings));
  const lot = finishedLot(finished);
  const counting = standingPostings(postings);
  const uses = batchUses(postings).filter((use) => use.finished === finished);
  const cameWith = (of: LotName): Posted | null =>
    counting.find(({ entries }) =>
      entries.some(
        (entry) => entry.place.kind === "supplier" && entry.quantity < 0n && lotKey(entry.lot) === lotKey(of),
      ),
    ) ?? null;
  return {
    lot: finished,
    runs: [...new Set(uses.map(({ run }) => run))].sort(byCodePoint),
    from: uses
      .toSorted((a, b) => byCodePoint(a.run, b.run) || byCodePoint(a.lot.id, b.lot.id))
      .map(({ run, lot: of, taken }) => ({
        run,
        lot: of,
        taken,
        value: latest(standing, of, { kind: "batch", run }).value,
        cameWith: cameWith(of),
      })),
    units: wherever(standing, lot).filter(({ quantity }) => quantity > 0n),
  };
}
