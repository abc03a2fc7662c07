"use server";

import { readFile } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { counted, inARow } from "@/lib/edge/counted";
import { day } from "@/lib/edge/fields";
import { dayShown } from "@/lib/edge/figures";
import { TOO_LARGE, UPLOAD_LIMIT_BYTES } from "@/lib/edge/local-request";
import { realToday } from "@/lib/edge/real-today";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { openEmpty } from "@/lib/operations/open-empty";
import { openWorkshop } from "@/lib/operations/open-workshop";
import { setToday } from "@/lib/operations/set-today";
import type { DayAnswer } from "./_parts/day-answer";
import type { Opening } from "./_parts/opening-state";

const A_YEAR = 365 * 24 * 60 * 60;
const A_MINUTE = 60;
const MOST_NAMED = 3;

/** Keeps the page dark or light from now on. */
export async function switchScheme(form: FormData): Promise<void> {
  const scheme = form.get("scheme") === "dark" ? "dark" : "light";
  (await cookies()).set("scheme", scheme, { maxAge: A_YEAR, sameSite: "strict", httpOnly: true });
}

/** Plans from the real date again, where the day that was set is still the one that was shown. */
export async function backToRealDate(_before: DayAnswer, form: FormData): Promise<DayAnswer> {
  const from = day.safeParse(form.get("from"));
  if (!from.success) return { kind: "refused", says: "The form did not say which day is set. Load the page again." };
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
  if (!(file instanceof File) || file.size === 0)
    return { kind: "refused", faults: ["Choose a workshop file first; an empty one holds no workshop."] };
  if (file.size > UPLOAD_LIMIT_BYTES) return { kind: "refused", faults: [TOO_LARGE] };
  return openBytes(new Uint8Array(await file.arrayBuffer()));
}

/** Opens the invented workshop that comes with the app. */
export async function openDemo(): Promise<Opening> {
  return openBytes(await readFile(resolve("seed/demo-workshop.json")));
}

/** Opens a workshop with nothing in it but its name and currency. */
export async function openNothing(_before: Opening, form: FormData): Promise<Opening> {
  const typed = { name: textOf(form.get("name")).trim(), currency: textOf(form.get("currency")).trim().toUpperCase() };
  const reading = readWorkshopFile(new TextEncoder().encode(JSON.stringify(emptyFile(typed))), realToday());
  if (reading.kind === "refused") return { kind: "refused", faults: reading.faults, typed };
  const { settings } = reading.workshop;
  return goHome((await openEmpty(settings.name, settings.currency)).keptAs);
}

const textOf = (entry: FormDataEntryValue | null): string => (typeof entry === "string" ? entry : "");

/** What was typed as a workshop file, so that it is held to the same rules. */
const emptyFile = (typed: { readonly name: string; readonly currency: string }) => ({
  format: "stillroom-workshop",
  version: 1,
  workshop: { ...typed, labourPerHour: "0", overheadPerHour: "0", balanceStep: "0.1 g" },
  suppliers: [],
  materials: [],
  offers: [],
  lots: [],
  orders: [],
  formulas: [],
  products: [],
  runs: [],
  finished: [],
  sales: [],
});

async function openBytes(bytes: Uint8Array): Promise<Opening> {
  const reading = readWorkshopFile(bytes, realToday());
  if (reading.kind === "refused") return reading;
  return goHome((await openWorkshop(reading.workshop, reading.past)).keptAs);
}

/** The first page, which says for a minute where the workshop before this one was kept. */
async function goHome(keptAs: string | null): Promise<never> {
  const jar = await cookies();
  if (keptAs === null) jar.delete("kept");
  else jar.set("kept", basename(keptAs), { maxAge: A_MINUTE, sameSite: "strict", httpOnly: true });
  revalidatePath("/", "layout");
  redirect("/");
}
