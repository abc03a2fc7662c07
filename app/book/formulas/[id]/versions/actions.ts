"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { findingInWords } from "@/lib/edge/finding-words";
import { note } from "@/lib/edge/fields";
import { readReasonTyped, typedIn } from "@/lib/edge/forms/posting-forms";
import { textIn } from "@/lib/edge/forms/week-forms";
import { realToday } from "@/lib/edge/real-today";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { acceptWarning } from "@/lib/operations/accept-warning";
import { newId } from "@/app/_ui/new-id";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { recordPath } from "@/app/book/_parts/addresses";
import { checkedFrom } from "@/app/book/_parts/checked-from";
import { nameOfLine } from "@/app/_ui/name-of-line";

const NONE_OPEN = "No workshop is open any more. Open one on the first page.";
const aKey = note(10_000);

/** Accepts one warning of a formula with a reason, which is kept with its version. */
export async function acceptTheWarning(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, ["reason"]);
  const refused = (faults: Readonly<Record<string, string>>, says: string | null): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };
  const [formula, key] = [textIn(form, "formula"), aKey.safeParse(textIn(form, "key"))];
  if (formula === "" || !key.success) return refused({}, PAGE_OUT_OF_DATE);
  const reason = readReasonTyped(textIn(form, "reason"));
  if ("fault" in reason) return refused({ reason: reason.fault }, null);
  const told = await acceptWarning({ formula, key: key.data, reason: reason.value }, ({ workshop }) => {
    const today = workshop.settings.today ?? realToday();
    const about = { today, nameOf: nameOfLine(workshop) };
    return {
      checked: checkedFrom(workshop, today, formula),
      wordsOf: (finding) => {
        const { says, why } = findingInWords(finding, about);
        return `${says}: ${why}`;
      },
    };
  });
  switch (told.kind) {
    case "no workshop":
      return refused({}, NONE_OPEN);
    case "no such formula":
      return refused({}, "This formula is not there any more; it was removed meanwhile.");
    case "not found any more":
      return refused({}, "The checks do not find this any more, or with other figures. Look at what they find now.");
    case "accepted":
    case "already accepted":
      revalidatePath("/", "layout");
      return redirect(`${recordPath("formulas", formula, { accepted: newId() })}#version`);
  }
}
