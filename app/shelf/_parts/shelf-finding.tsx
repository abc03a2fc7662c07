import type { ReactNode } from "react";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { counted, inWords, inWordsFirst } from "@/lib/edge/counted";
import { countShown, dayShown } from "@/lib/edge/figures";
import type { Shelf } from "./shelf";
import { type Group, groupOf } from "./shelf-list";

interface Finding {
  readonly outlooks: readonly MaterialOutlook[];
  readonly shelf: Pick<Shelf, "today" | "lastDay" | "instead">;
}

/** What the shelf asks of the maker, in one sentence. */
export function ShelfFinding({ outlooks, shelf }: Finding): ReactNode {
  if (outlooks.length === 0) return "Nothing on the shelf yet. Add a material and what you have of it.";
  const inGroup = (group: Group): number => outlooks.filter((outlook) => groupOf(outlook, shelf) === group).length;
  const [now, made, unoffered, covered] = [
    inGroup("this week"),
    inGroup("to make"),
    inGroup("no offer"),
    inGroup("covered"),
  ];
  const until = dayShown(shelf.lastDay, shelf.today, { weekday: false });
  return (
    <>
      {countShown(outlooks.length)} {outlooks.length === 1 ? "material" : "materials"}.{" "}
      {now > 0 ? <b>{inWordsFirst(now)} to order this week</b> : "Nothing to order this week"},{" "}
      {made > 0 && <>{inWords(made)} to be made, </>}
      {unoffered > 0 && (
        <>
          <span className="warn">{inWords(unoffered)} that nobody offers</span>,{" "}
        </>
      )}
      {goingOut(outlooks)} going out of date unused, {inWords(covered)} covered to {until}. Every planned run is counted
      as made here; the week tells which can be.
    </>
  );
}

/** Lots, and of how many materials: the list below counts materials. */
function goingOut(outlooks: readonly MaterialOutlook[]): string {
  const materials = outlooks.filter(({ expiring }) => expiring.length > 0);
  const lots = materials.reduce((all, { expiring }) => all + expiring.length, 0);
  const of = lots === 0 ? "" : ` of ${counted(materials.length, "material", "materials")}`;
  return `${counted(lots, "lot", "lots")}${of}`;
}
