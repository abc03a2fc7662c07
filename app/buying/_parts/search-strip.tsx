import Link from "next/link";
import type { ReactNode } from "react";
import { Press } from "@/app/_ui/press";
import type { Progress } from "@/lib/domain/buying/least-of-parts";
import { countShown } from "@/lib/edge/figures";
import { type AskedFrame, buyingAddress } from "@/lib/edge/forms/buying-frame";
import { searchOnAgain, stopTheSearch } from "../actions";
import { frameCarried } from "./deed";
import { SearchWatch } from "./search-watch";

interface Searching {
  readonly asked: AskedFrame;
  readonly search: { readonly key: string; readonly progress: Progress | null };
  /** The time of the earlier answer that stands in, or null where the basket was found since. */
  readonly from: string | null;
  /** It goes on, or it ended before it was done. */
  readonly state: "going on" | "stopped" | "out of time" | "failed" | "too large";
}

/** That a search goes on, how far it is, and the way to end it; or, once it was cut short, the way to go on. */
export function SearchStrip({ asked, search, from, state }: Searching): ReactNode {
  const carried = { key: search.key, frame: frameCarried(asked) };
  if (state !== "going on")
    return (
      <div className="buying-search">
        <p>
          {ENDED[state]} {from !== null && standingIn(from)}
        </p>
        {state !== "too large" && (
          <Press act={searchOnAgain} carried={carried}>
            Search again
          </Press>
        )}
      </div>
    );
  return (
    <div className="buying-search">
      <SearchWatch />
      <p role="status">
        {howFar(search.progress)} {from === null ? "The basket below is the best so far." : standingIn(from)}
      </p>
      <Link className="button plain" href={buyingAddress(asked)} prefetch={false}>
        Look again
      </Link>
      <Press act={stopTheSearch} carried={carried}>
        Stop
      </Press>
    </div>
  );
}

const ENDED: Readonly<Record<Exclude<Searching["state"], "going on">, string>> = {
  stopped: "Stopped. This is the best basket so far.",
  "out of time": "The search ran out of time. This is the best basket so far.",
  failed: "The search failed. The basket below was found before.",
  "too large":
    "Figures this large cannot be searched exactly. Correct the packs and prices that are out of proportion.",
};

const standingIn = (from: string): string => `The basket below is the answer from ${from}, which still holds.`;

function howFar(progress: Progress | null): string {
  if (progress === null) return "Trying packs.";
  const { suppliersDecided, suppliers } = progress;
  return `Trying packs, ${countShown(suppliersDecided)} of ${countShown(suppliers)} ${suppliers === 1 ? "supplier" : "suppliers"}.`;
}
