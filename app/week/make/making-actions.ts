"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { drawField, MAKE_FIELDS, meantBy, readMaking, unlikelyUnits } from "@/lib/edge/forms/make-form";
import { placedRefusal, shownIn, typedIn } from "@/lib/edge/forms/posting-forms";
import { refusalWords } from "@/lib/edge/forms/refusal-words";
import { readReversal, REVERSAL_FIELDS, reversalRefused } from "@/lib/edge/forms/reversal-form";
import { textIn } from "@/lib/edge/forms/week-forms";
import { makingAddress } from "@/lib/edge/ledger-address";
import { findingInWords } from "@/lib/edge/finding-words";
import { realToday } from "@/lib/edge/real-today";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { makePlannedRun } from "@/lib/operations/make-run";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { isNow } from "../_parts/run-words";

const NO_WORKSHOP = "No workshop is open any more. Open one on the first page.";

/** Makes a planned run: what was drawn leaves the shelf, what came out stands as a finished lot, the run is closed. */
export async function makeARun(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, MAKE_FIELDS);
  const read = readMaking(form);
  if (read === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(typed, read.faults);
  const meant = meantBy(textIn(form, "deed"));
  const unlikely = unlikelyUnits(read.asked, meant);
  if (unlikely !== null) return { ...refused(typed, { made: unlikely.asks }), yes: unlikely };
  const told = await makePlannedRun({ ...read.asked, outOfDate: meant.outOfDate, realToday: realToday() });
  const { id } = read.asked.run;
  switch (told.kind) {
    case "posted":
    case "already posted":
      return goOn(id, "made");
    case "already made":
      return goOn(id, "made meanwhile");
    case "no such run":
      return goOn(id, "gone meanwhile");
    case "at the bench":
      return refused(
        typed,
        {},
        `It was started as batch ${told.batch.code} meanwhile: close it at the bench. Nothing was changed.`,
      );
    case "stale":
      return refused(
        typed,
        {},
        `Changed meanwhile, in another tab: ${isNow(told.now)}. Nothing was changed; look at what it needs now, and press again.`,
      );
    case "formula has errors": {
      const errors = told.findings.map((finding) =>
        findingInWords(finding, { today: realToday(), nameOf: ({ id: of }) => of }),
      );
      const says = errors.map(({ says: what, why, mend }) => `${what}: ${why}. ${mend ?? ""}`.trimEnd());
      return refused(typed, {}, `A check of its formula stops this run. ${says.join(" ")} Nothing was changed.`);
    }
    case "finished lot exists":
      return refused(typed, {}, PAGE_OUT_OF_DATE);
    case "no workshop":
      return refused(typed, {}, NO_WORKSHOP);
    case "future day":
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "not there":
    case "out of date":
    case "cost came later":
    case "out of range": {
      const there = told.kind === "not there" ? told.there : null;
      const { faults, says } = placedRefusal(refusalWords(told, shownIn(form)), ({ of, id: lot }) =>
        of === "material" ? drawField(read.asked, lot, there) : null,
      );
      return refused(typed, faults, says);
    }
  }
}

/** Takes a making back: its draws are on the shelf again, its units are gone, and the run is planned. */
export async function takeMakingBack(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, REVERSAL_FIELDS);
  const [read, run] = [readReversal(form), textIn(form, "run")];
  if (read === null || run === "") return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(typed, read.faults);
  const told = await reversePosting({ ...read.asked, realToday: realToday() });
  if (told.kind === "no workshop") return refused(typed, {}, NO_WORKSHOP);
  if (told.kind === "posted" || told.kind === "already posted") return goOn(run, "taken back");
  const { faults, says } = reversalRefused(told, form);
  return refused(typed, faults, says);
}

function refused(
  typed: Readonly<Record<string, string>>,
  faults: Readonly<Partial<Record<string, string>>>,
  says: string | null = null,
): Extract<AskingAnswer, { readonly kind: "refused" }> {
  if (says !== null) revalidatePath("/", "layout");
  return { kind: "refused", typed, faults, says };
}

function goOn(run: string, did: string): never {
  revalidatePath("/", "layout");
  redirect(`${makingAddress(run)}?${new URLSearchParams({ did }).toString()}`, RedirectType.replace);
}
