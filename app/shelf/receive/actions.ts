"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { answerRefused, answerSaid, sentFrom } from "@/app/_ui/sent-form";
import { deliveryFault, deliveryShown } from "@/lib/edge/forms/delivery-answers";
import { readDelivery } from "@/lib/edge/forms/delivery-form";
import { sayingIn } from "@/lib/edge/forms/posting-refusals";
import { realToday } from "@/lib/edge/real-today";
import { lookAtDelivery, receive } from "@/lib/operations/receive-delivery";
import { workshopAtHand } from "@/lib/operations/workshop-at-hand";
import { postingAddress } from "@/lib/edge/ledger-address";

const NONE_OPEN = "No workshop is open any more; open one on the first page. What you wrote is still here.";

/** Shows what a delivery would come to, or posts it as one posting. */
export async function receiveDelivery(_before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  const { deed } = sent;
  if (deed !== "look" && deed !== "post") return { kind: "rearrange", values: sent.values, deed };
  const workshop = await workshopAtHand();
  if (workshop === null) return answerSaid(sent, NONE_OPEN);
  const read = readDelivery(workshop, sent.form);
  if (read.kind === "refused") return answerRefused(sent, { ...read, breaks: [] }, read.reading);
  const today = realToday();
  const asked = { ...read.asked, realToday: today };
  const told = deed === "look" ? await lookAtDelivery(asked) : await receive(asked);
  if (told.kind === "would post")
    return { kind: "shown", values: sent.values, shown: deliveryShown(workshop, read.asked, told.lots) };
  if (told.kind === "no workshop") return answerSaid(sent, NONE_OPEN);
  if (told.kind === "posted" || told.kind === "already posted") {
    revalidatePath("/", "layout");
    return redirect(postingAddress(told.posting.id), RedirectType.push);
  }
  const fault = deliveryFault(told, read.asked, sayingIn(workshop, today));
  return answerRefused(sent, { kind: "refused", faults: [fault], breaks: [] }, read.reading);
}
