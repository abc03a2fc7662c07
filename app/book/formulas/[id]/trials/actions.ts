"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { putTrialInPlace } from "@/lib/edge/forms/next-version";
import { type Faults, readReasonTyped, typedIn } from "@/lib/edge/forms/posting-forms";
import { READING_FIELDS, readReading, readTrial, type TrialAsked, trialFieldsOf } from "@/lib/edge/forms/trial-form";
import { notTaken } from "@/lib/edge/forms/trial-refusal";
import { textIn } from "@/lib/edge/forms/week-forms";
import { realToday } from "@/lib/edge/real-today";
import type { Refused } from "@/lib/edge/forms/change-record";
import { beginVersion } from "@/lib/operations/begin-version";
import { addReading, keepTrialAlone, keepTrialFromShelf } from "@/lib/operations/keep-trial";
import { newId } from "@/app/_ui/new-id";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { trialsPath } from "@/app/book/_parts/addresses";
import { afterBeginning } from "@/app/book/_parts/after-beginning";
import { trialSaid } from "@/app/book/_parts/trial-said";

const GONE = "This formula is not there any more; it was removed meanwhile.";

const refusing =
  (typed: Readonly<Record<string, string>>) =>
  (faults: Faults, says: string | null = null): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };

/** An address that was not there before, so that what was sent is not brought back into the form that comes next. */
function goOn(formula: string): never {
  revalidatePath("/", "layout");
  redirect(trialsPath(formula, { written: newId() }));
}

/** Keeps a trial as it was weighed, and takes it off the shelf unless the maker says otherwise. */
export async function keepTheTrial(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const refused = refusing(typedIn(form, trialFieldsOf(form)));
  const read = readTrial(form);
  if (read === null) return refused({}, trialSaid("load again"));
  if ("faults" in read) return refused(read.faults);
  const { asked } = read;
  if (asked.fromShelf) return fromShelf(asked, form, refused);
  const told = await keepTrialAlone(asked);
  switch (told.kind) {
    case "no workshop":
    case "kept otherwise":
      return refused({}, trialSaid(told.kind));
    case "no such formula":
      return refused({}, GONE);
    case "kept":
    case "already kept":
      return goOn(asked.trial.formula);
  }
}

async function fromShelf(
  asked: TrialAsked,
  form: FormData,
  refused: ReturnType<typeof refusing>,
): Promise<AskingAnswer> {
  const reason = `trial ${asked.trial.name}`;
  const told = await keepTrialFromShelf({ ...asked, reason, realToday: realToday() });
  switch (told.kind) {
    case "no workshop":
    case "no such trial":
    case "kept otherwise":
      return refused({}, trialSaid(told.kind));
    case "no such formula":
      return refused({}, GONE);
    case "posted":
    case "already kept":
      return goOn(asked.trial.formula);
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
      return refused(faults, says);
    }
  }
}

/** Adds what was read of a trial some time after it was made. */
export async function addTheReading(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const refused = refusing(typedIn(form, READING_FIELDS));
  const [trial, formula] = [textIn(form, "trial"), textIn(form, "formula")];
  if (trial === "" || formula === "") return refused({}, trialSaid("load again"));
  const read = readReading(form);
  if ("faults" in read) return refused(read.faults);
  if (read.asked === null) return refused({ viscosity: "write at least one of pH, viscosity and appearance" });
  const told = await addReading(trial, read.asked);
  switch (told.kind) {
    case "no workshop":
    case "no such trial":
      return refused({}, trialSaid(told.kind));
    case "kept":
    case "already kept":
      return goOn(formula);
  }
}

/** Makes a trial the next version of its formula. */
export async function promoteTheTrial(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, ["why"]);
  const [trial, formula] = [textIn(form, "trial"), textIn(form, "formula")];
  const why = readReasonTyped(textIn(form, "why"));
  if ("fault" in why) return refusing(typed)({ why: why.fault });
  const today = realToday();
  const told = await beginVersion<Refused>({
    formula,
    why: why.value,
    realToday: today,
    change: (books) => putTrialInPlace(books, trial, today),
  });
  return afterBeginning(formula, typed, told);
}
