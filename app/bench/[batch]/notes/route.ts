import { readOnce } from "@/app/plan-for-page";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { writeSentNote } from "../../note-actions";

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

/** Takes one note that a device sends; it may be sent again until it is answered. */
export const POST = async (request: Request): Promise<Response> => answer(await writeSentNote(await fieldsIn(request)));

async function fieldsIn(request: Request): Promise<Readonly<Record<string, string>>> {
  try {
    const sent: unknown = await request.json();
    if (typeof sent !== "object" || sent === null) return {};
    return Object.fromEntries(
      Object.entries(sent).flatMap(([name, value]) => (typeof value === "string" ? [[name, value] as const] : [])),
    );
  } catch {
    return {};
  }
}
