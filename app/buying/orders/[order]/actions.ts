"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { countShown } from "@/lib/edge/figures";
import { packsField, readOrdering, readPacks } from "@/lib/edge/forms/order-deeds";
import { carriedDay, readNewId, textIn } from "@/lib/edge/forms/week-forms";
import { orderAddress } from "@/lib/edge/ledger-address";
import { changePacks, dropDraft, giveUpRest, orderDraft } from "@/lib/operations/change-order";
import { confirmPrice } from "@/lib/operations/confirm-price";
import { pricePressed } from "@/lib/edge/forms/price-pressed";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";

/** What is said where the order does not stand any more as the form was drawn. */
const STANDS_NO_MORE = {
  "state changed":
    "The order was changed in another tab since this page was drawn. Load the page again to see how it stands.",
  "not there": "This order is not there any more. Load the page again.",
  "no workshop": "No workshop is open any more. Open one on the first page.",
} as const;

type Faults = Readonly<Partial<Record<string, string>>>;

const refusing =
  (form: FormData) =>
  (faults: Faults, says: string | null = null): AskingAnswer => {
    const typed = Object.fromEntries([...form.keys()].map((name) => [name, textIn(form, name)]));
    return { kind: "refused", typed, faults, says };
  };

/** Other packs of a draft. */
export async function changePacksOfDraft(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const refused = refusing(form);
  const read = readPacks(form);
  if (read === null) return refused({}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(read.faults);
  const told = await changePacks(read.asked);
  switch (told.kind) {
    case "changed":
    case "as asked":
      return goOn(read.asked.id, "packs");
    case "too few packs":
      return refused({
        [packsField(told.line)]: `must be at least ${countShown(told.least)}, or 0 to take the line out`,
      });
    case "too many packs":
      return refused({ [packsField(told.line)]: "is too large; write fewer" });
    case "offer gone":
      return refused({
        [packsField(told.line)]: "its offer is not in the Book any more; write 0 to take the line out",
      });
    case "nothing left":
      return refused({}, "An order needs a line. Write packs for one, or throw the draft away.");
    case "state changed":
    case "not there":
    case "no workshop":
      return refused({}, STANDS_NO_MORE[told.kind]);
  }
}

/** The maker has ordered the draft. */
export async function orderTheDraft(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const refused = refusing(form);
  const placed = carriedDay(form, "today");
  const read = placed === null ? null : readOrdering(form, placed);
  if (read === null || placed === null) return refused({}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(read.faults);
  const told = await orderDraft({ ...read.asked, placed });
  switch (told.kind) {
    case "changed":
    case "as asked":
      return goOn(read.asked.id, "ordered");
    case "offer changed":
      return refused(
        {},
        `Line ${String(told.line + 1)}: its offer was changed since it was drafted. Press “Keep these packs” to take the prices of today, and check them first.`,
      );
    case "state changed":
    case "not there":
    case "no workshop":
      return refused({}, STANDS_NO_MORE[told.kind]);
  }
}

/** What has not come is not expected any more, or is again. */
export async function giveUpTheRest(form: FormData): Promise<void> {
  const order = readNewId(form, "order");
  const to = textIn(form, "to") === "ordered" ? "ordered" : "given up";
  if (order === null) return redirect("/buying/orders", RedirectType.push);
  const told = await giveUpRest({ id: order, to });
  return goOn(order, told.kind === "changed" || told.kind === "as asked" ? to : "changed meanwhile");
}

/** Throws a draft away. */
export async function throwAway(form: FormData): Promise<void> {
  const order = readNewId(form, "order");
  const told = order === null ? ({ kind: "not there" } as const) : await dropDraft(order);
  if (told.kind === "state changed") return goOn(told.order.id, "changed meanwhile");
  revalidatePath("/", "layout");
  redirect("/buying/orders?did=dropped", RedirectType.push);
}

/** The offer costs from now on what was paid. */
export async function takeThePrice(form: FormData): Promise<void> {
  const order = readNewId(form, "order");
  const asked = pricePressed(form);
  if (order === null) return redirect("/buying/orders", RedirectType.push);
  const told = asked === null ? null : await confirmPrice(asked);
  return goOn(order, told?.kind === "changed" || told?.kind === "as asked" ? "price" : "offer meanwhile");
}

function goOn(order: string, did: string): never {
  revalidatePath("/", "layout");
  redirect(orderAddress(order, did), RedirectType.push);
}
