"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { putSwap, type TypedSwap } from "@/lib/edge/forms/swap-form";
import { keepDraft } from "@/lib/operations/keep-draft";
import { sectionPath } from "@/app/book/_parts/addresses";
import { type DeedAnswer, refusedDeed } from "@/app/book/_parts/deed-answer";

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
