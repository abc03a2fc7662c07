/**
 * A cost that comes after the goods: a freight bill, a corrected invoice, a credit. It moves no quantity; its value is
 * shared over wherever the lot has gone. @rule LEDGER-10
 */
import type { Day } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import { refusedFirst, settled } from "./drawing";
import {
  at,
  batchOf,
  type Entry,
  type LotName,
  lotKey,
  moving,
  ofMaterials,
  type Place,
  placeKey,
  type Posting,
} from "./posting";
import type { Decided, LotRecords, Refusal } from "./refusal";
import { sharedMoney } from "./sharing";
import { latest, type Standing } from "./standing";

export interface LateCost {
  readonly key: string;
  readonly day: Day;
  readonly today: Day;
  readonly reason: string;
  /** Below zero for a credit. Without reclaimable tax. */
  readonly lines: readonly { readonly lot: LotName; readonly amount: MicroUnits }[];
}

/** What a run's batch took of a lot, and the lot that came of it; null while the batch is open. */
export interface BatchUse {
  readonly run: string;
  readonly lot: LotName;
  readonly taken: bigint;
  readonly made: LotName | null;
}

export type LateCostResult = Decided | { readonly kind: "lot is nowhere"; readonly lot: LotName };

/**
 * Decides on a late cost. What went into a batch passes on to the finished lot that came of it, wherever its units are.
 * Quantity that left within plan carries no value: its part falls to what came out of the batch.
 * @param uses  every batch that took of these lots
 * @param coin  the smallest coin of the currency, in micro-units
 */
export function lateCost(
  asked: LateCost,
  standing: Standing,
  uses: readonly BatchUse[],
  records: LotRecords,
  coin: bigint,
): LateCostResult {
  const lots = asked.lines.map(({ lot }) => lot);
  const refusal = refusedFirst(asked, lots, records) ?? emptyLine(asked);
  if (refusal) return refusal;
  const entries: Entry[] = [];
  for (const { lot, amount } of asked.lines) {
    const shared = sharedOver({ standing, uses, coin }, lot, amount, at("supplier"));
    if (shared.length === 0) return { kind: "lot is nowhere", lot };
    entries.push(...shared);
  }
  const { key: id, day, reason } = asked;
  const posting: Posting = { id, kind: "late cost", day, reason, reverses: null, entries };
  return settled(standing, posting);
}

function emptyLine({ lines }: LateCost): Refusal | null {
  const empty = lines.find(({ amount }) => amount === 0n);
  if (lines.length === 0 || empty) return { kind: "nothing to post", lot: empty?.lot ?? null };
  const keys = lines.map(({ lot }) => lotKey(lot));
  const twice = lines.find(({ lot }, at) => keys.indexOf(lotKey(lot)) !== at);
  return twice ? { kind: "asked twice", lot: twice.lot } : null;
}

interface Target {
  readonly place: Place;
  readonly weight: bigint;
  readonly batch: BatchUse | null;
}

/** Where a lot has gone, with how much of it. What a batch gave off within plan still counts for the batch. */
function targetsOf(standing: Standing, lot: LotName, uses: readonly BatchUse[]): readonly Target[] {
  const own = uses.filter((use) => lotKey(use.lot) === lotKey(lot) && use.taken > 0n);
  const withinPlan = own.reduce(
    (sum, { run, taken }) => sum + taken - latest(standing, lot, batchOf(run)).quantity,
    0n,
  );
  const places = standing
    .placesOf(lot)
    .filter(({ kind }) => kind !== "batch" && kind !== "supplier")
    .map((place) => ({
      place,
      weight: latest(standing, lot, place).quantity - (place.kind === "lost" ? withinPlan : 0n),
      batch: null,
    }));
  const batches = own.map((batch) => ({ place: batchOf(batch.run), weight: batch.taken, batch }));
  return [...places, ...batches]
    .filter(({ weight }) => weight > 0n)
    .sort((a, b) => (placeKey(a.place) < placeKey(b.place) ? -1 : 1));
}

interface Sharing {
  readonly standing: Standing;
  readonly uses: readonly BatchUse[];
  readonly coin: bigint;
}

/**
 * The entries that bring value from a place to wherever the lot has gone; through a closed batch it goes on to the lot
 * that came of it, be it of finished units or of a material, and so on. @rule AHEAD-8
 */
function sharedOver(sharing: Sharing, lot: LotName, amount: bigint, from: Place): readonly Entry[] {
  const targets = targetsOf(sharing.standing, lot, sharing.uses);
  if (targets.length === 0) return [];
  const shares = sharedMoney(
    amount,
    targets.map(({ weight }) => weight),
    sharing.coin,
  );
  return targets.flatMap(({ place, batch }, index) => {
    const share = shares[index] ?? 0n;
    if (share === 0n) return [];
    const first = moving(lot, 0n, ofMaterials(share), from, place);
    return batch?.made ? [...first, ...sharedOver(sharing, batch.made, share, place)] : first;
  });
}
