"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import {
  carriedDay,
  carriedHours,
  HOUR_FIELDS,
  type HourField,
  readHoursTyped,
  textIn,
} from "@/lib/edge/forms/week-forms";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { setBenchHours } from "@/lib/operations/set-bench-hours";
import { addressOfDeed, type Deed } from "./_parts/deed";
import type { AskingAnswer } from "@/app/_ui/asking-answer";

const NO_WORKSHOP = "No workshop is open any more. Open one on the first page.";

/** Keeps the maker's hours at the bench, as they were typed. */
export async function setHours(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = Object.fromEntries(HOUR_FIELDS.map((field) => [field, textIn(form, field)])) as Record<
    HourField,
    string
  >;
  const [from, of] = [carriedHours(textIn(form, "hours")), carriedDay(form, "of")];
  if (from === undefined || of === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  const read = readHoursTyped(typed);
  if ("faults" in read) return refused(typed, read.faults);
  const told = await setBenchHours({ from, to: read.minutes });
  switch (told.kind) {
    case "set":
      return goOn(of, { kind: "hours", hours: told.was });
    case "already so":
      return goOn(of, { kind: "hours", hours: from });
    case "stale":
      return refused(
        typed,
        {},
        "The hours were changed meanwhile, in another tab; the week below goes by those. Nothing was overwritten; press again to keep what is written here.",
      );
    case "no workshop":
      return refused(typed, {}, NO_WORKSHOP);
  }
}

/** Goes back to the hours as they were. */
export async function hoursBack(form: FormData): Promise<void> {
  const [from, to] = [carriedHours(textIn(form, "hours")), carriedHours(textIn(form, "to"))];
  const of = carriedDay(form, "of");
  if (of === null || from === undefined || to === undefined) redirect("/week", RedirectType.replace);
  const told = await setBenchHours({ from, to });
  goOn(of, told.kind === "stale" ? { kind: "hours changed meanwhile" } : { kind: "hours", hours: from });
}

function refused(
  typed: Readonly<Record<string, string>>,
  faults: Readonly<Partial<Record<string, string>>>,
  says: string | null = null,
): AskingAnswer {
  if (says !== null) revalidatePath("/", "layout");
  return { kind: "refused", typed, faults, says };
}

function goOn(of: Parameters<typeof addressOfDeed>[0]["of"], deed: Deed): never {
  revalidatePath("/", "layout");
  redirect(addressOfDeed({ of, open: "" }, deed), RedirectType.replace);
}
