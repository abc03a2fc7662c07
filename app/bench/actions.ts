"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { batchAddress, closeAddress, recordAddress } from "@/lib/edge/bench-address";
import { findingInWords } from "@/lib/edge/finding-words";
import {
  CLOSE_FIELDS,
  JUDGE_FIELDS,
  readClosing,
  readJudgement,
  readScheme,
  readStart,
  SCHEME_FIELDS,
  START_FIELDS,
} from "@/lib/edge/forms/bench-forms";
import { FIELDS_TYPED, readBenchNote, WRITTEN_KINDS } from "@/lib/edge/forms/bench-note";
import { codeTaken, noteRefused } from "@/lib/edge/forms/bench-refusals";
import { typedIn } from "@/lib/edge/forms/posting-forms";
import { textIn } from "@/lib/edge/forms/week-forms";
import { realToday } from "@/lib/edge/real-today";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { setBatchCodes } from "@/lib/operations/set-batch-codes";
import { startBatch } from "@/lib/operations/start-batch";
import { instantOf, isWritten, writeDown } from "@/lib/operations/write-down";

const NO_WORKSHOP = "No workshop is open any more. Open one on the first page.";

/** Starts a planned run as a batch and goes to the bench. */
export async function startABatch(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, START_FIELDS);
  const read = readStart(form);
  if (read === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(typed, read.faults);
  const told = await startBatch({ ...read.asked, at: instantOf(new Date()), realToday: realToday() });
  switch (told.kind) {
    case "started":
      return goOn(batchAddress(told.batch.run.id));
    // Pressed twice, or started on another device: it is the same batch.
    case "at the bench":
      return goOn(batchAddress(told.batch.run.id));
    case "already made":
      return refused(typed, {}, "That run was closed as made meanwhile. Nothing was started.");
    case "no such run":
      return refused(typed, {}, "That run was removed meanwhile. Nothing was started; go back to the bench.");
    case "stale":
      return refused(typed, {}, "The run was changed meanwhile. Look at it again, then press once more.");
    case "formula has errors": {
      const errors = told.findings.map((finding) =>
        findingInWords(finding, { today: realToday(), nameOf: ({ id }) => id }),
      );
      return refused(typed, {}, `A check stops it. ${errors.map(({ says, why }) => `${says}: ${why}.`).join(" ")}`);
    }
    case "warnings to answer":
      return refused(typed, { despite: "is needed: the checks warn; say why it may start all the same" });
    case "no code":
      return refused(typed, { code: "is needed: write one, or say on the bench page how your codes are made" });
    case "code taken":
      return refused(typed, { code: codeTaken(told) });
    case "no workshop":
      return refused(typed, {}, NO_WORKSHOP);
  }
}

/** Writes one note down, from a form that was sent without scripts. */
export async function writeANote(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const kind = WRITTEN_KINDS.find((known) => known === textIn(form, "kind"));
  const typed = typedIn(form, kind === undefined ? [] : FIELDS_TYPED[kind]);
  const read = readBenchNote(form, instantOf(new Date()));
  if (read === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(typed, read.faults);
  const told = await writeDown({ ...read.asked, closing: null, realToday: realToday() });
  // What is asked at closing is answered on its page, which leads on to the record once the batch is closed.
  const isOfClosing = kind === "checked" || kind === "recoded";
  if (isWritten(told)) return goOn((isOfClosing ? closeAddress : batchAddress)(read.asked.batch));
  const { faults, says } = noteRefused(told);
  return refused(typed, faults, says);
}

/** Closes a batch: what was filled comes out of it, and its record is complete but for what is annexed. */
export async function closeABatch(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, CLOSE_FIELDS);
  const read = readClosing(form, instantOf(new Date()));
  if (read === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(typed, read.faults);
  const { batch, note, draws, minutes } = read.asked;
  const told = await writeDown({ batch, note, seen: [], closing: { draws, minutes }, realToday: realToday() });
  if (isWritten(told)) return goOn(recordAddress(batch));
  if (told.kind === "out of date") return refused(typed, { whyOutOfDate: noteRefused(told).faults.why ?? "is needed" });
  const { faults, says } = noteRefused(told);
  return refused(typed, faults, says);
}

/** Releases or rejects what waited for a second look. */
export async function judgeABatch(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, JUDGE_FIELDS);
  const read = readJudgement(form, instantOf(new Date()));
  if (read === null) return refused(typed, {}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(typed, read.faults);
  const told = await writeDown({ ...read.asked, seen: [], closing: null, realToday: realToday() });
  if (isWritten(told)) return goOn(recordAddress(read.asked.batch));
  const { faults, says } = noteRefused(told);
  return refused(typed, faults, says);
}

/** Says how batches are called from now on. */
export async function keepBatchCodes(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, SCHEME_FIELDS);
  const read = readScheme(form);
  if ("faults" in read) return refused(typed, read.faults);
  const told = await setBatchCodes(read.asked);
  return told.kind === "kept" ? goOn("/bench") : refused(typed, {}, NO_WORKSHOP);
}

function refused(
  typed: Readonly<Record<string, string>>,
  faults: Readonly<Partial<Record<string, string>>>,
  says: string | null = null,
): AskingAnswer {
  if (says !== null) revalidatePath("/", "layout");
  return { kind: "refused", typed, faults, says };
}

function goOn(address: "/bench" | ReturnType<typeof batchAddress | typeof recordAddress | typeof closeAddress>): never {
  revalidatePath("/", "layout");
  redirect(address, RedirectType.replace);
}
