"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { answerRefused, answerSaid, sentFrom } from "@/app/_ui/sent-form";
import { readCount } from "@/lib/edge/forms/count-form";
import { countRefusal, countShown } from "@/lib/edge/forms/count-words";
import { sayingIn } from "@/lib/edge/forms/posting-refusals";
import { realToday } from "@/lib/edge/real-today";
import { lookAtCount, postCount } from "@/lib/operations/count-shelf";
import { workshopAtHand } from "@/lib/operations/workshop-at-hand";
import { postingAddress } from "@/lib/edge/ledger-address";

const NONE_OPEN = "No workshop is open any more; open one on the first page. What you wrote is still here.";

/** Shows what a count would change, or posts it as one posting. */
export async function countTheShelf(_before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  const workshop = await workshopAtHand();
  if (workshop === null) return answerSaid(sent, NONE_OPEN);
  const read = readCount(workshop, sent.form);
  if (read.kind === "refused") return answerRefused(sent, { ...read, breaks: [] }, read.reading);
  const today = realToday();
  const asked = { ...read.asked, realToday: today };
  const told = sent.deed === "post" ? await postCount(asked) : await lookAtCount(asked);
  if (told.kind === "no workshop") return answerSaid(sent, NONE_OPEN);
  if (told.kind === "posted" || told.kind === "already posted") {
    revalidatePath("/", "layout");
    return redirect(postingAddress(told.posting.id), RedirectType.push);
  }
  const { values } = sent;
  const saying = sayingIn(workshop, today);
  if (told.kind === "would post")
    return { kind: "shown", values, shown: countShown(workshop, told.differences, saying) };
  const lot = "lot" in told ? told.lot : null;
  const message = countRefusal(told, asked, saying);
  const fault = { field: told.kind === "future day" ? "day" : lot && read.fieldOf(lot), message };
  return answerRefused(sent, { kind: "refused", faults: [fault], breaks: [] }, read.reading);
}
