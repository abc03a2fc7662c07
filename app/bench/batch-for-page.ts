import "server-only";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import { planForPage } from "@/app/plan-for-page";
import { byId } from "@/lib/domain/index-by-id";
import { idOfSegment } from "@/lib/edge/ledger-address";

/** The batch that an address names, with its product and what the page is worked out from. */
export const batchForPage = cache(async (segment: string) => {
  const found = await planForPage();
  if (!found) redirect("/");
  const run = idOfSegment(segment);
  const batch = found.desk.batches.find((each) => each.run.id === run);
  if (batch === undefined) notFound();
  return { ...found, batch, product: byId("product", found.workshop.products)(batch.run.product) };
});

export type BatchOnPage = Awaited<ReturnType<typeof batchForPage>>;
