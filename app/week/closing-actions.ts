"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import { inARow } from "@/lib/edge/counted";
import { stockShown } from "@/lib/edge/figures";
import {
  carriedDay,
  carriedHours,
  HOUR_FIELDS,
  type HourField,
  readHoursTyped,
  readLastDayTyped,
  readNewId,
  readUnitsMade,
  seenRunIn,
  textIn,
} from "@/lib/edge/forms/week-forms";
import { realToday } from "@/lib/edge/real-today";
import { closeRun } from "@/lib/operations/close-run";
import { setBenchHours } from "@/lib/operations/set-bench-hours";
import { addressOfDeed, type Deed } from "./_parts/deed";
import { isNow } from "./_parts/run-words";
import type { WeekAnswer } from "./_parts/week-answer";

const LOAD_AGAIN = "The form did not say what it is about. Load the page again.";
const NO_WORKSHOP = "No workshop is open any more. Open one on the first page.";

/** Closes a run as made: it leaves the plan, what it needed leaves the shelf, what came out is finished. */
export async function closeARun(_before: WeekAnswer, form: FormData): Promise<WeekAnswer> {
  const typed = { made: textIn(form, "made"), bestBefore: textIn(form, "bestBefore") };
  const [run, lot, of] = [seenRunIn(form), readNewId(form, "lot"), carriedDay(form, "of")];
  const [unitsMade, bestBefore] = [readUnitsMade(typed.made), readLastDayTyped(typed.bestBefore)];
  if (run === null || lot === null || of === null) return refused(typed, {}, LOAD_AGAIN);
  if ("fault" in unitsMade || "fault" in bestBefore)
    return refused(typed, {
      ...("fault" in unitsMade && { made: unitsMade.fault }),
      ...("fault" in bestBefore && { bestBefore: bestBefore.fault }),
    });
  const told = await closeRun({
    run,
    realToday: realToday(),
    unitsMade: unitsMade.value,
    finishedLot: { id: lot, bestBefore: bestBefore.value },
    ifShort: textIn(form, "deed") === "anyway" ? "draw what is there" : "refuse",
  });
  switch (told.kind) {
    case "made":
    case "already made":
      return goOn(of, { kind: "made", about: run.id });
    case "short":
      return refused(typed, {}, shortWords(told.short));
    case "stale":
      return refused(
        typed,
        {},
        `Changed meanwhile, in another tab: ${isNow(told.now)}. Nothing was closed; look at what it takes now, and press again.`,
      );
    case "no such run":
      return goOn(of, { kind: "gone meanwhile", about: run.id });
    case "finished lot exists":
      return refused(typed, {}, LOAD_AGAIN);
    case "no workshop":
      return refused(typed, {}, NO_WORKSHOP);
  }
}

type Short = Extract<Awaited<ReturnType<typeof closeRun>>, { readonly kind: "short" }>["short"];

function shortWords(short: Short): string {
  const lacks = short.map(({ material, by }) => `${stockShown(by, material.measure, "lacking")} of ${material.name}`);
  return `The shelf, as it is written down, lacks ${inARow(lacks)}. Nothing was closed. Where it was made all the same, press “Made anyway”.`;
}

/** Keeps the maker's hours at the bench, as they were typed. */
export async function setHours(_before: WeekAnswer, form: FormData): Promise<WeekAnswer> {
  const typed = Object.fromEntries(HOUR_FIELDS.map((field) => [field, textIn(form, field)])) as Record<
    HourField,
    string
  >;
  const [from, of] = [carriedHours(textIn(form, "hours")), carriedDay(form, "of")];
  if (from === undefined || of === null) return refused(typed, {}, LOAD_AGAIN);
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
): WeekAnswer {
  if (says !== null) revalidatePath("/", "layout");
  return { kind: "refused", typed, faults, says };
}

function goOn(of: Parameters<typeof addressOfDeed>[0]["of"], deed: Deed): never {
  revalidatePath("/", "layout");
  redirect(addressOfDeed({ of, open: "" }, deed), RedirectType.replace);
}
