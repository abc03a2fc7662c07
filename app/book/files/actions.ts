"use server";

import { basename } from "node:path";
import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { faultBeforeSending, NO_FILE } from "@/lib/edge/local-request";
import { realToday } from "@/lib/edge/real-today";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { openWorkshop } from "@/lib/operations/open-workshop";
import { holdingsOf, markOf, type OpeningAnswer } from "@/app/book/_parts/opening-answer";

const A_MINUTE = 60;
/** A file up to this size is sent along with its preview, so that it need not be chosen a second time. */
const CARRIED_CHARACTERS = 4 * 1024 * 1024;

/** Shows what a file holds, and opens it in the place of the present workshop once that was seen. */
export async function openFile(_before: OpeningAnswer, form: FormData): Promise<OpeningAnswer> {
  const bytes = await bytesIn(form);
  if (typeof bytes === "string") return { kind: "refused", faults: [bytes] };
  const reading = readWorkshopFile(bytes, realToday());
  if (reading.kind === "refused") return reading;
  const { workshop, past } = reading;
  const text = writeWorkshopFile(workshop, past);
  const mark = markOf(text);
  if (form.get("deed") !== "open" || form.get("mark") !== mark)
    return {
      kind: "looked into",
      name: workshop.settings.name,
      holds: holdingsOf(workshop),
      mark,
      text: text.length <= CARRIED_CHARACTERS ? text : null,
    };
  const { keptAs } = await openWorkshop(workshop, past);
  const jar = await cookies();
  if (keptAs !== null) jar.set("kept", basename(keptAs), { maxAge: A_MINUTE, sameSite: "strict", httpOnly: true });
  revalidatePath("/", "layout");
  return redirect("/");
}

/** The file that was chosen; else the one that was looked into before and came along; else why there is none. */
async function bytesIn(form: FormData): Promise<Uint8Array | string> {
  const [file, carried] = [form.get("file"), form.get("carried")];
  const chosen = file instanceof File ? file : new File([], "");
  const fault = faultBeforeSending(chosen);
  if (fault === null) return new Uint8Array(await chosen.arrayBuffer());
  return fault === NO_FILE && typeof carried === "string" && carried !== "" ? new TextEncoder().encode(carried) : fault;
}
