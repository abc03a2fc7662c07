import Link from "next/link";
import type { ReactNode } from "react";
import { Ribbon, RibbonAxis } from "@/app/_ui/ribbon";
import { Sign } from "@/app/_ui/sign";
import { materialAddress } from "@/lib/edge/material-address";
import type { Day } from "@/lib/domain/calendar";
import type { Plan } from "@/lib/domain/plan-figures";
import { countShown, dayShown, NO_BREAK, stockShown } from "@/lib/edge/figures";
import { ribbonOf } from "@/lib/edge/ribbon";
import { ribbonAxis, type RibbonAxis as Axis } from "@/lib/edge/ribbon-axis";
import { dayInWeek } from "@/lib/edge/week-title";
import { isCovered, type WeekDraw } from "./week-of";

interface Draws {
  readonly draws: readonly WeekDraw[];
  readonly days: readonly Day[];
  readonly plan: Plan;
  readonly showAll: boolean;
  /** Of the week, without what else is asked for. */
  readonly address: `/week?${string}`;
}

/** What the week's runs need of each material, day by day, beside the material's ribbon. */
export function WeekDraws({ draws, days, plan, showAll, address }: Draws): ReactNode {
  if (draws.length === 0) return null;
  const shown = showAll ? draws : draws.filter((draw) => !isCovered(draw));
  const hidden = draws.length - shown.length;
  const axis = ribbonAxis(plan.today, plan.lastDay);
  return (
    <section className="week-draws">
      <h2 id="week-draws">What the week draws</h2>
      {shown.length > 0 && (
        <table aria-labelledby="week-draws">
          <thead>
            <tr>
              <th scope="col" className="draw-name">
                <span className="unseen">Material</span>
              </th>
              {days.map((day) => (
                <th key={day} scope="col" className="draw-day">
                  {dayInWeek(day)}
                </th>
              ))}
              <th scope="col" className="draw-ribbon">
                <span className="unseen">Its ribbon to {dayShown(plan.lastDay, plan.today)}</span>
                <RibbonAxis axis={axis} narrow />
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((draw) => (
              <DrawRow key={draw.outlook.material.id} draw={draw} days={days} plan={plan} axis={axis} />
            ))}
          </tbody>
        </table>
      )}
      {hidden > 0 && (
        <p className="small soft week-more">
          {shown.length === 0
            ? `All ${countShown(hidden)} materials that it draws are covered.`
            : `${countShown(hidden)} more ${hidden === 1 ? "material is drawn and is" : "materials are drawn and all are"} covered.`}{" "}
          <Link href={`${address}&show=all#week-draws`}>Show all {countShown(draws.length)}</Link>
        </p>
      )}
    </section>
  );
}

interface Row {
  readonly draw: WeekDraw;
  readonly days: readonly Day[];
  readonly plan: Plan;
  readonly axis: Axis;
}

function DrawRow({ draw, days, plan, axis }: Row): ReactNode {
  const { outlook } = draw;
  const { material } = outlook;
  const needed = (need: bigint): string => stockShown(need, material.measure, "lacking");
  // A day's column may be narrower than a figure with its unit, which then goes on a line of its own.
  const inCell = (need: bigint): string => needed(need).replace(NO_BREAK, " ");
  return (
    <tr>
      <th scope="row" className="draw-name">
        <Link href={materialAddress(material.id)}>{material.name}</Link>
        <small>{stockShown(outlook.onHand, material.measure, "there")} on the shelf</small>
      </th>
      {draw.days.map(({ need, short }, index) => (
        <td key={days[index]} className={short > 0n ? "draw-day short" : "draw-day"}>
          {need > 0n && inCell(need)}
          {short > 0n && <small>short {inCell(short)}</small>}
        </td>
      ))}
      <td className="draw-together">
        {draw.short > 0n ? (
          <Sign sign="box" tone="wrong">
            {needed(draw.need)}, short {needed(draw.short)}
          </Sign>
        ) : (
          `${needed(draw.need)} this week`
        )}
      </td>
      <td className="draw-ribbon">
        <Ribbon ribbon={ribbonOf(outlook, plan.today, plan.lastDay, "row")} weeks={axis.lines} />
      </td>
    </tr>
  );
}
