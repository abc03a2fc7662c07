import "server-only";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import { planForPage } from "@/app/plan-for-page";
import { codeOf } from "@/lib/domain/bench/batch";
import { startedAs } from "@/lib/domain/bench/started-as";
import { byId } from "@/lib/domain/index-by-id";
import { idOfSegment } from "@/lib/edge/ledger-address";

/** The batch that an address names, with its product, what it was started as and what the page is worked out from. */
export const batchForPage = cache(async (segment: string) => {
  const found = await planForPage();
  if (!found) redirect("/");
  const run = idOfSegment(segment);
  const batch = found.desk.batches.find((each) => each.run.id === run);
  if (batch === undefined) notFound();
  const product = byId("product", found.workshop.products)(batch.run.product);
  return { ...found, batch, product, as: startedAs(batch, found.workshop), code: codeOf(batch) };
});

export type BatchOnPage = Awaited<ReturnType<typeof batchForPage>>;
