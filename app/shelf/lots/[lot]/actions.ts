"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { answerRefused, answerSaid, sentFrom } from "@/app/_ui/sent-form";
import { fieldOfRefusal, type LotAsked, type LotDeed, readLotForm } from "@/lib/edge/forms/lot-forms";
import { refusalInWords, sayingIn, waitsAtBenchWords } from "@/lib/edge/forms/posting-refusals";
import { realToday } from "@/lib/edge/real-today";
import { holdLot } from "@/lib/operations/hold-lot";
import { postLateCost } from "@/lib/operations/late-cost";
import { releaseLot } from "@/lib/operations/release-lot";
import { workshopAtHand } from "@/lib/operations/workshop-at-hand";
import { writeOffStock } from "@/lib/operations/write-off";
import { lotAddress, postingAddress } from "@/lib/edge/ledger-address";

const NONE_OPEN = "No workshop is open any more; open one on the first page. What you wrote is still here.";

/** Holds, releases or writes off some of a lot, or posts a cost that came after it. */
export async function actOnLot(lot: string, deed: LotDeed, _before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  const workshop = await workshopAtHand();
  if (workshop === null) return answerSaid(sent, NONE_OPEN);
  const read = readLotForm(workshop, lot, deed, sent.form);
  if (read.kind === "refused") return answerRefused(sent, { ...read, breaks: [] }, read.reading);
  const today = realToday();
  const told = await posted(lot, read.asked, today);
  if (told.kind === "no workshop") return answerSaid(sent, NONE_OPEN);
  if (told.kind === "posted" || told.kind === "already posted") {
    revalidatePath("/", "layout");
    const { id } = told.posting;
    // A cost may have gone on to where the lot's own page does not look.
    return redirect(deed === "cost" ? postingAddress(id) : lotAddress(lot, { done: id }), RedirectType.push);
  }
  if (told.kind === "lot is nowhere" || told.kind === "not finished")
    return answerSaid(sent, "Nothing of this lot has ever come in, so nothing can be done with it.");
  if (told.kind === "waits at the bench") return answerSaid(sent, waitsAtBenchWords(told.code));
  const fault = { field: fieldOfRefusal(deed, told.kind), message: refusalInWords(told, sayingIn(workshop, today)) };
  return answerRefused(sent, { kind: "refused", faults: [fault], breaks: [] }, read.reading);
}

function posted(id: string, asked: LotAsked, today: ReturnType<typeof realToday>) {
  const lot = { of: "material", id } as const;
  const { key, day, reason } = asked;
  const said = { key, day, realToday: today, reason };
  switch (asked.deed) {
    case "hold":
      return holdLot({ ...said, lines: [{ lot, quantity: asked.quantity }] });
    case "release":
      return releaseLot({ ...said, lines: [{ lot, quantity: asked.quantity }] });
    case "off":
      return writeOffStock({ ...said, as: asked.as, from: asked.from, lines: [{ lot, quantity: asked.quantity }] });
    case "cost":
      return postLateCost({ ...said, lines: [{ lot, amount: asked.amount }] });
  }
}
