/**
 * The ledger's words: places, entries and postings. A posting moves quantity and value of lots between places, and
 * nothing else ever changes a lot. @rule LEDGER-1, LEDGER-2
 */
import type { Day } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import { type Quantity, quantity } from "@/lib/domain/quantity";

/** Where something can be. Every run has a batch of its own. */
export const PLACES = [
  "supplier",
  "shelf",
  "hold",
  "batch",
  "finished",
  "sold",
  "lost",
  "expired",
  "counted",
  "labour",
  "overhead",
] as const;
export type PlaceKind = (typeof PLACES)[number];

export type Place = { readonly kind: Exclude<PlaceKind, "batch"> } | { readonly kind: "batch"; readonly run: string };

/** A lot of a material, or of finished units: the two lists may use the same ids. */
export interface LotName {
  readonly of: "material" | "finished";
  readonly id: string;
}

/** µg, pieces or units that come to a place; below zero where they leave it. */
export type Moved = Quantity<"moved">;

/** What something cost, by what it was paid for. Each below zero where it leaves. */
export interface Value {
  readonly materials: MicroUnits;
  readonly labour: MicroUnits;
  readonly overhead: MicroUnits;
}

export interface Entry {
  readonly place: Place;
  readonly lot: LotName;
  readonly quantity: Moved;
  readonly value: Value;
}

export const POSTING_KINDS = [
  "opening",
  "correction",
  "received",
  "late cost",
  "weighed",
  "made",
  "counted",
  "held",
  "released",
  "written off",
  "sold",
  "taken back",
  "reversal",
] as const;
export type PostingKind = (typeof POSTING_KINDS)[number];

export interface Posting {
  /** The caller's key, made when the form is drawn: the same key is the same posting. @rule LEDGER-3 */
  readonly id: string;
  readonly kind: PostingKind;
  readonly day: Day;
  readonly reason: string | null;
  /** The id of the posting that this one takes back. */
  readonly reverses: string | null;
  readonly entries: readonly Entry[];
}

/** A posting with its place in the order of posting. */
export interface Posted extends Posting {
  readonly sequence: number;
}

export const NO_VALUE: Value = {
  materials: quantity<MicroUnits>(0n),
  labour: quantity<MicroUnits>(0n),
  overhead: quantity<MicroUnits>(0n),
};

export const VALUE_KINDS = ["materials", "labour", "overhead"] as const;
export type ValueKind = (typeof VALUE_KINDS)[number];

/** A value of which each part is worked out from the same part of others. */
export const eachPart = (part: (kind: ValueKind) => bigint): Value => ({
  materials: quantity<MicroUnits>(part("materials")),
  labour: quantity<MicroUnits>(part("labour")),
  overhead: quantity<MicroUnits>(part("overhead")),
});

export const plusValue = (a: Value, b: Value): Value => eachPart((kind) => a[kind] + b[kind]);
export const minusValue = (a: Value, b: Value): Value => eachPart((kind) => a[kind] - b[kind]);
export const negated = (value: Value): Value => eachPart((kind) => -value[kind]);
export const wholeValue = (value: Value): MicroUnits =>
  quantity<MicroUnits>(value.materials + value.labour + value.overhead);
export const isNothing = (value: Value): boolean => VALUE_KINDS.every((kind) => value[kind] === 0n);
/** The value of materials alone. */
export const ofMaterials = (materials: bigint): Value => ({ ...NO_VALUE, materials: quantity<MicroUnits>(materials) });

export const at = (kind: Exclude<PlaceKind, "batch">): Place => ({ kind });
export const batchOf = (run: string): Place => ({ kind: "batch", run });

export const materialLot = (id: string): LotName => ({ of: "material", id });
export const finishedLot = (id: string): LotName => ({ of: "finished", id });

/** The place where a lot can be used or sold. */
export const homeOf = (lot: LotName): Place => at(lot.of === "material" ? "shelf" : "finished");

// One text for each, so that they can be keys of a map. Ids hold no control characters.
export const lotKey = ({ of, id }: LotName): string => `${of}\u0000${id}`;
export const placeKey = (place: Place): string => (place.kind === "batch" ? `batch\u0000${place.run}` : place.kind);

/**
 * Whether a posting balances: the quantity of each lot comes to nothing over its places, and so does each part of the
 * value. @rule LEDGER-1
 */
export function balanced({ entries }: Pick<Posting, "entries">): boolean {
  const quantityByLot = new Map<string, bigint>();
  for (const { lot, quantity: moved } of entries) {
    quantityByLot.set(lotKey(lot), (quantityByLot.get(lotKey(lot)) ?? 0n) + moved);
  }
  const value = entries.map((entry) => entry.value).reduce(plusValue, NO_VALUE);
  return entries.length > 0 && isNothing(value) && [...quantityByLot.values()].every((moved) => moved === 0n);
}

/** The two entries that move something from one place to another. */
export const moving = (lot: LotName, moved: bigint, value: Value, from: Place, to: Place): readonly Entry[] => [
  { place: from, lot, quantity: quantity<Moved>(-moved), value: negated(value) },
  { place: to, lot, quantity: quantity<Moved>(moved), value },
];

/** The lots that a posting takes from or gives to, each once. */
export function lotsOf({ entries }: Pick<Posting, "entries">): readonly LotName[] {
  return [...new Map(entries.map(({ lot }) => [lotKey(lot), lot])).values()];
}
