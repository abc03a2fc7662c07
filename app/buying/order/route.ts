import { orderCsv } from "@/lib/edge/order-text";
import { buyingForPage } from "../buying-for-page";

/** One supplier's order in the frame of the address, as rows for a spreadsheet. */
export async function GET(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams;
  const parameters = Object.fromEntries([...query.keys()].map((name) => [name, query.getAll(name)]));
  const buying = await buyingForPage(parameters);
  const order = buying?.chosen?.planned.orders.find(({ supplier }) => supplier.id === query.get("supplier"));
  if (!buying || !order)
    return new Response("There is no such order any more. Load the page for buying again.\n", {
      status: 404,
      headers: { "Content-Type": "text/plain; charset=utf-8" },
    });
  const { currency } = buying.found.workshop.settings;
  return new Response(orderCsv({ order, currency }), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8; header=present",
      "Content-Disposition": 'attachment; filename="order.csv"',
      "Cache-Control": "no-store",
    },
  });
}
