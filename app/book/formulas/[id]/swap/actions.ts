"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { putSwapInPlace } from "@/lib/edge/forms/next-version";
import { readReasonTyped, typedIn } from "@/lib/edge/forms/posting-forms";
import { textIn } from "@/lib/edge/forms/week-forms";
import { realToday } from "@/lib/edge/real-today";
import type { Refused } from "@/lib/edge/forms/change-record";
import { beginVersion } from "@/lib/operations/begin-version";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { afterBeginning } from "@/app/book/_parts/after-beginning";
import { putSwap, type TypedSwap } from "@/lib/edge/forms/swap-form";
import { keepDraft } from "@/lib/operations/keep-draft";
import { sectionPath } from "@/app/book/_parts/addresses";
import { type DeedAnswer, refusedDeed } from "@/app/book/_parts/deed-answer";

/** Makes a swap the next version of its formula. @param made  what it makes, as the page was drawn */
export async function swapAsNextVersion(
  formula: string,
  typedSwap: TypedSwap,
  made: string,
  _before: AskingAnswer,
  form: FormData,
): Promise<AskingAnswer> {
  const typed = typedIn(form, ["why"]);
  const why = readReasonTyped(textIn(form, "why"));
  if ("fault" in why) return { kind: "refused", typed, faults: { why: why.fault }, says: null };
  const today = realToday();
  const told = await beginVersion<Refused>({
    formula,
    why: why.value,
    realToday: today,
    change: (books) => putSwapInPlace(books, formula, typedSwap, made, today),
  });
  return afterBeginning(formula, typed, told);
}

/** Keeps a swap as a draft. @param draftId  made when the page was drawn */
export async function keepSwap(formula: string, typed: TypedSwap, draftId: string): Promise<DeedAnswer> {
  const told = await keepDraft({ change: (books) => putSwap(books, formula, typed, draftId), stale: () => null });
  switch (told.kind) {
    case "no workshop":
      return refusedDeed("No workshop is open any more; open one on the first page.");
    case "refused":
      return { kind: "refused", says: told.faults.map(({ message }) => message).join("; "), names: told.breaks };
    case "stale":
    case "changed":
    case "already kept":
      revalidatePath("/", "layout");
      return redirect(sectionPath("formulas", { kept: draftId }));
  }
}
