"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { typedIn } from "@/lib/edge/forms/posting-forms";
import { readReversal, REVERSAL_FIELDS, reversalRefused } from "@/lib/edge/forms/reversal-form";
import { postingAddress } from "@/lib/edge/ledger-address";
import { realToday } from "@/lib/edge/real-today";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { reversePosting } from "@/lib/operations/reverse-posting";

/** Takes a posting back by one that says the opposite; both stay. */
export async function reverseIt(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, REVERSAL_FIELDS);
  const refused = (faults: Readonly<Partial<Record<string, string>>>, says: string | null): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };
  const read = readReversal(form);
  if (read === null) return refused({}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(read.faults, null);
  const told = await reversePosting({ ...read.asked, realToday: realToday() });
  if (told.kind === "no workshop") return refused({}, "No workshop is open any more. Open one on the first page.");
  if (told.kind !== "posted" && told.kind !== "already posted") {
    const { faults, says } = reversalRefused(told, form);
    return refused(faults, says);
  }
  revalidatePath("/", "layout");
  return redirect(`${postingAddress(read.asked.reverses)}?did=reversed`, RedirectType.replace);
}
