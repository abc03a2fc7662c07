/** The form of a count: what the scale says of each lot, gross less the vessel. @rule LEDGER-13 */
import type { Day } from "@/lib/domain/calendar";
import type { CountLine, Difference } from "@/lib/domain/ledger/count-shelf";
import { materialLot, wholeValue } from "@/lib/domain/ledger/posting";
import type { Lot, Material, Workshop } from "@/lib/domain/workshop";
import { day, id, name } from "@/lib/edge/fields";
import { moneyShown, stockInFull } from "@/lib/edge/figures";
import { DAY, type FormField, ID, needed, optional, rows, TEXT } from "./form-fields";
import { type FieldFault, type FormReading, readFormOf, type SentForm, type TypedRecord } from "./form-reading";
import { judging, type Judging } from "./judged-fields";
import type { ShownTable } from "./shown-table";
import { readTypedAmount } from "./typed-amount";

export const COUNT_REASON = needed("reason", "Why it was counted", TEXT, { hint: "As the month’s end, or a spill." });
/** What the scale says: grams or pieces without a unit, or an amount with one. */
export const GROSS = optional("gross", "Scale says", TEXT);
export const TARE = optional("tare", "Less the vessel", TEXT);

export const COUNT_FORM: readonly FormField[] = [
  ID,
  needed("day", "Counted on", DAY),
  COUNT_REASON,
  needed(
    "lines",
    "Lots",
    rows(
      1,
      needed("lot", "Lot", { kind: "hidden" }),
      needed("expected", "Written down", { kind: "hidden" }),
      GROSS,
      TARE,
    ),
  ),
];

export interface CountTyped {
  readonly key: string;
  readonly day: Day;
  readonly reason: string;
  readonly lines: readonly CountLine[];
}

export type CountReading = { readonly reading: FormReading } & (
  | { readonly kind: "read"; readonly asked: CountTyped; readonly fieldOf: (lot: string) => string | null }
  | { readonly kind: "refused"; readonly faults: readonly FieldFault[] }
);

/** Reads a count: lots of which nothing is written are not counted. */
export function readCount(workshop: Workshop, form: SentForm): CountReading {
  const reading = readFormOf(COUNT_FORM, form);
  const judged = judging(reading);
  const { record } = reading;
  const key = judged.value(id, record.id, "id");
  const on = judged.value(day, record.day, "day");
  const reason = judged.value(name, record.reason, "reason");
  const typed = (Array.isArray(record.lines) ? (record.lines as readonly TypedRecord[]) : []).map(
    (line, at) => [line, `lines[${String(at)}].`] as const,
  );
  const written = typed.filter(([{ gross, tare }]) => gross !== undefined || tare !== undefined);
  if (written.length === 0) judged.tell(null, "nothing is written yet; write what the scale says of one lot at least");
  const lines = written.flatMap(([line, at]) => readLine(workshop, line, at, judged) ?? []);
  const faults = judged.faults();
  if (faults.length > 0 || key === undefined || on === undefined || reason === undefined)
    return { kind: "refused", faults, reading };
  const fieldOf = (lot: string): string | null => {
    const [, at] = written.find(([line]) => line.lot === lot) ?? [];
    return at === undefined ? null : `${at}gross`;
  };
  return { kind: "read", asked: { key, day: on, reason, lines }, fieldOf, reading };
}

function readLine(workshop: Workshop, line: TypedRecord, at: string, judged: Judging): CountLine | undefined {
  const lot = workshop.lots.find((each) => each.id === line.lot);
  const material = workshop.materials.find((each) => each.id === lot?.material);
  const expected = /^\d{1,16}$/.test(String(line.expected)) ? BigInt(String(line.expected)) : null;
  if (lot === undefined || material === undefined || expected === null) {
    judged.tell(`${at}gross`, "this lot is on no list any more; load the page again");
    return undefined;
  }
  if (line.gross === undefined) {
    judged.tell(`${at}gross`, "is needed beside the vessel’s own weight; write what the scale says");
    return undefined;
  }
  const gross = weighed(line.gross, material, `${at}gross`, judged);
  const tare = line.tare === undefined ? 0n : weighed(line.tare, material, `${at}tare`, judged);
  if (gross === undefined || tare === undefined) return undefined;
  if (tare > gross) {
    judged.tell(`${at}tare`, "is more than the scale says; write what the empty vessel weighs");
    return undefined;
  }
  return { lot: materialLot(lot.id), counted: gross - tare, expected };
}

/** A number without a unit is in grams, or pieces of what is counted. */
function weighed(typed: unknown, material: Material, field: string, judged: Judging): bigint | undefined {
  const text = String(typed);
  const unit = /\p{L}/u.test(text) ? "" : material.measure === "mass" ? " g" : " each";
  const amount = readTypedAmount(text + unit);
  if ("fault" in amount) {
    judged.tell(field, amount.fault);
    return undefined;
  }
  return judged.stock(amount.value, material, 0n, field);
}

/** What a count would change of each lot, and what that is worth. */
export function countShown(
  { lots, materials, settings: { currency } }: Workshop,
  differences: readonly Difference[],
): ShownTable {
  const materialOf = new Map(materials.map((each) => [each.id, each]));
  const lotOf = new Map<string, Lot>(lots.map((each) => [each.id, each]));
  const rowsShown = differences.map(({ lot, expected, counted, quantity, value }) => {
    const material = materialOf.get(lotOf.get(lot.id)?.material ?? "");
    const shown = (amount: bigint): string => stockInFull(amount, material?.measure ?? "mass");
    return [
      `${material?.name ?? ""}, lot ${lot.id}`,
      shown(expected),
      shown(counted),
      quantity === 0n ? "none" : shown(quantity),
      moneyShown(wholeValue(value), currency),
    ];
  });
  const all = differences.reduce((sum, { value }) => sum + wholeValue(value), 0n);
  return {
    says: differences.every(({ quantity }) => quantity === 0n)
      ? "All that was counted is as it is written down. Posting the count keeps that it was counted; nothing is kept yet."
      : "What the count would change. Nothing is kept yet.",
    columns: ["Lot", "Written down", "Counted", "Difference", "Worth"],
    rows: rowsShown,
    total: ["All", "", "", "", moneyShown(all, currency)],
  };
}
