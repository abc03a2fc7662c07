import Link from "next/link";
import type { ReactNode } from "react";
import { codeOf } from "@/lib/domain/bench/batch";
import { heldUnder } from "@/lib/domain/bench/codes";
import type { Desk } from "@/lib/domain/desk";
import { recordAddress } from "@/lib/edge/bench-address";

/** Of a lot that came out of a batch which waits for a second look: the way to its judgement. @rule BENCH-8 */
export function WaitsAtBenchLink({ desk, lot }: { readonly desk: Desk; readonly lot: string }): ReactNode {
  const batch = heldUnder(desk, lot);
  if (batch === null) return null;
  return (
    <p className="done">
      It waits for a second look at the bench.{" "}
      <Link href={recordAddress(batch.run.id)}>Judge batch {codeOf(batch)}</Link>
    </p>
  );
}
