"use server";

import { revalidatePath } from "next/cache";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import { type NoteAnswer, noteRefused } from "@/lib/edge/forms/bench-refusals";
import { realToday } from "@/lib/edge/real-today";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { instantOf, isWritten, writeDown } from "@/lib/operations/write-down";

export type SentNoteAnswer = { readonly kind: "written" } | ({ readonly kind: "refused" } & NoteAnswer);

/** Writes a note down that a device sends as the fields of its form. The key makes it one note. @rule BENCH-5 */
export async function writeSentNote(fields: Readonly<Record<string, string>>): Promise<SentNoteAnswer> {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  const read = readBenchNote(form, instantOf(new Date()));
  if (read === null) return { kind: "refused", faults: {}, says: PAGE_OUT_OF_DATE };
  if ("faults" in read) return { kind: "refused", faults: read.faults, says: null };
  const told = await writeDown({ ...read.asked, closing: null, realToday: realToday() });
  if (!isWritten(told)) return { kind: "refused", ...noteRefused(told) };
  revalidatePath("/", "layout");
  return { kind: "written" };
}
