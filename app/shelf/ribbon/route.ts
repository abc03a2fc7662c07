import { planForPage } from "@/app/plan-for-page";
import { byId } from "@/lib/domain/index-by-id";
import { ribbonSteps } from "@/lib/edge/ribbon-steps";

/** The steps of one material's ribbon: asked for only when somebody walks along it, since most ribbons are only seen. */
export async function GET(request: Request): Promise<Response> {
  const id = new URL(request.url).searchParams.get("material");
  const found = await planForPage();
  const outlook = found?.plan.materials.find(({ material }) => material.id === id);
  if (!found || !outlook) return Response.json([], { status: 404, headers: { "Cache-Control": "no-store" } });
  const { workshop, today, plan } = found;
  const productOf = byId("product", workshop.products);
  const productName = (product: string): string => productOf(product).name;
  return Response.json(ribbonSteps(outlook, { today, lastDay: plan.lastDay, productName }), {
    headers: { "Cache-Control": "no-store" },
  });
}
