"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { carriedRhythm, readRhythmTyped, RHYTHM_FIELDS, type RhythmField } from "@/lib/edge/forms/count-rhythm-form";
import { textIn } from "@/lib/edge/forms/week-forms";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { setCountRhythm } from "@/lib/operations/set-count-rhythm";

/** Keeps how often a material is counted, as it was typed. */
export async function keepRhythm(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = Object.fromEntries(RHYTHM_FIELDS.map((field) => [field, textIn(form, field)])) as Record<
    RhythmField,
    string
  >;
  const refused = (faults: Partial<Record<RhythmField, string>>, says: string | null): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };
  const [from, material] = [carriedRhythm(textIn(form, "from")), textIn(form, "material")];
  if (from === undefined) return refused({}, PAGE_OUT_OF_DATE);
  const read = readRhythmTyped(typed);
  if ("faults" in read) return refused(read.faults, null);
  const told = await setCountRhythm({ material, from, to: read.rhythm });
  switch (told.kind) {
    case "set":
    case "already so":
      revalidatePath("/", "layout");
      return redirect("/shelf/count/due", RedirectType.replace);
    case "stale":
      return refused(
        {},
        "It was changed meanwhile, in another tab; the list goes by that. Nothing was overwritten; press again to keep what is written here.",
      );
    case "no such material":
      return refused({}, "This material is no longer in the Book. Nothing was kept.");
    case "no workshop":
      return refused({}, "No workshop is open any more. Open one on the first page.");
  }
}
