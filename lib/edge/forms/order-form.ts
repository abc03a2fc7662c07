/** An order as the form of its slip carries it. */
import type { PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { isOpenAt } from "@/lib/domain/orders";
import type { Order } from "@/lib/domain/workshop";
import { LARGEST_FIGURE, type Packs, quantity } from "@/lib/domain/quantity";
import type { MicroUnits } from "@/lib/domain/money";
import { id } from "@/lib/edge/fields";
import { carriedDay, readNewId, textIn } from "./week-forms";

interface Sent {
  readonly get: (name: string) => unknown;
}

export interface CarriedOrder {
  readonly id: string;
  readonly supplier: string;
  readonly placed: Day;
  readonly due: Day;
  readonly state: "drafted" | "ordered";
  readonly lines: readonly CarriedLine[];
  /** The supplier's open orders and drafts when the form was drawn, by id. */
  readonly known: readonly string[];
}

interface Drawn {
  readonly newId: string;
  readonly today: Day;
  readonly due: Day;
  readonly orders: readonly Order[];
}

export interface CarriedLine {
  readonly offer: string;
  readonly packs: Packs;
  readonly packPrice: MicroUnits;
}

/**
 * @param newId  made when the form is drawn, so that a second click is the same order
 * @param orders  of the workshop, so that an order that another tab has placed meanwhile is noticed
 */
export const orderFields = (
  { supplier, lines }: Pick<PlannedOrder, "supplier" | "lines">,
  { newId, today, due, orders }: Drawn,
): Readonly<Record<string, string>> => ({
  id: newId,
  supplier: supplier.id,
  placed: isoDate(today),
  due: isoDate(due),
  known: JSON.stringify(orders.filter((order) => isOpenAt(order, supplier.id)).map((order) => order.id)),
  lines: JSON.stringify(lines.map(({ offer, packs, packPrice }) => [offer.id, packs.toString(), packPrice.toString()])),
});

/** The order that a form carries; null where it carries none that can be understood. @rule BUY-15 */
export function orderIn(form: Sent): CarriedOrder | null {
  const [newId, supplier] = [readNewId(form, "id"), id.safeParse(textIn(form, "supplier"))];
  const [placed, due] = [carriedDay(form, "placed"), carriedDay(form, "due")];
  const lines = linesIn(textIn(form, "lines"));
  const known = parsed(textIn(form, "known"));
  if (newId === null || !supplier.success || placed === null || due === null || lines === null) return null;
  const state = textIn(form, "state") === "drafted" ? "drafted" : "ordered";
  const seen = Array.isArray(known) ? known.filter((each) => typeof each === "string") : [];
  return { id: newId, supplier: supplier.data, placed, due, state, lines, known: seen };
}

function linesIn(text: string): readonly CarriedLine[] | null {
  const rows = parsed(text);
  if (!Array.isArray(rows) || rows.length === 0) return null;
  const lines = rows.map(lineIn);
  return lines.every((line) => line !== null) ? lines : null;
}

function lineIn(row: unknown): CarriedLine | null {
  if (!Array.isArray(row) || row.length !== 3) return null;
  const [offer, packs, price] = [id.safeParse(row[0]), countIn(row[1]), countIn(row[2])];
  if (!offer.success || packs === null || packs < 1n || price === null) return null;
  return { offer: offer.data, packs: quantity<Packs>(packs), packPrice: quantity<MicroUnits>(price) };
}

function countIn(text: unknown): bigint | null {
  if (typeof text !== "string" || !/^\d{1,16}$/.test(text)) return null;
  const count = BigInt(text);
  return count <= LARGEST_FIGURE ? count : null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
