"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { inARow } from "@/lib/edge/counted";
import { note } from "@/lib/edge/fields";
import { putDraft } from "@/lib/edge/forms/change-draft";
import { putRecord, putSettings, type RecordChange } from "@/lib/edge/forms/change-record";
import { type FormReading, readForm } from "@/lib/edge/forms/form-reading";
import { RECORD_FORMS } from "@/lib/edge/forms/record-forms";
import { writtenRecord, writtenSettings } from "@/lib/edge/forms/written-record";
import { realToday } from "@/lib/edge/real-today";
import { keepDraft } from "@/lib/operations/keep-draft";
import { type FormulaChange, keepFormula } from "@/lib/operations/keep-formula";
import { keepRecord } from "@/lib/operations/keep-record";
import { ANEW, type FormAnswer } from "@/app/_ui/form-answer";
import { newPath, sectionPath } from "./_parts/addresses";
import { type Section, sectionOf } from "./_parts/sections";
import { AS_NEXT, MOST_OF_A_WHY, WHY } from "./_parts/version-fields";
import {
  answerRefused,
  answerSaid,
  answerStale,
  type Sent,
  sentFrom,
  type StaleForm,
  staleForm,
} from "@/app/_ui/sent-form";

const NONE_OPEN = "No workshop is open any more; open one on the first page. What you wrote is still here.";
const EMPTY: FormReading = { record: {}, faults: [], rows: {} };

/**
 * Keeps one record of the book, or sends it back with what is wrong.
 * @param id  of the record that the form was drawn from; null for a new one, whose id was drawn with the form
 */
export async function keep(list: string, id: string | null, _before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  const section = sectionOf(list);
  if (section === null) return answerSaid(sent, "There is no such section in the Book.");
  switch (sent.deed) {
    case "keep":
    case "another":
      return keepIn(section, id, sent);
    case ANEW:
      return keepIn(section, null, sent);
    case "draft":
      return keepAsDraft(sent);
    default:
      return { kind: "rearrange", values: sent.values, deed: sent.deed };
  }
}

async function keepIn(section: Section, id: string | null, sent: Sent): Promise<FormAnswer> {
  let reading = EMPTY;
  const asked: Parameters<typeof keepRecord<RecordChange, StaleForm>>[0] = {
    change: (workshop) => {
      reading = readForm(section, sent.form, workshop.settings.currency);
      return putRecord(workshop, section, id, reading.record, realToday(), reading.faults);
    },
    stale: (workshop, decided) =>
      id === null || decided.kind === "refused"
        ? null
        : staleForm(sent.seen, writtenRecord(workshop, section, id), decided.record),
  };
  const said = versionSaid(sent);
  if ("fault" in said) return refusedAtWhy(sent, said.fault);
  const told = await (section === "formulas" && id !== null
    ? keepFormula(asked, { formula: id, realToday: realToday(), ...said })
    : keepRecord(asked));
  switch (told.kind) {
    case "why is needed":
      return refusedAtWhy(sent, whyIsNeeded(told.number));
    case "no workshop":
      return answerSaid(sent, NONE_OPEN);
    case "already made":
      return answerSaid(sent, "A run that was made has this id.");
    case "measure is held":
      return answerSaid(sent, measureIsHeld(told.by));
    case "code of a batch":
      return answerSaid(sent, codeOfABatch(told.lot));
    case "lot has moved":
      return answerSaid(
        sent,
        `Something of lot ${told.lot.id} was used or sold already, so it stays what it is. Write it off and enter another lot.`,
      );
    case "refused":
      return answerRefused(sent, told, reading);
    case "stale":
      // What the page says of the record is to be what is kept now.
      revalidatePath("/", "layout");
      return answerStale(sent, told, RECORD_FORMS[section]);
    case "changed":
    case "already kept": {
      const kept = String(told.record.id);
      revalidatePath("/", "layout");
      return redirect(sent.deed === "another" ? newPath(section, { kept }) : sectionPath(section, { kept }));
    }
  }
}

const measureIsHeld = (by: readonly string[]): string =>
  `It is weighed in ${inARow([...new Set(by)])}, drafts, earlier versions or trials that stay as they are, so that it cannot be counted. Enter what is counted as a material of its own.`;

const codeOfABatch = (lot: string): string =>
  `${lot} is the code of a batch that is open at the bench, and the lot that comes out of it will have it. Write another.`;

const aWhy = note(MOST_OF_A_WHY);

/** What the form of a formula says of its version, or what is wrong with it. */
function versionSaid({ values }: Sent): Pick<FormulaChange, "why" | "asNext"> | { readonly fault: string } {
  const asNext = values[AS_NEXT.name] === "yes";
  const typed = values[WHY.name]?.trim() ?? "";
  if (typed === "") return { why: null, asNext };
  const read = aWhy.safeParse(typed);
  return read.success ? { why: read.data, asNext } : { fault: read.error.issues[0]?.message ?? "must be a text" };
}

const refusedAtWhy = ({ values }: Sent, message: string): FormAnswer => ({
  kind: "refused",
  values,
  faults: [{ name: WHY.name, message }],
  breaks: [],
});

const whyIsNeeded = (number: number): string =>
  `is needed: a batch was made by version ${String(number)}, so that this change becomes version ${String(number + 1)}; say in a few words what it is for`;

/** A formula beside the others, whatever it comes to; its id was drawn with the form. */
async function keepAsDraft(sent: Sent): Promise<FormAnswer> {
  let reading = EMPTY;
  const told = await keepDraft({
    change: (books) => {
      reading = readForm("formulas", sent.form, books.workshop.settings.currency);
      return putDraft(books, null, { ...reading.record, id: sent.values.draftId ?? "" }, reading.faults);
    },
    stale: () => null,
  });
  switch (told.kind) {
    case "no workshop":
      return answerSaid(sent, NONE_OPEN);
    case "refused":
      return answerRefused(sent, told, reading);
    case "stale":
    case "changed":
    case "already kept":
      revalidatePath("/", "layout");
      return redirect(sectionPath("formulas", { kept: sent.values.draftId ?? "" }));
  }
}

/** Keeps the workshop's rates and calendar. */
export async function keepSettings(_before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  if (sent.deed !== "keep") return { kind: "rearrange", values: sent.values, deed: sent.deed };
  let reading = EMPTY;
  const told = await keepRecord({
    change: (workshop) => {
      reading = readForm("settings", sent.form, workshop.settings.currency);
      return putSettings(workshop, reading.record, realToday(), reading.faults);
    },
    stale: (workshop, decided) =>
      decided.kind === "refused" ? null : staleForm(sent.seen, writtenSettings(workshop), decided.record),
  });
  switch (told.kind) {
    case "no workshop":
      return answerSaid(sent, NONE_OPEN);
    case "already made":
      return answerSaid(sent, "A run that was made has this id.");
    case "measure is held":
      return answerSaid(sent, measureIsHeld(told.by));
    case "code of a batch":
      return answerSaid(sent, codeOfABatch(told.lot));
    case "lot has moved":
      return answerSaid(
        sent,
        `Something of lot ${told.lot.id} was used or sold already, so it stays what it is. Write it off and enter another lot.`,
      );
    case "refused":
      return answerRefused(sent, told, reading);
    case "stale":
      revalidatePath("/", "layout");
      return answerStale(sent, told, RECORD_FORMS.settings);
    case "changed":
    case "already kept":
      revalidatePath("/", "layout");
      return redirect("/book?kept=rates");
  }
}
