import { revalidatePath } from "next/cache";
import { readOnce } from "@/app/plan-for-page";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import { noteRefused } from "@/lib/edge/forms/bench-refusals";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { realToday } from "@/lib/edge/real-today";
import { instantOf, isWritten, writeDown } from "@/lib/operations/write-down";

interface Asked {
  readonly params: Promise<{ readonly batch: string }>;
}

const answer = (told: unknown, status = 200): Response =>
  Response.json(told, { status, headers: { "Cache-Control": "no-store" } });

/** How many notes the batch has: a device asks so as to see what others have written. */
export async function GET(_request: Request, { params }: Asked): Promise<Response> {
  const run = idOfSegment((await params).batch);
  const batch = (await readOnce())?.desk.batches.find((each) => each.run.id === run);
  return batch ? answer({ notes: batch.notes.length }) : answer({ notes: null }, 404);
}

/**
 * Writes one note down that a device sends as the fields of its form. It may be sent again until it is answered: the
 * key makes it one note. @rule BENCH-5
 */
export async function POST(request: Request): Promise<Response> {
  const fields = await fieldsIn(request);
  const read = fields && readBenchNote(fields, instantOf(new Date()));
  if (!read)
    return answer({ kind: "refused", faults: {}, says: "It does not say what it is about. Load the page again." });
  if ("faults" in read) return answer({ kind: "refused", faults: read.faults, says: null });
  const told = await writeDown({ ...read.asked, closing: null, realToday: realToday() });
  if (!isWritten(told)) return answer({ kind: "refused", ...noteRefused(told) });
  revalidatePath("/", "layout");
  return answer({ kind: "written" });
}

async function fieldsIn(request: Request): Promise<Pick<FormData, "get" | "keys"> | null> {
  try {
    const sent: unknown = await request.json();
    if (typeof sent !== "object" || sent === null) return null;
    const fields = new Map(Object.entries(sent).filter(([, value]) => typeof value === "string"));
    return { get: (name) => (fields.get(name) as string | undefined) ?? null, keys: () => fields.keys() };
  } catch {
    return null;
  }
}
