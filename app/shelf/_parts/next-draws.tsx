import Link from "next/link";
import type { ReactNode } from "react";
import { quantity, type Stock, sum } from "@/lib/domain/quantity";
import { countShown, dayShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { runAddress } from "@/lib/edge/run-address";
import type { MaterialPart } from "./shelf";

/** So many runs are named; the rest are added up. */
const NAMED = 3;

/** The runs that draw on a material next, if all go ahead. */
export function NextDraws({ outlook: { material, events }, shelf }: MaterialPart): ReactNode {
  const { today, lastDay, productOf } = shelf;
  const draws = events.flatMap((event) => (event.kind === "drawn" ? [event] : []));
  const until = dayShown(lastDay, today, { weekday: false });
  if (draws.length === 0) return <h3>No run draws on it to {until}</h3>;
  const rest = draws.slice(NAMED);
  const last = rest.at(-1);
  const needed = (need: Stock): string => stockShown(need, material.measure, "lacking");
  return (
    <>
      <h3>Next to draw on it</h3>
      <ul className="next-draws">
        {draws.slice(0, NAMED).map(({ run, day, need, lacking }) => (
          <li key={run.id}>
            <Link href={runAddress(run)} prefetch={false}>
              {productOf(run.product).name}, {day === today ? "today" : dayShown(day, today)}
            </Link>
            <span className="number">
              {needed(need)}
              {lacking > 0n && <small className="warn">short {needed(lacking)}</small>}
            </span>
          </li>
        ))}
        {last && (
          <li>
            <span>
              {countShown(rest.length)}
              {NO_BREAK}more, to {dayShown(last.day, today, { weekday: false })}
            </span>
            <span className="number">
              {needed(rest.reduce((all, { need }) => sum(all, need), quantity<Stock>(0n)))}
            </span>
          </li>
        )}
      </ul>
    </>
  );
}
