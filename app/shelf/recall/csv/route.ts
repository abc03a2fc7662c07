import { recallCsv } from "@/lib/edge/recall-text";
import { recallForPage } from "../recall-for-page";

/** A recall as rows for a spreadsheet. */
export async function GET(request: Request): Promise<Response> {
  const page = await recallForPage(new URL(request.url).searchParams.get("lot"));
  if (page === null || page.lot === null || page.recall === null)
    return new Response("There is no such lot. Go back to the recall drill and choose one.\n", {
      status: 404,
      headers: { "Content-Type": "text/plain; charset=utf-8" },
    });
  const { lot, recall, words } = page;
  const measure = lot.of === "finished" ? "units" : (words(lot).measure ?? "mass");
  return new Response(recallCsv({ recall, nameOf: (each) => words(each).name, measure }), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8; header=present",
      "Content-Disposition": 'attachment; filename="recall.csv"',
      "Cache-Control": "no-store",
    },
  });
}
