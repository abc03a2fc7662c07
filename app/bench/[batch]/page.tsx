import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { stateOf } from "@/lib/domain/bench/batch";
import { linesWeighed } from "@/lib/domain/bench/weights";
import { closeAddress, recordAddress, sheetAddress } from "@/lib/edge/bench-address";
import { weighUpAddress } from "@/lib/edge/book-address";
import { countShown } from "@/lib/edge/figures";
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
  const { batch, product, as, code } = found;
  if (stateOf(batch) !== "open") redirect(recordAddress(batch.run.id));
  const lines = linesWeighed(batch);
  const done = lines.filter(({ state }) => state === "done").length;
  return (
    <>
      <Opening
        crumb={<Link href="/bench">The bench</Link>}
        title={`${as.product}, batch ${code}`}
        beside={
          <p className="bench-ways">
            <Link className="button" href={sheetAddress(batch.run.id)} prefetch={false}>
              Weigh sheet to print
            </Link>
            <Link className="button" href={closeAddress(batch.run.id)} prefetch={false}>
              Close the batch
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
      >
        <b>
          {countShown(done)} of {countShown(lines.length)} {lines.length === 1 ? "line" : "lines"}
        </b>{" "}
        weighed. Each weight leaves the shelf as it is written down.
      </Opening>
      <BenchDesk view={benchOnPage(found)} />
    </>
  );
}
