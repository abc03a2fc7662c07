import type { ReactNode } from "react";
import { standing } from "@/lib/domain/bench/batch";
import { heldBy } from "@/lib/domain/bench/refused-note";
import { massIn } from "@/lib/domain/bench/weights";
import { ratio } from "@/lib/domain/fraction";
import { weightShown } from "@/lib/edge/bench-weights";
import { gramsShown, shareShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import type { BatchOnPage } from "../batch-for-page";
import { decimalsOf } from "../bench-on-page";
import { Checks } from "./record-checks";
import { KeptLabels, Marks } from "./record-marks";
import { Written } from "./record-notes";
import { Weights } from "./record-weights";
import type { Grams } from "./record-words";

/**
 * What 21 CFR 211.188(b) lists of a batch production and control record, point by point (read in a summary; the
 * regulation for drugs, which ISO 22716 for cosmetics asks much of as well).
 */
export function BatchRecord({ found }: { readonly found: BatchOnPage }): ReactNode {
  // Nothing that was weighed is cut, or what it is off by would not be seen in it.
  const grams: Grams = (amount) => weightShown(amount, decimalsOf(found.as.step));
  return (
    <div className="record bench-printed">
      <p className="paper-head">
        Batch {found.code}, {found.as.product}
      </p>
      <Weights found={found} grams={grams} />
      <div className="record-pair">
        <Yield found={found} grams={grams} />
        <Checks found={found} />
      </div>
      <Written found={found} grams={grams} />
      <KeptLabels found={found} />
      <Marks found={found} />
    </div>
  );
}

interface Part {
  readonly found: BatchOnPage;
  readonly grams: Grams;
}

function Yield({ found: { batch, as }, grams }: Part): ReactNode {
  const closed = standing(batch, "closed").at(-1);
  const weighed = massIn(batch);
  return (
    <section aria-labelledby="yield">
      <h2 id="yield">Yield</h2>
      <dl className="record-yield">
        <dt>Planned</dt>
        <dd>
          {unitsInWords(batch.run.units)} from {gramsShown(as.bulk, decimalsOf(as.step))}
        </dd>
        <dt>Weighed</dt>
        <dd>{grams(weighed)}</dd>
        {closed && (
          <>
            <dt>Filled</dt>
            <dd>
              {unitsInWords(closed.units)}, {shareShown(ratio(closed.units, batch.run.units))} of the plan
            </dd>
            <dt>Left over</dt>
            <dd>{closed.leftOver === null ? "not written down" : grams(closed.leftOver)}</dd>
            <dt>Lost at the bench</dt>
            <dd>{grams(max0(weighed - heldBy(as, closed)))}</dd>
          </>
        )}
      </dl>
    </section>
  );
}

const max0 = (amount: bigint): bigint => (amount > 0n ? amount : 0n);
