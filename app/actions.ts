"use server";

import { readFile } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { counted, inARow } from "@/lib/edge/counted";
import { emptyWorkshopFile } from "@/lib/edge/empty-workshop";
import { day } from "@/lib/edge/fields";
import { dayShown } from "@/lib/edge/figures";
import { faultBeforeSending, NO_FILE } from "@/lib/edge/local-request";
import { realToday } from "@/lib/edge/real-today";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { openFirstWorkshop, openWorkshop } from "@/lib/operations/open-workshop";
import { setToday } from "@/lib/operations/set-today";
import type { DayAnswer } from "./_parts/day-answer";
import { FIRST_PRODUCT, type Opening } from "./_parts/opening-state";

const A_YEAR = 365 * 24 * 60 * 60;
const A_MINUTE = 60;
const MOST_NAMED = 3;
const ONE_IS_OPEN =
  "A workshop was opened meanwhile, in another tab or window, and it stays. Load this page again to see it.";

/** Keeps the page dark or light from now on. */
export async function switchScheme(form: FormData): Promise<void> {
  const scheme = form.get("scheme") === "dark" ? "dark" : "light";
  (await cookies()).set("scheme", scheme, { maxAge: A_YEAR, sameSite: "strict", httpOnly: true });
}

/** Plans from the real date again, where the day that was set is still the one that was shown. */
export async function backToRealDate(_before: DayAnswer, form: FormData): Promise<DayAnswer> {
  const from = day.safeParse(form.get("from"));
  if (!from.success) return { kind: "refused", says: PAGE_OUT_OF_DATE };
  const told = await setToday({ from: from.data, to: null, realToday: realToday() });
  revalidatePath("/", "layout");
  switch (told.kind) {
    case "set":
    case "already so":
      return { kind: "done" };
    case "stale":
      return { kind: "refused", says: "Another day was set meanwhile, in another tab or window. It stays." };
    case "no workshop":
      return { kind: "refused", says: "No workshop is open any more. Open one on the first page." };
    case "lots come later": {
      const { today, lots } = told;
      const names = lots.slice(0, MOST_NAMED).map(({ id }) => id);
      const more = lots.length > names.length ? [counted(lots.length - names.length, "other", "others")] : [];
      return {
        kind: "refused",
        says: `The day stays. The real date is ${dayShown(today, today, { year: true })}, and ${lots.length === 1 ? "lot" : "lots"} ${inARow([...names, ...more])} came after it: what is on the shelf has come. Mend the dates of those lots first.`,
      };
    }
  }
}

/** Opens the workshop of a file that was sent. */
export async function openFile(_before: Opening, form: FormData): Promise<Opening> {
  const file = form.get("file");
  const fault = file instanceof File ? faultBeforeSending(file) : NO_FILE;
  if (fault !== null || !(file instanceof File)) return { kind: "refused", faults: [fault ?? NO_FILE] };
  return openBytes(new Uint8Array(await file.arrayBuffer()), form);
}

/** Opens the invented workshop that comes with the app. */
export async function openDemo(_before: Opening, form: FormData): Promise<Opening> {
  return openBytes(await readFile(resolve("seed/demo-workshop.json")), form);
}

/** Opens a workshop with nothing in it but its name and currency. */
export async function openNothing(_before: Opening, form: FormData): Promise<Opening> {
  const typed = { name: textOf(form.get("name")).trim(), currency: textOf(form.get("currency")).trim().toUpperCase() };
  const reading = readWorkshopFile(emptyWorkshopFile(typed), realToday());
  if (reading.kind === "refused") return { kind: "refused", faults: reading.faults, typed };
  const opening = await openRead(reading, form);
  return opening.kind === "refused" ? { ...opening, typed } : opening;
}

type ReadWorkshop = Extract<ReturnType<typeof readWorkshopFile>, { readonly kind: "read" }>;

const textOf = (entry: FormDataEntryValue | null): string => (typeof entry === "string" ? entry : "");

async function openBytes(bytes: Uint8Array, form: FormData): Promise<Opening> {
  const reading = readWorkshopFile(bytes, realToday());
  return reading.kind === "refused" ? reading : openRead(reading, form);
}

/** In the place of the workshop that the page named; one that was opened since the page was drawn stays. */
async function openRead({ workshop, past }: ReadWorkshop, form: FormData): Promise<Opening> {
  const open = form.get("over") === "open" ? openWorkshop : openFirstWorkshop;
  const opened = await open(workshop, past);
  return opened.kind === "opened" ? goOn(opened.keptAs, form) : { kind: "refused", faults: [ONE_IS_OPEN] };
}

/** To the first page, which says for a minute where the workshop before this one was kept; else where the form says. */
async function goOn(keptAs: string | null, form: FormData): Promise<never> {
  const jar = await cookies();
  if (keptAs === null) jar.delete("kept");
  else jar.set("kept", basename(keptAs), { maxAge: A_MINUTE, sameSite: "strict", httpOnly: true });
  revalidatePath("/", "layout");
  redirect(keptAs === null && form.get("then") === FIRST_PRODUCT ? "/book/first" : "/");
}
