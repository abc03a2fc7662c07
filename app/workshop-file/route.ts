import { writeWorkshopFile } from "@/lib/edge/workshop-file";
import { readBooksWithPast } from "@/lib/store/ledger/past";

/** The open workshop as a file to keep. */
export async function GET(): Promise<Response> {
  const books = await readBooksWithPast();
  if (books === null)
    return new Response("No workshop is open yet, so there is nothing to save.\n", {
      status: 404,
      headers: { "Content-Type": "text/plain; charset=utf-8" },
    });
  const { workshop, past } = books;
  return new Response(writeWorkshopFile(workshop, past), {
    headers: {
      "Content-Type": "application/json; charset=utf-8",
      "Content-Disposition": fileNameHeader(workshop.settings.name),
      "Cache-Control": "no-store",
    },
  });
}

/** A name that every system takes, and beside it the workshop's own (RFC 6266, RFC 8187). */
function fileNameHeader(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase()
    .slice(0, 60);
  const full = encodeURIComponent(`${name}.json`).replace(/['()*]/g, (mark) => `%${mark.charCodeAt(0).toString(16)}`);
  return `attachment; filename="${plain || "workshop"}.json"; filename*=UTF-8''${full}`;
}
