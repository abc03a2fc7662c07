"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { finishDraft, putDraft, writtenDraft } from "@/lib/edge/forms/change-draft";
import { type FormReading, readForm } from "@/lib/edge/forms/form-reading";
import { RECORD_FORMS } from "@/lib/edge/forms/record-forms";
import { realToday } from "@/lib/edge/real-today";
import { keepDraft } from "@/lib/operations/keep-draft";
import { ANEW, type FormAnswer } from "@/app/_ui/form-answer";
import { sectionPath } from "@/app/book/_parts/addresses";
import { answerRefused, answerSaid, answerStale, sentFrom, staleForm } from "@/app/_ui/sent-form";

/** Keeps a draft as it stands, or makes it a formula where it adds up. */
export async function keepOrFinish(id: string, _before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  const { deed } = sent;
  if (deed !== "draft" && deed !== "finish" && deed !== ANEW) return { kind: "rearrange", values: sent.values, deed };
  let reading: FormReading = { record: {}, faults: [], rows: {} };
  const told = await keepDraft({
    change: (books) => {
      reading = readForm("formulas", sent.form, books.workshop.settings.currency);
      const { record, faults } = reading;
      if (deed === ANEW) return putDraft(books, null, { ...record, id }, faults);
      return deed === "draft"
        ? putDraft(books, id, record, faults)
        : finishDraft(books, id, record, realToday(), faults);
    },
    stale: (books, decided) => {
      if (decided.kind === "refused" || deed === ANEW) return null;
      const draft = books.desk.drafts.find((one) => one.id === id);
      return staleForm(sent.seen, draft ? writtenDraft(books.workshop, draft) : null, decided.record);
    },
  });
  switch (told.kind) {
    case "no workshop":
      return answerSaid(sent, "No workshop is open any more; open one on the first page.");
    case "refused":
      return answerRefused(sent, told, reading);
    case "stale":
      return answerStale(sent, told, RECORD_FORMS.formulas);
    case "changed":
    case "already kept":
      revalidatePath("/", "layout");
      return redirect(sectionPath("formulas", { kept: id }));
  }
}
