/** The form of a delivery, and what was typed into it as what is to be posted. @rule LEDGER-9 */
import { decimalTyped } from "@/lib/edge/notation";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import type { DeliveryLine, Extra } from "@/lib/domain/ledger/receive-delivery";
import { moneyTextInFull } from "@/lib/domain/money";
import { type Micrograms, type Packs, quantity, type Stock } from "@/lib/domain/quantity";
import { costOutstanding, outstanding, packsOutstanding, toCome } from "@/lib/domain/orders";
import type { Material, Order, OrderLine, Workshop } from "@/lib/domain/workshop";
import { day, id, name, packs } from "@/lib/edge/fields";
import { money } from "@/lib/edge/figure-fields";
import { stockText } from "@/lib/edge/written-figures";
import {
  AMOUNT,
  choice,
  DAY,
  type FormField,
  ID,
  LAST_DAY_OF_USE,
  MONEY,
  needed,
  one,
  optional,
  rows,
  TEXT,
  WHOLE_NUMBER,
} from "./form-fields";
import { type FieldFault, type FormReading, readFormOf, type SentForm, type TypedRecord } from "./form-reading";
import { judging, type Judging } from "./judged-fields";

const SHARED_BY = choice({ value: "what each line cost", quantity: "number of packs", weight: "weight" });

export const DELIVERY_FORM: readonly FormField[] = [
  ID,
  optional("order", "Order", { kind: "hidden" }),
  needed("day", "Came in on", DAY),
  optional("supplier", "From", one("suppliers")),
  needed(
    "lines",
    "What came",
    rows(
      1,
      optional("offer", "Offer", one("offers")),
      optional("material", "Material", one("materials")),
      needed("packs", "Packs", WHOLE_NUMBER),
      optional("pack", "In a pack", AMOUNT, { hint: "The pack is needed where no offer says it, as 1 kg or 24 each." }),
      needed("lot", "Lot number", TEXT, { hint: "The lot number is the one on the pack." }),
      optional("expires", "Last day of use", LAST_DAY_OF_USE, {
        hint: "The last day of use stands on the pack as expiry, use by or best before; a month alone, as 2028-03, is its last day.",
      }),
      optional("weight", "Weighs", AMOUNT, {
        hint: "Pieces are weighed, all of the line together, as 4.2 kg, only where something is shared by weight.",
      }),
      needed("paid", "Paid for the line", MONEY, { hint: "What was paid is without the tax that you reclaim." }),
    ),
  ),
  optional("delivery", "Delivery", MONEY, { hint: "Of the whole delivery, without the tax that you reclaim." }),
  needed("deliveryBy", "Delivery is shared by", SHARED_BY),
  optional("duty", "Duty", MONEY, { hint: "What customs took, without the tax that you reclaim." }),
  needed("dutyBy", "Duty is shared by", SHARED_BY),
  optional("note", "Note", TEXT, { hint: "As the number of the invoice." }),
];

/** Beside the fields of a row, where it came from an order: the order's line, counted from 1. */
const LINE_ON_ORDER = "onOrder";

/** A line of a delivery, with the line on order that it settles, counted from 0. */
export interface LineTyped extends DeliveryLine {
  readonly offer: string | null;
  readonly order: { readonly id: string; readonly line: number } | null;
}

export interface DeliveryTyped {
  readonly key: string;
  readonly day: Day;
  readonly note: string | null;
  readonly supplier: string | null;
  readonly lines: readonly LineTyped[];
  readonly extras: readonly Extra[];
}

export type DeliveryReading =
  | { readonly kind: "read"; readonly asked: DeliveryTyped; readonly reading: FormReading }
  | { readonly kind: "refused"; readonly faults: readonly FieldFault[]; readonly reading: FormReading };

/** The values of the form of an order: what is still to come of its lines, in packs of its offers where it names them. */
export function valuesOfOrder(workshop: Workshop, order: Order) {
  const awaited = order.lines.flatMap((line, at) => (toCome(order, line) > 0n ? [{ line, at }] : []));
  const typed = awaited.flatMap(({ line, at }, row) =>
    Object.entries({
      ...packsTyped(workshop, line),
      lot: "",
      // What an offer lets expect is no date on a pack: that is read off it. @rule ORDER-7
      expires: line.expires === null || line.offer !== null ? "" : isoDate(line.expires),
      paid: decimalTyped(moneyTextInFull(costOutstanding(line), workshop.settings.currency)),
      [LINE_ON_ORDER]: String(at + 1),
    }).map(([field, value]) => [`lines.${String(row)}.${field}`, value] as const),
  );
  return { order: order.id, supplier: order.supplier, ...(Object.fromEntries(typed) as Record<string, string>) };
}

/** Whole packs of the offer where it is still there; all in one pack where it is not, or where half a pack came. */
function packsTyped({ offers, materials }: Workshop, line: OrderLine) {
  const rest = outstanding(line);
  const inText = (held: Stock): string =>
    decimalTyped(stockText(held, byId("material", materials)(line.material).measure));
  const offer = offers.find(({ id, material }) => id === line.offer && material === line.material);
  const packs = packsOutstanding(line);
  if (offer === undefined || packs === null) return { material: line.material, packs: "1", pack: inText(rest) };
  const asOffered = offer.pack.quantity * packs === rest;
  return {
    offer: offer.id,
    packs: packs.toString(),
    pack: asOffered ? "" : inText(quantity<Stock>(rest / packs)),
  };
}

/** Reads a delivery with the workshop's offers, materials and currency at hand. */
export function readDelivery(workshop: Workshop, form: SentForm): DeliveryReading {
  const reading = readFormOf(DELIVERY_FORM, form, workshop.settings.currency);
  const judged = judging(reading);
  const { record } = reading;
  const order = textOf(record.order);
  const key = judged.value(id, record.id, "id");
  const on = judged.value(day, record.day, "day");
  const note = noteOf(workshop, order, record, judged);
  const typed = Array.isArray(record.lines) ? (record.lines as readonly TypedRecord[]) : [];
  if (typed.length === 0) judged.tell("lines", "needs at least one line; write down what came");
  const lines = typed.map((line, at) => {
    const number = textOf(form.get(`lines.${String(reading.rows.lines?.[at] ?? at)}.${LINE_ON_ORDER}`));
    const settles = order !== "" && /^[1-9]\d{0,5}$/.test(number) ? { id: order, line: Number(number) - 1 } : null;
    return readLine(workshop, line, settles, `lines[${String(at)}].`, judged);
  });
  const extras = extrasOf(record, judged);
  const faults = judged.faults();
  const complete = lines.flatMap((line) => line ?? []);
  if (faults.length > 0 || key === undefined || on === undefined || complete.length < lines.length)
    return { kind: "refused", faults, reading };
  const supplier = textOf(record.supplier) || null;
  return { kind: "read", asked: { key, day: on, note, supplier, lines: complete, extras }, reading };
}

const textOf = (value: unknown): string => (typeof value === "string" ? value : "");

/** The supplier and the order stand in the note: a posting has no other place for them. */
function noteOf({ suppliers }: Workshop, order: string, record: TypedRecord, judged: Judging): string | null {
  const supplier = suppliers.find((each) => each.id === record.supplier)?.name;
  if (record.supplier !== undefined && supplier === undefined) judged.tell("supplier", GONE);
  const written = judged.value(name, record.note, "note");
  const parts = [supplier && `from ${supplier}`, order !== "" && `order ${order}`, written];
  return parts.filter((part) => typeof part === "string").join(", ") || null;
}

const GONE = "is not in the workshop any more; choose another";

function readLine(
  { offers, materials }: Workshop,
  line: TypedRecord,
  order: LineTyped["order"],
  at: string,
  judged: Judging,
): LineTyped | undefined {
  const offer = offers.find((each) => each.id === line.offer);
  const material = materials.find((each) => each.id === (offer?.material ?? line.material));
  const chosen = line.offer === undefined ? "material" : "offer";
  if (line.offer === undefined && line.material === undefined)
    judged.tell(`${at}material`, "is needed; choose an offer or a material");
  else if (material === undefined) judged.tell(`${at}${chosen}`, GONE);
  const count = judged.value<Packs>(packs(1), line.packs, `${at}packs`);
  const lot = judged.value(id, line.lot, `${at}lot`);
  const expires = judged.value(day, line.expires, `${at}expires`) ?? null;
  const paid = judged.value(money, line.paid, `${at}paid`);
  if (material === undefined) return undefined;
  if (line.pack === undefined && offer === undefined)
    judged.tell(`${at}pack`, "is needed where no offer says it; write a number and a unit, as 1 kg");
  const pack = line.pack === undefined ? offer?.pack.quantity : judged.stock(line.pack, material, 1n, `${at}pack`);
  if (count === undefined || lot === undefined || paid === undefined || pack === undefined) return undefined;
  const all = quantity<Stock>(count * pack);
  const weight = line.weight === undefined ? ownWeight(all, material) : weighed(line.weight, `${at}weight`, judged);
  if (weight === undefined) return undefined;
  const named = offer?.id ?? null;
  return { lot, material: material.id, expires, quantity: all, paid, packs: count, weight, order, offer: named };
}

const ownWeight = (all: Stock, { measure }: Material): Micrograms | null =>
  measure === "mass" ? quantity<Micrograms>(all) : null;

function weighed(typed: unknown, field: string, judged: Judging): Micrograms | undefined {
  const line = { name: "the line", measure: "mass", density: null } as const;
  const stock = judged.stock(typed, line, 1n, field);
  return stock === undefined ? undefined : quantity<Micrograms>(stock);
}

function extrasOf(record: TypedRecord, judged: Judging): readonly Extra[] {
  return (["delivery", "duty"] as const).flatMap((what) => {
    const amount = judged.value(money, record[what], what);
    const by = record[`${what}By`];
    if (amount === undefined || amount === 0n) return [];
    return by === "value" || by === "quantity" || by === "weight" ? [{ what, amount, by }] : [];
  });
}
