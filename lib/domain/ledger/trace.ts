/** From a lot forward to what became of it, and from a finished lot back to suppliers. @rule LEDGER-20 */
import { byCodePoint } from "@/lib/domain/code-point-order";
import { finishedLot, type LotName, lotKey, type PlaceKind, type Posted, type Value } from "./posting";
import type { BatchUse } from "./late-cost";
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
  /** Null while the batch is open, and where it made a material. */
  readonly finished: { readonly lot: string; readonly units: readonly UnitsSomewhere[] } | null;
  /** Where it made a lot of a material, what became of that. @rule AHEAD-8 */
  readonly through: ThroughLot | null;
}

/** A lot of a material that holds some of the lot that is traced: shared over wherever it has gone, by quantity. */
export interface ThroughLot {
  readonly lot: string;
  readonly places: readonly (Whereabouts & { readonly holding: bigint })[];
  /** Taken and lost within plan, in what they hold of the lot that is traced. */
  readonly batches: readonly IntoBatch[];
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

/** @param postings  all that touch the lot, the batches it went into and the lots that came of them, and so on */
export function traceForward(postings: readonly Posted[], lot: LotName): TraceForward {
  const books = { standing: standingAfter(movesOf(postings)), uses: batchUses(postings) };
  const uses = usesOf(books, lot);
  const batches = uses.map((use) => intoBatch(books, use, use.taken, keptOf(books, use)));
  const all = whereverBeyondPlan(books, lot);
  const came = all.filter(({ quantity }) => quantity < 0n).reduce((sum, { quantity }) => sum - quantity, 0n);
  const places = all.filter(({ quantity }) => quantity > 0n);
  const gone = places.reduce((sum, { quantity }) => sum + quantity, 0n);
  return { came, places, batches, unaccounted: came - gone - uses.reduce((sum, { taken }) => sum + taken, 0n) };
}

interface Books {
  readonly standing: Standing;
  readonly uses: readonly BatchUse[];
}

const usesOf = ({ uses }: Books, lot: LotName): readonly BatchUse[] =>
  uses.filter((use) => lotKey(use.lot) === lotKey(lot)).sort((a, b) => byCodePoint(a.run, b.run));

const keptOf = ({ standing }: Books, { run, lot }: BatchUse): bigint =>
  latest(standing, lot, { kind: "batch", run }).quantity;

/** Everywhere but in batches; what left those within plan is counted with them. */
function whereverBeyondPlan(books: Books, lot: LotName): readonly Whereabouts[] {
  const withinPlan = usesOf(books, lot).reduce((sum, use) => sum + use.taken - keptOf(books, use), 0n);
  return wherever(books.standing, lot).map(({ place, quantity }) => ({
    place,
    quantity: quantity - (place === "lost" ? withinPlan : 0n),
  }));
}

/** @param taken  and `kept` of the lot that is traced */
function intoBatch(books: Books, { run, made }: BatchUse, taken: bigint, kept: bigint): IntoBatch {
  const finished =
    made?.of === "finished" ? { lot: made.id, units: unitsHolding(books.standing, made.id, kept) } : null;
  const through = made?.of === "material" ? throughLot(books, made, kept) : null;
  return { run, taken, lostWithinPlan: taken - kept, finished, through };
}

function throughLot(books: Books, lot: LotName, kept: bigint): ThroughLot {
  const places = whereverBeyondPlan(books, lot).filter(({ quantity }) => quantity > 0n);
  const uses = usesOf(books, lot);
  if (places.length + uses.length === 0) return { lot: lot.id, places: [], batches: [] };
  const shares = sharedOut(kept, [...places.map(({ quantity }) => quantity), ...uses.map(({ taken }) => taken)]);
  const batches = uses.map((use, at) => {
    const holding = shares[places.length + at] ?? 0n;
    return intoBatch(books, use, holding, (holding * keptOf(books, use)) / use.taken);
  });
  return { lot: lot.id, places: places.map((each, at) => ({ ...each, holding: shares[at] ?? 0n })), batches };
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
  const uses = batchUses(postings).filter(({ made }) => made !== null && lotKey(made) === lotKey(lot));
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
