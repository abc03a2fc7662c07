"use server";

import { notInTheList, typedOf } from "@/lib/edge/forms/unchosen";
import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import { readTypedRunSize } from "@/lib/edge/forms/typed-run-size";
import { carriedDay, readDayTyped, readNewId, seenRunIn, textIn } from "@/lib/edge/forms/week-forms";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { deleteRun } from "@/lib/operations/delete-run";
import { moveRun } from "@/lib/operations/move-run";
import { planRun } from "@/lib/operations/plan-run";
import { planRunOfSize } from "@/lib/operations/plan-run-of-size";
import { resizeRun } from "@/lib/operations/resize-run";
import { resizeRunToSize } from "@/lib/operations/resize-run-to-size";
import { addressOfDeed, type Deed } from "./_parts/deed";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { isNow } from "./_parts/run-words";

type Typed = Readonly<Record<string, string>>;
type SeenRun = NonNullable<ReturnType<typeof seenRunIn>>;
type Day = SeenRun["date"];

const NO_WORKSHOP = "No workshop is open any more. Open one on the first page.";
const MADE = "The run was closed as made meanwhile, in another tab. Nothing was changed.";
const NO_SUCH_SIZE = {
  "fills none": "does not fill one unit; write a larger weight, or the units, as 24",
  "too many": "is too large, over 9,007 tonnes in the vessel; write fewer",
} as const;

function goneOrUnknown(product: string): string {
  const typed = typedOf(product);
  return typed === null ? "is not in the workshop any more; choose another" : notInTheList(typed);
}

/** Plans a run of a product on a day, so many units or so much in the vessel. */
export async function planARun(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, "product", "date", "size");
  const { product = "" } = typed;
  const [date, size] = [readDayTyped(typed.date ?? ""), readTypedRunSize(typed.size ?? "")];
  const id = readNewId(form, "id");
  if (id === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if (product === "" || "fault" in date || "fault" in size)
    return refused(typed, {
      ...(product === "" && { product: "is needed; choose one" }),
      ...("fault" in date && { date: date.fault }),
      ...("fault" in size && { size: size.fault }),
    });
  const told = await planRunOfSize({ run: { id, product, date: date.value }, size: size.value, before: null });
  switch (told.kind) {
    case "planned":
    case "already planned":
      return goOn({ of: date.value, open: "" }, { kind: "planned", about: id, said: saidWeight(typed, size.value) });
    case "fills none":
    case "too many":
      return refused(typed, { size: NO_SUCH_SIZE[told.kind] });
    case "planned otherwise":
      return refused(
        typed,
        {},
        `This form was sent before, and ${isNow(told.now)}. Nothing was changed; press “Plan a run” for another one.`,
      );
    case "no such product":
      return refused(typed, { product: goneOrUnknown(product) });
    case "already made":
      return refused(typed, {}, MADE);
    case "no such place":
    case "no workshop":
      return refused(typed, {}, NO_WORKSHOP);
  }
}

/** Moves a run to the day that was typed. */
export async function moveARun(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, "date");
  const [seen, date] = [seenRunIn(form), readDayTyped(typed.date ?? "")];
  if (seen === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("fault" in date) return refused(typed, { date: date.fault });
  if (date.value === seen.date)
    return refused(typed, { date: "is the day it is on; write another, or put it earlier or later in its day" });
  const told = await moved(form, seen, { date: date.value, before: null });
  return told.kind === "stale" || told.kind === "no workshop"
    ? refused(typed, {}, saysOf(told))
    : goOn(whereabouts(form), meanwhileOf(told, seen.id));
}

/** Puts a run in a place that the page offered: a day, before another run of that day or last. */
export async function putRun(form: FormData): Promise<void> {
  const [seen, date] = [seenRunIn(form), carriedDay(form, "to")];
  const before = textIn(form, "before") || null;
  if (seen === null || date === null) return goOn(whereabouts(form), null);
  const told = await moved(form, seen, { date, before });
  goOn(whereabouts(form), meanwhileOf(told, seen.id));
}

type Told =
  | { readonly kind: "stale"; readonly now: Parameters<typeof isNow>[0] }
  | { readonly kind: "no workshop" }
  | { readonly kind: "gone" | "made" | "bench" };

async function moved(
  form: FormData,
  seen: SeenRun,
  to: { readonly date: Day; readonly before: string | null },
): Promise<Told> {
  const told = await moveRun({ run: seen.id, from: seen.date, to });
  // Where the page said it stood: the form may be sent twice.
  const stood = { was: seen.date, before: textIn(form, "stood") || null };
  switch (told.kind) {
    case "moved":
      return goOn(whereabouts(form), { kind: "moved", about: seen.id, was: told.was.date, before: told.was.before });
    case "already there":
      return goOn(whereabouts(form), seen.date === to.date ? null : { kind: "moved", about: seen.id, ...stood });
    case "no such place":
      return moved(form, seen, { ...to, before: null });
    case "stale":
      return told;
    case "no such run":
      return { kind: "gone" };
    case "already made":
      return { kind: "made" };
    case "at the bench":
      return { kind: "bench" };
    case "no workshop":
      return told;
  }
}

/** Plans another size of a run, as it was typed. */
export async function resizeARun(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, "size");
  const [seen, size] = [seenRunIn(form), readTypedRunSize(typed.size ?? "")];
  if (seen === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("fault" in size) return refused(typed, { size: size.fault });
  const told = await resizeRunToSize({ run: seen.id, from: seen.units, size: size.value });
  switch (told.kind) {
    case "resized":
    case "already so": {
      const was = told.kind === "resized" ? told.was : seen.units;
      const deed: Deed = { kind: "resized", about: seen.id, was, said: saidWeight(typed, size.value) };
      return goOn(whereabouts(form), was === told.run.units ? null : deed);
    }
    case "fills none":
    case "too many":
      return refused(typed, { size: NO_SUCH_SIZE[told.kind] });
    case "stale":
      return refused(typed, {}, saysOf(told));
    // Its form is gone with it, so that the page says it.
    case "no such run":
    case "already made":
    case "at the bench":
      return goOn(whereabouts(form), meanwhileOf(told, seen.id));
    case "no workshop":
      return refused(typed, {}, NO_WORKSHOP);
  }
}

/** Gives a run the units that a page offered: those that it had, or as many as the shelf allows. */
export async function resizeTo(form: FormData): Promise<void> {
  const [seen, to] = [seenRunIn(form), seenRunIn(renamed(form, { units: "to" }))];
  if (seen === null || to === null) return goOn(whereabouts(form), null);
  const told = await resizeRun({ run: seen.id, from: seen.units, to: to.units });
  if (told.kind === "resized" || told.kind === "already so")
    return goOn(whereabouts(form), { kind: "resized", about: seen.id, was: seen.units, said: "" });
  goOn(whereabouts(form), meanwhileOf(told, seen.id));
}

/** Takes a run out of the plan. */
export async function removeRun(form: FormData): Promise<void> {
  const seen = seenRunIn(form);
  if (seen === null) return goOn(whereabouts(form), null);
  const told = await deleteRun(seen);
  const { id, product, date, units } = seen;
  const stood = { kind: "deleted", about: id, product, was: date, units } as const;
  const at = { ...whereabouts(form), open: "" };
  if (told.kind === "deleted") return goOn(at, { ...stood, before: told.before });
  // Sent twice, or deleted in another tab: either way it is as the maker wants it.
  if (told.kind === "no such run") return goOn(at, { ...stood, before: textIn(form, "stood") || null });
  goOn(whereabouts(form), meanwhileOf(told, id));
}

/** Plans a run again that was deleted, where it stood. */
export async function planAgain(form: FormData): Promise<void> {
  const run = seenRunIn(form);
  if (run === null) return goOn(whereabouts(form), null);
  const asked = await planRun({ run, before: textIn(form, "before") || null });
  const told = asked.kind === "no such place" ? await planRun({ run, before: null }) : asked;
  const isPlanned = told.kind === "planned" || told.kind === "already planned";
  goOn(whereabouts(form), isPlanned ? { kind: "planned", about: run.id, said: "" } : meanwhileOf(told, run.id));
}

const typedIn = (form: FormData, ...names: readonly string[]): Typed =>
  Object.fromEntries(names.map((name) => [name, textIn(form, name)]));

/** The fields under other names. */
function renamed(form: FormData, names: Readonly<Record<string, string>>): Pick<FormData, "get"> {
  return { get: (name) => form.get(names[name] ?? name) };
}

function whereabouts(form: FormData): Parameters<typeof addressOfDeed>[0] {
  const of = carriedDay(form, "of") ?? carriedDay(form, "from");
  if (of === null) redirect("/week", RedirectType.replace);
  return { of, open: textIn(form, "open") };
}

/** What was typed stays, and what others have changed is drawn anew. */
function refused(typed: Typed, faults: Readonly<Record<string, string>>, says: string | null = null): AskingAnswer {
  if (says !== null) revalidatePath("/", "layout");
  return { kind: "refused", typed, faults, says };
}

function goOn(at: Parameters<typeof addressOfDeed>[0], deed: Deed | null): never {
  revalidatePath("/", "layout");
  redirect(addressOfDeed(at, deed), RedirectType.replace);
}

const saysOf = (told: Extract<Told, { readonly kind: "stale" | "no workshop" }>): string =>
  told.kind === "no workshop"
    ? NO_WORKSHOP
    : `Changed meanwhile, in another tab: ${isNow(told.now)}. Nothing was overwritten; press again to change that.`;

/** Why a button did nothing, as the page after it says. */
const meanwhileOf = ({ kind }: { readonly kind: string }, about: string): Deed => ({
  kind:
    kind === "stale"
      ? "changed meanwhile"
      : kind === "made" || kind === "already made"
        ? "made meanwhile"
        : kind === "bench" || kind === "at the bench"
          ? "at the bench"
          : "gone meanwhile",
  about,
});

const saidWeight = ({ size = "" }: Typed, { kind }: { readonly kind: "units" | "vessel" }): string =>
  kind === "vessel" ? size.trim() : "";
