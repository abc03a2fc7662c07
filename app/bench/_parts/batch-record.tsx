import type { ReactNode } from "react";
import { standing } from "@/lib/domain/bench/batch";
import { heldBy } from "@/lib/domain/bench/refused-note";
import { judged, type LineWeighed, linesWeighed, massIn } from "@/lib/domain/bench/weights";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { ratio } from "@/lib/domain/fraction";
import { countShown, gramsShown, shareShown } from "@/lib/edge/figures";
import type { BatchOnPage } from "../batch-for-page";
import { decimalsOf } from "../bench-on-page";
import { Checks } from "./record-checks";
import { KeptLabels, Marks } from "./record-marks";
import { Written } from "./record-notes";
import { type Grams, momentShown } from "./record-words";

/**
 * What 21 CFR 211.188(b) lists of a batch production and control record, point by point (read in a summary; the
 * regulation for drugs, which ISO 22716 for cosmetics asks much of as well).
 */
export function BatchRecord({ found }: { readonly found: BatchOnPage }): ReactNode {
  const grams: Grams = (amount) => gramsShown(amount, decimalsOf(found.as.step));
  return (
    <div className="record bench-printed">
      <p className="paper-head">
        Batch {found.code}, {found.as.product}
      </p>
      <Weights found={found} grams={grams} />
      <Yield found={found} grams={grams} />
      <Checks found={found} />
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

function Weights({ found: { batch }, grams }: Part): ReactNode {
  return (
    <section aria-labelledby="components">
      <h2 id="components">Components, lots and weights</h2>
      <table className="ledger record-weights">
        <caption className="unseen">What was weighed against what was to be weighed</caption>
        <thead>
          <tr>
            {WEIGHTS_HEAD.map(([head, kind]) => (
              <th key={head} className={kind} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        {linesWeighed(batch).map((weighed) => (
          <tbody key={weighed.line.key}>
            <LineRows weighed={weighed} grams={grams} />
          </tbody>
        ))}
      </table>
    </section>
  );
}

const WEIGHTS_HEAD = [
  ["What", "text"],
  ["Lot", "text"],
  ["Target", "number"],
  ["Weighed", "number"],
  ["Off by", "number"],
  ["When, by whom", "text"],
] as const;

function LineRows({
  weighed: { line, weights, total },
  grams,
}: {
  readonly weighed: LineWeighed;
  readonly grams: Grams;
}): ReactNode {
  const { off } = judged(line, quantity<Stock>(0n), total);
  const rows = weights.length === 0 ? [null] : weights;
  return rows.map((weight, at) => (
    <tr key={weight?.key ?? "none"}>
      {at === 0 && (
        <th
          scope="rowgroup"
          rowSpan={rows.length}
        >{`${line.phase === null ? "" : `${line.phase} · `}${line.called}`}</th>
      )}
      <td>{weight !== null && named("Lot", weight.lot ?? "made here")}</td>
      <td className="number">{at === 0 && named("Target", grams(line.target))}</td>
      <td className="number">{weight === null ? "not weighed" : named("Weighed", grams(weight.net))}</td>
      <td className="number">{at === rows.length - 1 && weight !== null && named("Off by", signed(off, grams))}</td>
      <td>{weight === null ? "" : `${momentShown(weight.at)}, ${weight.who}`}</td>
    </tr>
  ));
}

/** Beside the cell where there is no room for the head of the table. */
const named = (name: string, cell: string): ReactNode => (
  <>
    <span className="only-narrow">{name} </span>
    {cell}
  </>
);

const signed = (off: bigint, grams: (amount: bigint) => string): string =>
  off === 0n ? "none" : off > 0n ? `+${grams(off)}` : `−${grams(-off)}`;

function Yield({ found: { batch, as }, grams }: Part): ReactNode {
  const closed = standing(batch, "closed").at(-1);
  const weighed = massIn(batch);
  return (
    <section aria-labelledby="yield">
      <h2 id="yield">Yield</h2>
      <dl className="record-yield">
        <dt>Planned</dt>
        <dd>
          {countShown(batch.run.units)} units from {grams(as.bulk)}
        </dd>
        <dt>Weighed</dt>
        <dd>{grams(weighed)}</dd>
        {closed && (
          <>
            <dt>Filled</dt>
            <dd>
              {countShown(closed.units)} units, {shareShown(ratio(closed.units, batch.run.units))} of the plan
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
