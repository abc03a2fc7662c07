"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { answerRefused, answerSaid, sentFrom } from "@/app/_ui/sent-form";
import { sayingIn } from "@/lib/edge/forms/posting-refusals";
import { readTakeBack, takeBackRefused } from "@/lib/edge/forms/take-back-form";
import { realToday } from "@/lib/edge/real-today";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { workshopAtHand } from "@/lib/operations/workshop-at-hand";
import { postingAddress } from "../../_parts/addresses";

const NONE_OPEN = "No workshop is open any more; open one on the first page. What you wrote is still here.";

/** Takes a posting back by another one. @param reverses  its key */
export async function takePostingBack(reverses: string, _before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  const read = readTakeBack(sent.form);
  if (read.kind === "refused") return answerRefused(sent, { ...read, breaks: [] }, read.reading);
  const workshop = await workshopAtHand();
  if (workshop === null) return answerSaid(sent, NONE_OPEN);
  const today = realToday();
  const told = await reversePosting({ ...read.asked, reverses, realToday: today });
  if (told.kind === "no workshop") return answerSaid(sent, NONE_OPEN);
  if (told.kind === "posted" || told.kind === "already posted") {
    revalidatePath("/", "layout");
    return redirect(postingAddress(reverses), RedirectType.push);
  }
  const refused = takeBackRefused(told, sayingIn(workshop, today));
  return answerRefused(sent, { kind: "refused", ...refused }, { record: {}, faults: [], rows: {} });
}
