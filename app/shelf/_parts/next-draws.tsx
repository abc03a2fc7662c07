import Link from "next/link";
import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { runOn } from "@/app/_ui/standing-working";
import type { WorkingLine } from "@/app/_ui/working";
import { quantity, type Stock, sum } from "@/lib/domain/quantity";
import { countShown, dayShown, stockShown } from "@/lib/edge/figures";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { runAddress } from "@/lib/edge/run-address";
import type { MaterialPart } from "./shelf";

/** So many runs are named; the rest are added up, and open to each. */
const NAMED = 3;

/** The runs that draw on a material next, if all go ahead. */
export function NextDraws({ outlook: { material, events }, shelf }: MaterialPart): ReactNode {
  const { today, lastDay, productOf } = shelf;
  const draws = events.flatMap((event) => (event.kind === "drawn" ? [event] : []));
  const until = dayShown(lastDay, today, { weekday: false });
  if (draws.length === 0) return <h3>No run draws on it to {until}</h3>;
  const rest = draws.slice(NAMED);
  const last = rest.at(-1);
  const together = rest.reduce((all, { need }) => sum(all, need), quantity<Stock>(0n));
  const inFull = figuresThatAdd([[...rest.map(({ need }) => need), together]], material.measure);
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
      </ul>
      {last && (
        <HowItComes
          says={`${countShown(rest.length)}${NO_BREAK}more, to ${dayShown(last.day, today, { weekday: false })}: ${needed(together)}`}
          lines={[
            ...rest.map(({ run, day, need }, at): WorkingLine => ({
              ...(at > 0 && { operator: "+" }),
              figure: inFull(need),
              reason: (
                <Link href={runAddress(run)} prefetch={false}>
                  {runOn(run, day, shelf)}
                </Link>
              ),
            })),
            { figure: inFull(together), reason: "together", isResult: true },
          ]}
        />
      )}
      {material.measure === "mass" && draws.length > 1 && (
        <p className="shelf-facts">
          Each is rounded up, so that they may come to a little more than the runs need together.
        </p>
      )}
    </>
  );
}
