/** Receiving a delivery: many lines, one posting. @rule LEDGER-6, LEDGER-9 */
import type { Day } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import type { Micrograms, Packs, Stock } from "@/lib/domain/quantity";
import { at, materialLot, moving, ofMaterials, type Posting } from "./posting";
import { settled } from "./drawing";
import type { Decided, LotRecords } from "./refusal";
import { sharedMoney } from "./sharing";
import { standingAfter } from "./standing";

export interface Delivery {
  readonly key: string;
  readonly day: Day;
  readonly today: Day;
  readonly note: string | null;
  readonly lines: readonly DeliveryLine[];
  readonly extras: readonly Extra[];
}

/** What becomes one new lot. */
export interface DeliveryLine {
  readonly lot: string;
  readonly material: string;
  /** The last day of use. */
  readonly expires: Day | null;
  readonly quantity: Stock;
  /** For the whole line, without reclaimable tax. */
  readonly paid: MicroUnits;
  readonly packs: Packs;
  /** Null for what is counted and was not weighed: needed only where something is shared by weight. */
  readonly weight: Micrograms | null;
}

export type SharedBy = "value" | "quantity" | "weight";

/** Delivery or duty, shared over the lines by what was paid for them, by packs or by weight. */
export interface Extra {
  readonly what: "delivery" | "duty";
  readonly amount: MicroUnits;
  readonly by: SharedBy;
}

export type DeliveryRefusal =
  | { readonly kind: "lot exists"; readonly lot: string }
  | { readonly kind: "arrived out of date"; readonly lot: string; readonly expires: Day }
  /** Several lines, some of which nobody weighed. */
  | { readonly kind: "no weight"; readonly extra: Extra; readonly lots: readonly string[] }
  /** Several lines, for none of which anything was paid. */
  | { readonly kind: "nothing to share by"; readonly extra: Extra };

export type Received = Decided<{ readonly lots: readonly ReceivedLot[] }> | DeliveryRefusal;

/** What a lot cost in the end: what was paid for it, and its shares of the extras in their order. */
export interface ReceivedLot {
  readonly lot: string;
  readonly paid: MicroUnits;
  readonly shares: readonly bigint[];
  readonly cost: bigint;
}

/**
 * Decides on a delivery. Every line becomes a lot of its own on the shelf, worth what was paid for it and its shares
 * of delivery and duty.
 * @param coin  the smallest coin of the currency, in micro-units
 */
export function receiveDelivery(delivery: Delivery, records: LotRecords, coin: bigint): Received {
  const { day, today, lines, extras } = delivery;
  if (day > today) return { kind: "future day", day, today };
  if (lines.length === 0) return { kind: "nothing to post", lot: null };
  const seen = new Set<string>();
  for (const { lot, quantity, expires } of lines) {
    if (seen.has(lot)) return { kind: "asked twice", lot: materialLot(lot) };
    seen.add(lot);
    if (records(materialLot(lot))) return { kind: "lot exists", lot };
    if (quantity <= 0n) return { kind: "nothing to post", lot: materialLot(lot) };
    if (expires !== null && expires < day) return { kind: "arrived out of date", lot, expires };
  }
  const shares: (readonly bigint[])[] = [];
  for (const extra of extras) {
    const weights = weightsOf(lines, extra.by);
    const unweighed = lines.filter((_, line) => weights[line] === null).map(({ lot }) => lot);
    if (unweighed.length > 0) return { kind: "no weight", extra, lots: unweighed };
    if (weights.every((weight) => weight === 0n)) return { kind: "nothing to share by", extra };
    shares.push(
      sharedMoney(
        extra.amount,
        weights.map((weight) => weight ?? 0n),
        coin,
      ),
    );
  }
  const lots = lines.map(({ lot, paid }, line): ReceivedLot => {
    const own = shares.map((each) => each[line] ?? 0n);
    return { lot, paid, shares: own, cost: own.reduce<bigint>((sum, share) => sum + share, paid) };
  });
  const decided = settled(standingAfter([]), postingOf(delivery, lots));
  return decided.kind === "posted" ? { ...decided, lots } : decided;
}

/** What each line counts for, null where it was not weighed. A line alone takes all, whatever it weighs or cost. */
function weightsOf(lines: readonly DeliveryLine[], by: SharedBy): readonly (bigint | null)[] {
  if (lines.length === 1) return [1n];
  switch (by) {
    case "value":
      return lines.map(({ paid }) => paid);
    case "quantity":
      return lines.map(({ packs }) => packs);
    case "weight":
      return lines.map(({ weight }) => weight);
  }
}

const postingOf = ({ key, day, note, lines }: Delivery, lots: readonly ReceivedLot[]): Posting => ({
  id: key,
  kind: "received",
  day,
  reason: note,
  reverses: null,
  entries: lines.flatMap(({ lot, quantity }, line) =>
    moving(materialLot(lot), quantity, ofMaterials(lots[line]?.cost ?? 0n), at("supplier"), at("shelf")),
  ),
});
