import Link from "next/link";
import type { ReactNode } from "react";
import { codeOf } from "@/lib/domain/bench/batch";
import { heldUnder } from "@/lib/domain/bench/codes";
import type { Books } from "@/lib/domain/desk";
import type { LotName } from "@/lib/domain/ledger/posting";
import { recordAddress } from "@/lib/edge/bench-address";

/** Of a lot that came out of a batch which waits for a second look: the way to its judgement. @rule BENCH-8 */
export function WaitsAtBenchLink({ books, lot }: { readonly books: Books; readonly lot: LotName }): ReactNode {
  const batch = heldUnder(books, lot);
  if (batch === null) return null;
  return (
    <p className="done">
      It waits for a second look at the bench.{" "}
      <Link href={recordAddress(batch.run.id)}>Judge batch {codeOf(batch)}</Link>
    </p>
  );
}
