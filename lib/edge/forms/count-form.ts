/** The form of a count: what the balance shows of each lot, gross less the vessel, and units by lot. @rule LEDGER-13, LEDGER-26 */
import type { Day } from "@/lib/domain/calendar";
import type { CountLine } from "@/lib/domain/ledger/count-shelf";
import { finishedLot, type LotName, lotKey, materialLot } from "@/lib/domain/ledger/posting";
import type { Material, Workshop } from "@/lib/domain/workshop";
import { day, id, name, units } from "@/lib/edge/fields";
import { COUNT_FORM } from "./count-fields";
import { type FieldFault, type FormReading, readFormOf, type SentForm, type TypedRecord } from "./form-reading";
import { judging, type Judging } from "./judged-fields";
import { readTypedAmount, readTypedWholeNumber } from "./typed-amount";

export interface CountTyped {
  readonly key: string;
  readonly day: Day;
  readonly reason: string;
  readonly lines: readonly CountLine[];
}

export type CountReading = { readonly reading: FormReading } & (
  | { readonly kind: "read"; readonly asked: CountTyped; readonly fieldOf: (lot: LotName) => string | null }
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
  if (written.length === 0)
    judged.tell(null, "nothing is written yet; write what the balance shows of one lot at least");
  const lines = written.flatMap(([line, at]) => readLine(workshop, line, at, judged) ?? []);
  const faults = judged.faults();
  if (faults.length > 0 || key === undefined || on === undefined || reason === undefined)
    return { kind: "refused", faults, reading };
  const fieldOf = (lot: LotName): string | null => {
    const [, at] = written.find(([line]) => lotKey(lotOf(line)) === lotKey(lot)) ?? [];
    return at === undefined ? null : `${at}gross`;
  };
  return { kind: "read", asked: { key, day: on, reason, lines }, fieldOf, reading };
}

const lotOf = ({ kind, lot }: TypedRecord): LotName =>
  kind === "finished" ? finishedLot(String(lot)) : materialLot(String(lot));

function readLine(workshop: Workshop, line: TypedRecord, at: string, judged: Judging): CountLine | undefined {
  const lot = lotOf(line);
  const expected = /^\d{1,16}$/.test(String(line.expected)) ? BigInt(String(line.expected)) : null;
  const material = lot.of === "material" ? materialOf(workshop, lot.id) : undefined;
  const isListed =
    material !== undefined || (lot.of === "finished" && workshop.finished.some(({ id }) => id === lot.id));
  if (!isListed || expected === null) {
    judged.tell(`${at}gross`, "this lot is on no list any more; load the page again");
    return undefined;
  }
  const counted = material === undefined ? filled(line.gross, `${at}gross`, judged) : net(line, material, at, judged);
  return counted === undefined ? undefined : { lot, counted, expected };
}

function materialOf({ lots, materials }: Workshop, id: string): Material | undefined {
  const lot = lots.find((each) => each.id === id);
  return materials.find((each) => each.id === lot?.material);
}

/** Whole units, as 12, or with the word. */
function filled(typed: unknown, field: string, judged: Judging): bigint | undefined {
  const text = String(typed);
  const amount = readTypedAmount(/\p{L}/u.test(text) ? text : `${text} each`);
  const [count = "", unit] = "value" in amount ? amount.value.split(" ") : [];
  if ("fault" in amount) judged.tell(field, amount.fault);
  else if (unit !== "each") judged.tell(field, "is counted in units; write a whole number, as 12");
  else {
    const whole = readTypedWholeNumber(count);
    if ("value" in whole) return judged.value(units(0), whole.value, field);
    judged.tell(field, whole.fault);
  }
  return undefined;
}

/** What the balance shows less the vessel. */
function net(line: TypedRecord, material: Material, at: string, judged: Judging): bigint | undefined {
  if (line.gross === undefined) {
    judged.tell(`${at}gross`, "is needed beside the vessel’s own weight; write what the balance shows");
    return undefined;
  }
  const gross = weighed(line.gross, material, `${at}gross`, judged);
  const tare = line.tare === undefined ? 0n : weighed(line.tare, material, `${at}tare`, judged);
  if (gross === undefined || tare === undefined) return undefined;
  if (tare <= gross) return gross - tare;
  judged.tell(`${at}tare`, "is more than the balance shows; write what the empty vessel weighs");
  return undefined;
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
