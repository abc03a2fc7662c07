import { workshopForPage } from "@/app/plan-for-page";
import { writtenOrder } from "@/lib/edge/kept-order";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { orderCsv } from "@/lib/edge/order-text";

/** An order as rows for a spreadsheet. */
export async function GET(_request: Request, { params }: { readonly params: Promise<{ readonly order: string }> }) {
  const [workshop, id] = [await workshopForPage(), idOfSegment((await params).order)];
  const order = workshop?.orders.find((each) => each.id === id);
  if (!workshop || !order)
    return new Response("There is no such order any more. Go back to the orders and load the page again.\n", {
      status: 404,
      headers: { "Content-Type": "text/plain; charset=utf-8" },
    });
  return new Response(orderCsv({ order: writtenOrder(workshop, order), currency: workshop.settings.currency }), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8; header=present",
      "Content-Disposition": 'attachment; filename="order.csv"',
      "Cache-Control": "no-store",
    },
  });
}
