import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger, OpeningRow } from "@/app/_ui/ledger";
import { Working } from "@/app/_ui/working";
import type { Day } from "@/lib/domain/calendar";
import type { RunDraw, RunOutlook } from "@/lib/domain/plan-figures";
import { stockShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";
import { drawLines } from "./draw-working";
import type { OpenedRun } from "./opened-runs";

interface Draws {
  readonly outlook: RunOutlook;
  readonly opened: OpenedRun;
  readonly today: Day;
  /** What the run is called. */
  readonly called: string;
}

const COLUMNS = [
  { name: "It draws" },
  { name: "Needs", kind: "number" },
  { name: "There at its turn", kind: "number" },
  { name: "Takes", kind: "number" },
] as const;

/** What it asks of each material, what is there at its turn, and what it takes; each row opens to shares and lots. */
export function RunDraws({ outlook, opened, today, called }: Draws): ReactNode {
  const { run, draws } = outlook;
  // A run that cannot be made takes nothing of anything, which its lack says already.
  const takes = draws.some(({ drawn }) => drawn > 0n);
  const columns = takes ? COLUMNS : COLUMNS.slice(0, -1);
  return (
    <Ledger caption={`What ${called} draws`} columns={columns} className="run-draws" opens>
      {draws.map((draw, at) => {
        const { material } = draw;
        const working = drawLines({ draw, opened, units: run.units, today });
        return (
          <OpeningRow
            key={material.id}
            id={`draw-${encodeURIComponent(run.id)}-${String(at)}`}
            name={<DrawName draw={draw} />}
            cells={<DrawCells draw={draw} outlook={outlook} takes={takes} />}
            across={columns.length}
          >
            <Working
              lines={working.lines}
              notes={[
                ...working.notes,
                <Link key="shelf" href={materialAddress(material.id)} prefetch={false}>
                  {material.name} on the shelf
                </Link>,
              ]}
            />
          </OpeningRow>
        );
      })}
    </Ledger>
  );
}

const DrawName = ({ draw: { material, need, insteadOf } }: { readonly draw: RunDraw }): ReactNode => (
  <span>
    {material.name}
    {insteadOf && (
      <>
        {" "}
        <small>
          {insteadOf.quantity < need && `${stockShown(insteadOf.quantity, material.measure, "lacking")} `}
          instead of making {insteadOf.premix.name}
        </small>
      </>
    )}
  </span>
);

function DrawCells({
  draw,
  outlook,
  takes,
}: {
  readonly draw: RunDraw;
  readonly outlook: RunOutlook;
  /** Whether the run takes anything. */
  readonly takes: boolean;
}): ReactNode {
  const { material, need, least, there, drawn } = draw;
  const { measure } = material;
  const lack = outlook.short.find((each) => each.material === material);
  return (
    <>
      <td className="number end">
        {stockShown(need, measure, "lacking")}
        {least < need && <small>{stockShown(least, measure, "lacking")} at least</small>}
        {lack && <small className="warn">short {stockShown(lack.by, measure, "lacking")}</small>}
      </td>
      <td className="number second-line">
        {stockShown(there, measure, "there")}
        <span className="phone-only"> there at its turn</span>
      </td>
      {takes && (
        <td className="number not-on-phone">
          {drawn > 0n ? stockShown(drawn, measure, drawn === need ? "lacking" : "there") : "nothing"}
        </td>
      )}
    </>
  );
}
