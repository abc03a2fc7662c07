/** The lots behind a figure of the week, as lines of its working. */
import Link from "next/link";
import type { ReactNode } from "react";
import type { WorkingLine } from "@/app/_ui/working";
import type { Day } from "@/lib/domain/calendar";
import type { LotDrawn } from "@/lib/domain/lots-drawn";
import type { Measure } from "@/lib/domain/quantity";
import { counted } from "@/lib/edge/counted";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { lotAddress } from "@/lib/edge/ledger-address";

interface Lots {
  readonly lots: readonly LotDrawn[];
  readonly measure: Measure;
  readonly today: Day;
}

const added = (at: number): Pick<WorkingLine, "operator"> => (at > 0 ? { operator: "+" } : {});

/** What is there, lot by lot, with what would be taken of each; those that nothing is taken of count together. */
export function lotsThere({ lots, measure, today }: Lots): readonly WorkingLine[] {
  const used = lots.filter(({ taken }) => taken > 0n);
  const rest = lots.filter(({ taken }) => taken === 0n);
  const listed = rest.length > 1 ? used : lots;
  const lines = listed.map(({ lot, there, taken }, at): WorkingLine => ({
    ...added(at),
    figure: stockInFull(there, measure),
    reason: (
      <>
        <CalledLot lot={lot} today={today} />: {howMuch(taken, there, measure)}
      </>
    ),
  }));
  if (listed === lots) return lines;
  const left = rest.reduce((all, { there }) => all + there, 0n);
  const reason = `in ${counted(rest.length, "further lot", "further lots")}, none of it taken`;
  return [...lines, { ...added(lines.length), figure: stockInFull(left, measure), reason }];
}

function howMuch(taken: bigint, there: bigint, measure: Measure): string {
  if (taken === 0n) return "none of it is taken";
  return taken === there ? "all of it is taken" : `${stockInFull(taken, measure)} of it are taken`;
}

/** What is taken, lot by lot. */
export const lotsTaken = ({ lots, measure, today }: Lots): readonly WorkingLine[] =>
  lots
    .filter(({ taken }) => taken > 0n)
    .map(({ lot, there, taken }, at) => ({
      ...added(at),
      figure: stockInFull(taken, measure),
      reason: (
        <>
          of the {stockInFull(there, measure)} of <CalledLot lot={lot} today={today} />
        </>
      ),
    }));

/** A lot by its name, with what puts it in its place in the draw order. @rule LOT-1 */
function CalledLot({ lot, today }: Pick<LotDrawn, "lot"> & { readonly today: Day }): ReactNode {
  const lastUse =
    lot.expires === null
      ? "no last day of use"
      : `last day of use ${dayShown(lot.expires, today, { weekday: false, year: true })}`;
  if (lot.order !== null) return `order ${lot.order}, expected ${dayShown(lot.received, today)}, ${lastUse}`;
  return (
    <>
      <Link href={lotAddress(lot.id)} prefetch={false}>
        lot {lot.id}
      </Link>
      , {lastUse}
    </>
  );
}
