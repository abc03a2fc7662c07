"use server";

import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { NOTATION_FIELDS, readNotation } from "@/lib/edge/forms/notation-form";
import { typedIn } from "@/lib/edge/forms/posting-forms";
import { setNotation } from "@/lib/operations/set-notation";

const A_YEAR = 365 * 24 * 60 * 60;

/** Keeps how figures are written, on every device. */
export async function keepNotation(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, NOTATION_FIELDS);
  const read = readNotation(form);
  if ("faults" in read) return { kind: "refused", typed, faults: read.faults, says: null };
  const told = await setNotation(read.asked);
  if (told.kind === "no workshop")
    return { kind: "refused", typed, faults: {}, says: "No workshop is open any more. Open one on the first page." };
  revalidatePath("/", "layout");
  redirect("/book/screen?kept=figures", RedirectType.replace);
}

/** Turns single keys on or off, on this device. */
export async function switchKeys(form: FormData): Promise<void> {
  const jar = await cookies();
  if (form.get("keys") === "on") jar.set("keys", "on", { maxAge: A_YEAR, sameSite: "strict", httpOnly: true });
  else jar.delete("keys");
  revalidatePath("/", "layout");
}
