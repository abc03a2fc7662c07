import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { type NoteOf, standing } from "@/lib/domain/bench/batch";
import { judged, type LineWeighed, linesWeighed, massIn } from "@/lib/domain/bench/weights";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { offShown } from "@/lib/edge/bench-weights";
import type { BatchOnPage } from "../batch-for-page";
import { decimalsOf } from "../bench-on-page";
import { type Grams, timeShown, timesFrom } from "./record-words";

interface Part {
  readonly found: BatchOnPage;
  readonly grams: Grams;
}

/** What was weighed against what was to be weighed, what was added beside it, and all that went in. */
export function Weights({ found, grams }: Part): ReactNode {
  const { batch, as } = found;
  const decimals = decimalsOf(as.step);
  const lines = linesWeighed(batch);
  const added = standing(batch, "added");
  // A premix that is poured in was weighed line by line where it was made.
  const drawn = lines.filter(({ line }) => line.of.kind === "material");
  const [target, weighed] = [sumOf(drawn.map(({ line }) => line.target)), sumOf(drawn.map(({ total }) => total))];
  const all = massIn(batch);
  return (
    <section aria-labelledby="components">
      <h2 id="components">Components, lots and weights</h2>
      <table className="ledger record-weights">
        <caption>
          <span className="unseen">What was weighed against what was to be weighed; </span>
          {timesFrom(batch.startedAt)}
        </caption>
        <thead>
          <tr>
            {WEIGHTS_HEAD.map(([head, kind]) => (
              <th key={head} className={kind} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        {lines.map((each) => (
          <tbody key={each.line.key}>
            <LineRows weighed={each} found={found} grams={grams} />
          </tbody>
        ))}
        <tbody>
          {added.length > 0 && (
            <SumRow kind="sum" name="Weighed by the formula" target={target} all={weighed} {...{ grams, decimals }} />
          )}
          {added.map((note) => (
            <AddedRow key={note.key} note={note} found={found} grams={grams} />
          ))}
          <SumRow kind="total" name="All that went in" target={target} all={all} {...{ grams, decimals }} />
        </tbody>
      </table>
    </section>
  );
}

const sumOf = (amounts: readonly bigint[]): bigint => amounts.reduce((sum, each) => sum + each, 0n);

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
  found: { batch, as },
  grams,
}: { readonly weighed: LineWeighed } & Part): ReactNode {
  const { off, within } = judged(line, quantity<Stock>(0n), total);
  const rows = weights.length === 0 ? [null] : weights;
  const shown = offShown(off, decimalsOf(as.step));
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
      <td className="number">
        {at === rows.length - 1 &&
          weight !== null &&
          named(
            "Off by",
            within ? (
              shown
            ) : (
              <Sign sign="triangle" tone="wrong">
                {shown}
              </Sign>
            ),
          )}
      </td>
      <td>{weight !== null && `${timeShown(weight.at, batch.startedAt)}, ${weight.who}`}</td>
    </tr>
  ));
}

const AddedRow = ({
  note,
  found: { batch, workshop },
  grams,
}: { readonly note: NoteOf<"added"> } & Part): ReactNode => (
  <tr>
    <th scope="row">{addedCalled(note, workshop)}, added beside the formula</th>
    <td>{named("Lot", note.lot ?? "")}</td>
    <td className="number" />
    <td className="number">{named("Weighed", grams(note.net))}</td>
    <td className="number" />
    <td>
      {timeShown(note.at, batch.startedAt)}, {note.who}
    </td>
  </tr>
);

/** What was added, as it was called then. */
export const addedCalled = (
  { called, material }: NoteOf<"added">,
  { materials }: Pick<BatchOnPage["workshop"], "materials">,
): string => called ?? materials.find(({ id }) => id === material)?.name ?? material;

const SumRow = ({
  kind,
  name,
  target,
  all,
  grams,
  decimals,
}: {
  readonly kind: "sum" | "total";
  readonly name: string;
  readonly target: bigint;
  readonly all: bigint;
  readonly grams: Grams;
  readonly decimals: number;
}): ReactNode => (
  <tr className={kind}>
    <th scope="row">{name}</th>
    <td />
    <td className="number">{named("Target", grams(target))}</td>
    <td className="number">{named("Weighed", grams(all))}</td>
    <td className="number">{named("Off by", offShown(all - target, decimals))}</td>
    <td />
  </tr>
);

/** Beside the cell where there is no room for the head of the table. */
const named = (name: string, cell: ReactNode): ReactNode => (
  <>
    <span className="only-narrow">{name} </span>
    {cell}
  </>
);
