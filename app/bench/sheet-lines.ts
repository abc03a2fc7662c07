import "server-only";
import type { Batch, SheetLine } from "@/lib/domain/bench/batch";
import { partAsStarted } from "@/lib/domain/bench/started-as";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { percentOf } from "@/lib/domain/formula";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import { type PartsPerMillion, smaller } from "@/lib/domain/quantity";
import type { Lot, Workshop } from "@/lib/domain/workshop";

/** Lots of a material with something in them, in the order in which they are drawn. @rule LOT-1 */
export const lotsOf = ({ lots }: Pick<Workshop, "lots">, material: string): readonly Lot[] =>
  lots.filter((lot) => lot.material === material && lot.remaining > 0n).toSorted(byDrawOrder);

interface ToDraw {
  readonly key: string;
  readonly material: string | null;
  /** µg that are still to be weighed. */
  readonly rest: bigint;
}

/** The lots that each line would be drawn from, one line after another, by its key. @rule LOT-1, LOT-2 */
export function plannedLots(
  workshop: Pick<Workshop, "lots">,
  lines: readonly ToDraw[],
  day: Day,
): ReadonlyMap<string, readonly string[]> {
  const taken = new Map<string, bigint>();
  return new Map(
    lines.map(({ key, material, rest }) => {
      let open = rest;
      const from = (material === null ? [] : lotsOf(workshop, material)).flatMap((lot) => {
        const left = lot.remaining - (taken.get(lot.id) ?? 0n);
        if (open <= 0n || left <= 0n || !isUsable(lot, day)) return [];
        const drawn = smaller<bigint>(open, left);
        taken.set(lot.id, (taken.get(lot.id) ?? 0n) + drawn);
        open -= drawn;
        return [lot.id];
      });
      return [key, from] as const;
    }),
  );
}

/** The percents of the lines, by key: of the version by which the batch was started, where its lines are those. */
export function percentsOf(books: Books, batch: Batch): ReadonlyMap<string, PartsPerMillion> {
  const parts = [...new Set(batch.lines.map(({ part }) => part))];
  return new Map(
    parts.flatMap((part) => {
      const formula = partAsStarted(books, batch, part);
      const lines = batch.lines.filter((line) => line.part === part);
      if (lines.length !== formula.lines.length) return [];
      return formula.lines.map((line, at) => [lines[at]?.key ?? "", percentOf(line, formula)] as const);
    }),
  );
}

/** Lines that follow one another in one formula and one phase. */
export function inPhases<Of extends { readonly line: Pick<SheetLine, "key" | "part" | "phase"> }>(
  lines: readonly Of[],
): readonly (readonly [Of, ...Of[]])[] {
  const groups: [Of, ...Of[]][] = [];
  for (const each of lines) {
    const last = groups.at(-1);
    if (last?.[0].line.part === each.line.part && last[0].line.phase === each.line.phase) last.push(each);
    else groups.push([each]);
  }
  return groups;
}
