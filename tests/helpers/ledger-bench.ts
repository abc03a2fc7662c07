/** A ledger on paper for tests: what the domain decides is kept in a list, and read back in the trade's notation. */
import type { Day } from "@/lib/domain/calendar";
import { type Delivery, type DeliveryLine, receiveDelivery } from "@/lib/domain/ledger/receive-delivery";
import {
  balanced,
  finishedLot,
  type LotName,
  lotKey,
  materialLot,
  type Place,
  type Posted,
  type Posting,
  wholeValue,
} from "@/lib/domain/ledger/posting";
import type { LotRecord, LotRecords } from "@/lib/domain/ledger/refusal";
import { balanceAt, latest, movesOf, type Standing, standingAfter } from "@/lib/domain/ledger/standing";
import { quantity } from "@/lib/domain/quantity";
import { day, g, inGrams, money } from "./notation";

export const TODAY = day("2026-11-25");

export const place = (name: string): Place =>
  name.startsWith("batch ") ? { kind: "batch", run: name.slice(6) } : { kind: name as "shelf" };
/** `L` is a lot of a material, `F…` in capitals a finished lot. */
export const lotNamed = (id: string): LotName => (/^F\d/.test(id) ? finishedLot(id) : materialLot(id));

export interface LedgerBench {
  readonly post: (decided: { readonly kind: string; readonly posting?: unknown }) => void;
  readonly posted: readonly Posted[];
  readonly standing: () => Standing;
  readonly records: LotRecords;
  readonly know: (lot: LotName, record: LotRecord) => void;
  /** `100 for 5`: grams or units, and their value; on a day, or now. */
  readonly stands: (lot: string, where: string, on?: string) => string;
  /** A line of a delivery in grams. */
  readonly receive: (
    on: string,
    lines: Readonly<Record<string, readonly [string, string]>>,
    given?: Partial<Delivery>,
  ) => void;
}

export function ledgerBench(): LedgerBench {
  const posted: Posted[] = [];
  const records = new Map<string, LotRecord>();
  const bench: LedgerBench = {
    posted,
    know: (lot, record) => void records.set(lotKey(lot), record),
    records: (lot) => records.get(lotKey(lot)) ?? null,
    standing: () => standingAfter(movesOf(posted)),
    post: (decided) => {
      if (decided.kind !== "posted") throw new Error(`refused: ${inspect(decided)}`);
      const posting = decided.posting as Posting;
      if (!balanced(posting)) throw new Error(`out of balance: ${inspect(posting)}`);
      posted.push({ ...posting, sequence: posted.length + 1 });
    },
    stands: (id, where, on) => {
      const lot = lotNamed(id);
      const standing = bench.standing();
      const balance =
        on === undefined ? latest(standing, lot, place(where)) : balanceAt(standing, lot, place(where), day(on));
      const size = lot.of === "material" ? inGrams(balance.quantity) : balance.quantity.toString();
      return `${size} for ${inGrams(wholeValue(balance.value))}`;
    },
    receive: (on, lines, given) => {
      const delivery = deliveryOf(on, lines, given);
      bench.post(receiveDelivery(delivery, bench.records, COIN));
      for (const { lot, material, expires } of delivery.lines) {
        bench.know(materialLot(lot), { since: delivery.day, expires, item: material });
      }
    },
  };
  return bench;
}

/** One cent in micro-units. */
export const COIN = 10_000n;

/** Lines as `{ L1: ["100", "5.00"] }`: grams, and what was paid. Each is one pack of a material of its own name. */
export const deliveryOf = (
  on: string,
  lines: Readonly<Record<string, readonly [string, string]>>,
  given: Partial<Delivery> = {},
): Delivery => ({
  key: `delivery ${Object.keys(lines).join(" ")}`,
  day: day(on),
  today: TODAY,
  note: null,
  extras: [],
  lines: Object.entries(lines).map(([lot, [grams, paid]]): DeliveryLine => ({
    lot,
    material: lot.replace(/\d+$/, ""),
    expires: null,
    quantity: g(grams),
    paid: money(paid),
    packs: quantity(1n),
    weight: g(grams),
  })),
  ...given,
});

export const withExpiry = (delivery: Delivery, expires: Day): Delivery => ({
  ...delivery,
  lines: delivery.lines.map((line) => ({ ...line, expires })),
});

export const inspect = (value: unknown): string =>
  JSON.stringify(value, (_key, each: unknown) => (typeof each === "bigint" ? each.toString() : each));
