import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { planForPage } from "@/app/plan-for-page";
import { RibbonInks, RibbonKey } from "@/app/_ui/ribbon";
import { type Day, daysAfter, mondayOf } from "@/lib/domain/calendar";
import { mostFromShelf } from "@/lib/domain/most-from-shelf";
import { preparedFor } from "@/lib/domain/plan";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { weekTitle } from "@/lib/edge/week-title";
import { EarlierRuns } from "./_parts/earlier-runs";
import { MostYouCanMake } from "./_parts/most-you-can-make";
import { RunByRun } from "./_parts/run-by-run";
import { type RunAddress, runAnchor } from "./_parts/run-words";
import { tookItFor } from "./_parts/took-it-for";
import { WeekDays } from "./_parts/week-days";
import { WeekDraws } from "./_parts/week-draws";
import { WeekFinding } from "./_parts/week-finding";
import { daysOfWeek, mondayAsked, runsOfWeek, weekAddress, weekDraws } from "./_parts/week-of";
import "./week.css";

export const metadata: Metadata = { title: "The week" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** The runs of one week: which can be made and which not and why, and what they draw. */
export default async function WeekPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [found, parameters] = await Promise.all([planForPage(), searchParams]);
  if (!found) redirect("/");
  const { workshop, today, plan } = found;
  const monday = mondayAsked(parameters.of, today);
  const days = daysOfWeek(monday);
  const thisMonday = mondayOf(today);
  const { runs, earlier, next } = runsOfWeek(plan.runs, monday, today);
  const prepared = preparedFor(workshop, today);
  const address = weekAddress(monday) ?? "/week?";
  const shown = [...earlier, ...runs];
  const asked = typeof parameters.run === "string" ? parameters.run : null;
  const opensHere = shown.length <= OPENING_HERE;
  const opened = opensHere ? shown : shown.filter(({ run }) => run.id === asked);
  const addressOf = ({ run: { id } }: RunOutlook): RunAddress =>
    opensHere ? `#${runAnchor(id)}` : `${address}&run=${encodeURIComponent(id)}#${runAnchor(id)}`;
  const took = tookItFor(opened, plan.runs, prepared);
  return (
    <>
      <RibbonInks />
      <Opening title={weekTitle(monday, today)} crumb={<WeekLinks monday={monday} thisMonday={thisMonday} />}>
        <WeekFinding runs={runs} earlier={earlier} next={next} today={today} />
      </Opening>
      <EarlierRuns runs={earlier} today={today} addressOf={addressOf} />
      <div className="week-top">
        <WeekDays days={days} runs={runs} today={today} addressOf={addressOf} />
        <MostYouCanMake mosts={mostFromShelf(workshop.products, prepared, today)} />
      </div>
      <RunByRun
        runs={shown}
        opened={opened}
        asked={asked}
        addressOf={addressOf}
        took={took}
        today={today}
        usesByProduct={prepared.usesByProduct}
      />
      <WeekDraws
        draws={weekDraws(runs, plan.materials, days)}
        days={days}
        plan={plan}
        showAll={parameters.show === "all"}
        address={address}
      />
      {runs.length > 0 && (
        <div className="week-foot">
          <RibbonKey />
        </div>
      )}
    </>
  );
}

/** Where there are more runs than this, one opens by its address, so that the page need not carry what stands in all. */
const OPENING_HERE = 24;

/** The weeks either side, as far as dates may go. */
function WeekLinks({ monday, thisMonday }: { readonly monday: Day; readonly thisMonday: Day }): ReactNode {
  const links = [
    { words: "Week before", to: weekAddress(daysAfter(monday, -7)) },
    { words: "This week", to: monday === thisMonday ? null : weekAddress(thisMonday) },
    { words: "Week after", to: weekAddress(daysAfter(monday, 7)) },
  ].flatMap(({ words, to }) => (to === null ? [] : [{ words, to }]));
  return links.map(({ words, to }) => (
    <Link key={words} className="week-link" href={to}>
      {words}
    </Link>
  ));
}
