"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { units as aUnitCount } from "@/lib/edge/fields";
import { readDayOfPosting, typedIn } from "@/lib/edge/forms/posting-forms";
import { readNewId, textIn } from "@/lib/edge/forms/week-forms";
import { runAddress } from "@/lib/edge/run-address";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { planBatches } from "@/lib/operations/plan-batches";
import type { AskingAnswer } from "@/app/_ui/asking-answer";

const MOST_BATCHES = 100;

/** Plans every batch of a size for one day, each a run of its own. */
export async function planTheBatches(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const typed = typedIn(form, ["day"]);
  const refused = (faults: Readonly<Record<string, string>>, says: string | null): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };
  const [id, product] = [readNewId(form, "key"), textIn(form, "product")];
  const sizes = textIn(form, "units")
    .split(" ")
    .map((size) => aUnitCount(1).safeParse(Number(size)));
  const units = sizes.flatMap(({ data }) => data ?? []);
  if (id === null || product === "" || units.length !== sizes.length) return refused({}, PAGE_OUT_OF_DATE);
  if (units.length > MOST_BATCHES)
    return refused({}, `These are ${String(units.length)} batches; plan at most ${String(MOST_BATCHES)} at a time.`);
  const day = readDayOfPosting(form);
  if ("fault" in day) return refused({ day: day.fault }, null);
  const told = await planBatches({ run: { id, product, date: day.value }, units });
  switch (told.kind) {
    case "all planned":
      revalidatePath("/", "layout");
      return redirect(runAddress({ id, date: day.value }));
    case "no workshop":
      return refused({}, "No workshop is open any more. Open one on the first page.");
    case "no such product":
      return refused({}, "This product is not there any more; it was removed meanwhile.");
    case "already made":
    case "planned otherwise":
    case "no such place":
      return refused({}, "These batches were planned before, with something else in them. Load the page again.");
  }
}
