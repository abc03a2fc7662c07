/** What the forms of one order send: packs of a draft, the day an order is due. @rule ORDER-3 */
import type { Day } from "@/lib/domain/calendar";
import type { Outcome } from "@/lib/edge/fields";
import { id } from "@/lib/edge/fields";
import type { Faults, Read, SentForm } from "./posting-forms";
import { readTypedWholeNumber } from "./typed-amount";
import { withoutEnds } from "./typed-number";
import { readDayTyped, textIn } from "./week-forms";

export const packsField = (line: number): string => `packs ${String(line)}`;

export interface PacksSent {
  readonly id: string;
  readonly packs: readonly bigint[];
  readonly from: readonly bigint[];
}

const MOST = 9_007_199_254_740_991;

/** @returns null where the form does not say what it is about */
export function readPacks(form: SentForm): Read<PacksSent> | null {
  const order = id.safeParse(textIn(form, "order"));
  const from = carriedCounts(textIn(form, "from"));
  if (!order.success || from === null) return null;
  const typed = from.map((_, line) => readCount(textIn(form, packsField(line))));
  const faults: Faults = Object.fromEntries(
    typed.flatMap((outcome, line) => ("fault" in outcome ? [[packsField(line), outcome.fault] as const] : [])),
  );
  if (Object.keys(faults).length > 0) return { faults };
  return {
    asked: { id: order.data, from, packs: typed.map((outcome) => ("value" in outcome ? outcome.value : 0n)) },
  };
}

/** Packs as a form carries them: as it was drawn, before anything was typed. */
export const countsCarried = (counts: readonly bigint[]): string => counts.map(String).join(" ");

const carriedCounts = (text: string): readonly bigint[] | null =>
  /^\d{1,16}( \d{1,16}){0,9999}$/.test(text) ? text.split(" ").map(BigInt) : null;

function readCount(typed: string): Outcome<bigint> {
  if (withoutEnds(typed) === "") return { value: 0n };
  const count = readTypedWholeNumber(typed);
  if ("fault" in count) return count;
  const whole = typeof count.value === "number" ? count.value : NaN;
  if (!Number.isSafeInteger(whole) || whole < 0 || whole > MOST)
    return { fault: "must be a whole number of packs, 0 to take the line out" };
  return { value: BigInt(whole) };
}

export interface OrderingSent {
  readonly id: string;
  readonly due: Day;
}

/** @returns null where the form does not say what it is about */
export function readOrdering(form: SentForm, today: Day): Read<OrderingSent> | null {
  const order = id.safeParse(textIn(form, "order"));
  if (!order.success) return null;
  const due = readDayTyped(textIn(form, "due"));
  if ("fault" in due) return { faults: { due: due.fault } };
  if (due.value < today) return { faults: { due: "must not be before today, on which you order it" } };
  return { asked: { id: order.data, due: due.value } };
}
