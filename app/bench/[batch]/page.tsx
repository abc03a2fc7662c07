import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { stateOf } from "@/lib/domain/bench/batch";
import { recordAddress, sheetAddress } from "@/lib/edge/bench-address";
import { weighUpAddress } from "@/lib/edge/book-address";
import { dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { BenchDesk } from "../_parts/bench-desk";
import { batchForPage } from "../batch-for-page";
import { benchOnPage } from "../bench-on-page";
import "../bench.css";

interface Page {
  readonly params: Promise<{ readonly batch: string }>;
}

export async function generateMetadata({ params }: Page): Promise<Metadata> {
  return { title: `Batch ${(await batchForPage((await params).batch)).code}` };
}

/** A batch while it is weighed. */
export default async function BatchPage({ params }: Page): Promise<ReactNode> {
  const found = await batchForPage((await params).batch);
  const { batch, product, today } = found;
  if (stateOf(batch) !== "open") redirect(recordAddress(batch.run.id));
  return (
    <BenchDesk
      view={benchOnPage(found)}
      crumb={
        <>
          <Link href="/bench">The bench</Link> · {unitsInWords(batch.run.units)}, started{" "}
          {dayShown(batch.startedOn, today)} by {batch.startedBy}
        </>
      }
      beside={
        <p className="bench-ways">
          <Link className="button" href={sheetAddress(batch.run.id)} prefetch={false}>
            Weigh sheet to print
          </Link>
          <Link
            className="button plain"
            href={weighUpAddress(product.formula, product.id, batch.run.units)}
            prefetch={false}
          >
            Targets by today’s formula
          </Link>
        </p>
      }
    />
  );
}
