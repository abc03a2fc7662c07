"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { putFirstProduct } from "@/lib/edge/forms/first-product";
import { realToday } from "@/lib/edge/real-today";
import { keepRecord } from "@/lib/operations/keep-record";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { answerSaid, inOrder, sentFrom } from "@/app/_ui/sent-form";

/** Makes a product with everything that it needs, in one change, and goes on to what it costs. */
export async function keepFirstProduct(_before: FormAnswer, data: FormData): Promise<FormAnswer> {
  const sent = sentFrom(data);
  if (sent.deed !== "keep") return { kind: "rearrange", values: sent.values, deed: sent.deed };
  const told = await keepRecord({
    change: (workshop) => putFirstProduct(workshop, sent.form, realToday()),
    stale: () => null,
  });
  switch (told.kind) {
    case "no workshop":
      return answerSaid(sent, "No workshop is open any more; open one on the first page.");
    case "already made":
    case "stale":
    case "measure is held":
    case "code of a batch":
    case "lot has moved":
      return answerSaid(sent, "Something else was kept meanwhile. Keep it again.");
    case "refused":
      return { kind: "refused", values: sent.values, faults: inOrder(told.faults, sent.values), breaks: told.breaks };
    case "changed":
      revalidatePath("/", "layout");
      return redirect(`/cost/${encodeURIComponent(told.product)}`);
  }
}
