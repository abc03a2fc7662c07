"use server";

import { basename } from "node:path";
import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { NO_FILE, TOO_LARGE, UPLOAD_LIMIT_BYTES } from "@/lib/edge/local-request";
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
  if (bytes === null) return { kind: "refused", faults: [NO_FILE] };
  if (bytes.byteLength > UPLOAD_LIMIT_BYTES) return { kind: "refused", faults: [TOO_LARGE] };
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

/** The file that was chosen; else the one that was looked into before and came along. */
async function bytesIn(form: FormData): Promise<Uint8Array | null> {
  const [file, carried] = [form.get("file"), form.get("carried")];
  if (file instanceof File && file.size > 0) return new Uint8Array(await file.arrayBuffer());
  return typeof carried === "string" && carried !== "" ? new TextEncoder().encode(carried) : null;
}
