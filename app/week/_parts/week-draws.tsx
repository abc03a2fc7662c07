import Link from "next/link";
import type { ReactNode } from "react";
import { FollowedLinks } from "@/app/_ui/followed-links";
import { RibbonAxis } from "@/app/_ui/ribbon";
import { materialAddress } from "@/lib/edge/material-address";
import type { Day } from "@/lib/domain/calendar";
import type { Plan } from "@/lib/domain/plan-figures";
import { inARow } from "@/lib/edge/counted";
import { countShown, dayShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { element, escaped } from "@/lib/edge/markup";
import { ribbonOf } from "@/lib/edge/ribbon";
import { ribbonAxis, type RibbonAxis as Axis } from "@/lib/edge/ribbon-axis";
import { ribbonDrawing } from "@/lib/edge/ribbon-markup";
import { signMarkup } from "@/lib/edge/sign-markup";
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
        <FollowedLinks>
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
                <tr key={draw.outlook.material.id} dangerouslySetInnerHTML={{ __html: rowOf(draw, plan, axis) }} />
              ))}
            </tbody>
          </table>
        </FollowedLinks>
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

/** A row's markup: a busy week draws on hundreds of materials. */
function rowOf({ outlook, days, short, need }: WeekDraw, plan: Plan, axis: Axis): string {
  const { material } = outlook;
  const needed = (some: bigint): string => stockShown(some, material.measure, "lacking");
  // A day's column may be narrower than a figure with its unit, which then goes on a line of its own.
  const inCell = (some: bigint): string => escaped(needed(some).replace(NO_BREAK, " "));
  const small = (words: string): string => element("small", {}, words);
  const name = element("a", { href: materialAddress(material.id) }, escaped(material.name));
  const held = small(escaped(`${stockShown(outlook.onHand, material.measure, "there")} on the shelf`));
  const cells = days.map((day) =>
    element(
      "td",
      { class: day.short > 0n ? "draw-day short" : "draw-day" },
      (day.need > 0n ? inCell(day.need) : "") + (day.short > 0n ? small(`short ${inCell(day.short)}`) : ""),
    ),
  );
  // Day by day, as the runs themselves say it: each lack is rounded up by itself.
  const lacking = days.filter((day) => day.short > 0n).map((day) => needed(day.short));
  const together =
    short > 0n
      ? signMarkup("box", "wrong", escaped(`${needed(need)}, short ${inARow(lacking)}`))
      : escaped(`${needed(need)} this week`);
  const ribbon = ribbonDrawing(ribbonOf(outlook, plan.today, plan.lastDay, "row"), axis.lines);
  return [
    element("th", { scope: "row", class: "draw-name" }, name + held),
    ...cells,
    element("td", { class: "draw-together" }, together),
    element("td", { class: "draw-ribbon" }, ribbon),
  ].join("");
}
