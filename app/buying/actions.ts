"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import { orderIn } from "@/lib/edge/forms/order-form";
import { readNewId, textIn } from "@/lib/edge/forms/week-forms";
import { orderAddress } from "@/lib/edge/ledger-address";
import { placeOrder, takeOrderBack } from "@/lib/operations/place-order";
import { forgetSearch, stopSearch } from "@/lib/operations/solved-once";
import { addressOfDeed, type Deed } from "./_parts/deed";

/** Keeps the order that the slip showed as open. */
export async function placeTheOrder(form: FormData): Promise<void> {
  await placing(form, "ordered", (id) => goOn(form, { did: "ordered", about: id }));
}

/** Keeps a draft of the order that the slip showed, and goes on to it. */
export async function draftTheOrder(form: FormData): Promise<void> {
  await placing(form, "drafted", (id) => {
    revalidatePath("/", "layout");
    redirect(orderAddress(id, "drafted"), RedirectType.push);
  });
}

async function placing(form: FormData, state: "ordered" | "drafted", placed: (id: string) => never): Promise<never> {
  const order = orderIn(form);
  if (order === null) return goOn(form, { did: "not understood", about: "" });
  const told = await placeOrder({ ...order, state });
  switch (told.kind) {
    case "ordered":
    case "already ordered":
      return placed(told.order.id);
    case "offer changed":
    case "ordered otherwise":
    case "ordered meanwhile":
    case "already received":
    case "too large":
      return goOn(form, { did: told.kind, about: "" });
    case "no workshop":
      return redirect("/", RedirectType.push);
  }
}

/** Takes back an order that was placed. */
export async function takeTheOrderBack(form: FormData): Promise<void> {
  const about = readNewId(form, "id");
  const told = about === null ? ({ kind: "not there" } as const) : await takeOrderBack(about);
  switch (told.kind) {
    case "taken back":
      return goOn(form, { did: "taken back", about: told.order.supplier });
    case "not there":
      return goOn(form, { did: "not there", about: "" });
    case "no workshop":
      return redirect("/", RedirectType.push);
  }
}

/** Ends the search, so that the page shows the best that it has found. */
export async function stopTheSearch(form: FormData): Promise<void> {
  await stopSearch(textIn(form, "key"));
  redirect(`/buying?${textIn(form, "frame")}`, RedirectType.replace);
}

/** Lets the page search anew where a search was cut short. */
export async function searchOnAgain(form: FormData): Promise<void> {
  await forgetSearch(textIn(form, "key"));
  // The address stays the same, so that the page would otherwise be taken as known.
  revalidatePath("/buying");
  redirect(`/buying?${textIn(form, "frame")}`, RedirectType.replace);
}

function goOn(form: FormData, deed: Deed): never {
  revalidatePath("/", "layout");
  redirect(addressOfDeed(textIn(form, "frame"), deed), RedirectType.push);
}
