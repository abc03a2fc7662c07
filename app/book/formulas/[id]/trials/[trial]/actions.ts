"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { typedIn } from "@/lib/edge/forms/posting-forms";
import { readTrial, trialFieldsOf } from "@/lib/edge/forms/trial-form";
import { notTaken } from "@/lib/edge/forms/trial-refusal";
import { trialSeen, typedSeen } from "@/lib/edge/forms/trial-seen";
import { textIn } from "@/lib/edge/forms/week-forms";
import { realToday } from "@/lib/edge/real-today";
import { correctTrial, removeTrial } from "@/lib/operations/correct-trial";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { newId } from "@/app/_ui/new-id";
import { trialsPath } from "@/app/book/_parts/addresses";
import { type DeedAnswer, refusedDeed } from "@/app/book/_parts/deed-answer";
import { trialSaid } from "@/app/book/_parts/trial-said";

function goOn(formula: string): never {
  revalidatePath("/", "layout");
  redirect(trialsPath(formula, { written: newId() }));
}

/** Puts right what was typed of a trial, and takes it off the shelf where that is asked. */
export async function correctTheTrial(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, trialFieldsOf(form));
  const refused = (says: string | null, faults: Readonly<Partial<Record<string, string>>> = {}): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };
  const read = readTrial(form);
  const [trial, seen] = [textIn(form, "trial"), textIn(form, "seen")];
  if (read === null || trial === "" || seen === "") return refused(trialSaid("load again"));
  if ("faults" in read) return refused(null, read.faults);
  const { readings: _readings, ...asked } = { ...read.asked.trial, id: trial };
  const told = await correctTrial({
    ...read.asked,
    trial: asked,
    takes: read.asked.fromShelf,
    reason: `trial ${asked.name}`,
    realToday: realToday(),
    isAsSeen: (found) => typedSeen(found) === seen,
  });
  switch (told.kind) {
    case "no workshop":
    case "no such trial":
    case "stale":
    case "stands on the ledger":
    case "kept otherwise":
      return refused(trialSaid(told.kind));
    case "corrected":
    case "posted":
    case "already kept":
      return goOn(asked.formula);
    case "not finished":
      throw new Error("a trial takes materials alone");
    case "short":
    case "future day":
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "not there":
    case "out of date":
    case "cost came later":
    case "out of range": {
      const { faults, says } = notTaken(told, form);
      return refused(says, faults);
    }
  }
}

/** @param seen  of the trial as it was shown, what was read of it included */
export async function removeTheTrial(formula: string, trial: string, seen: string): Promise<DeedAnswer> {
  const told = await removeTrial({ trial, realToday: realToday(), isAsSeen: (found) => trialSeen(found) === seen });
  switch (told.kind) {
    case "no workshop":
    case "stale":
    case "stands on the ledger":
      return refusedDeed(trialSaid(told.kind));
    // Pressed twice, or removed in another tab: it is gone, as was asked.
    case "no such trial":
    case "removed":
      return goOn(formula);
  }
}
