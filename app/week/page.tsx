import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { RibbonInks, RibbonKey } from "@/app/_ui/ribbon";
import { type Planned, planForPage } from "@/app/plan-for-page";
import { daysAfter, mondayOf, type Day } from "@/lib/domain/calendar";
import { mostFromShelf } from "@/lib/domain/most-from-shelf";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { weekTitle } from "@/lib/edge/week-title";
import { putRun } from "./actions";
import { type BetterDay, betterDays } from "@/app/_ui/better-day";
import { deedFrom, type Parameters, textOf } from "./_parts/deed";
import { EarlierRuns } from "./_parts/earlier-runs";
import { MostYouCanMake } from "./_parts/most-you-can-make";
import { MoveTo } from "./_parts/move-to";
import { openedRuns } from "./_parts/opened-runs";
import { RunByRun } from "./_parts/run-by-run";
import { tookItFor } from "./_parts/took-it-for";
import { WeekBoard } from "./_parts/week-board";
import { WeekDays } from "./_parts/week-days";
import { WeekDraws } from "./_parts/week-draws";
import { WeekFinding } from "./_parts/week-finding";
import { WeekNotice } from "./_parts/week-notice";
import { mondayAsked, runsOfWeek, weekAddress, weekDraws } from "./_parts/week-of";
import { type WeekView, weekWith } from "./_parts/week-view";
import { weekViewOf } from "./week-view-of";
import { WeekForms } from "./week-forms";
import "./week.css";

export const metadata: Metadata = { title: "The week" };

interface Page {
  readonly searchParams: Promise<Parameters>;
}

/** The runs of one week: planned and changed here; which can be made and which not and why, and what they draw. */
export default async function WeekPage({ searchParams }: Page): Promise<ReactNode> {
  const [found, parameters] = await Promise.all([planForPage(), searchParams]);
  if (!found) redirect("/");
  const { workshop, desk, today, plan, prepared } = found;
  const monday = mondayAsked(parameters.of, today);
  const { runs, earlier, next } = runsOfWeek(plan.runs, monday, today);
  const shown = [...earlier, ...runs];
  const opensHere = shown.length <= OPENING_HERE;
  const deed = deedFrom(parameters);
  const view = weekViewOf(found, { monday, deed, lifted: textOf(parameters, "lift"), opensHere });
  const asked = textOf(parameters, "run") || null;
  const opened = opensHere ? shown : shown.filter(({ run }) => run.id === asked);
  const looked = lookedAt(shown, asked);
  const better = betterDays(looked, { workshop, prepared, plan, benchMinutes: desk.benchMinutes });
  const offered = firstOffered(looked, better);
  return (
    <>
      <RibbonInks />
      <Opening
        title={weekTitle(monday, today)}
        crumb={<WeekLinks monday={monday} thisMonday={mondayOf(today)} lifted={view.lifted?.id ?? null} />}
        beside={<WeekButtons view={view} offered={offered} parameters={parameters} />}
      >
        {workshop.products.length === 0 ? (
          "No products yet. A run makes one of them: write down the first, and plan its runs here."
        ) : (
          <WeekFinding runs={runs} earlier={earlier} next={next} today={today} days={view.days} better={offered} />
        )}
      </Opening>
      <WeekNotice deed={deed} view={view} />
      <WeekForms view={view} parameters={parameters} />
      <WeekBoard
        put={putRun}
        leave={view.lifted === null ? null : weekWith(monday, {})}
        settled={deed && "about" in deed ? deed.about : null}
      >
        <EarlierRuns runs={earlier} view={view} />
        {view.lifted && <Lifted view={view} />}
        <div className="week-top">
          <WeekDays view={view} runs={runs} />
          <Most found={found} monday={monday} parameters={parameters} />
        </div>
      </WeekBoard>
      <RunByRun
        runs={shown}
        opened={openedRuns(opened, workshop, prepared)}
        asked={asked}
        view={view}
        took={tookItFor(looked, plan.runs, prepared)}
        better={better}
      />
      <Draws runs={runs} view={view} showAll={parameters.show === "all"} />
      {runs.length > 0 && (
        <div className="week-foot">
          <RibbonKey />
        </div>
      )}
    </>
  );
}

interface OfWeek {
  readonly found: Planned;
  readonly monday: Day;
  readonly parameters: Parameters;
}

const Most = ({ found: { workshop, prepared, today }, monday, parameters }: OfWeek): ReactNode => (
  <MostYouCanMake
    mosts={mostFromShelf(workshop.products, prepared, today)}
    monday={monday}
    today={today}
    asked={textOf(parameters, "most")}
  />
);

interface WeeksDraws {
  readonly runs: readonly RunOutlook[];
  readonly view: WeekView;
  readonly showAll: boolean;
}

function Draws({ runs, view: { plan, monday, days: benchDays }, showAll }: WeeksDraws): ReactNode {
  const days = benchDays.map(({ day }) => day);
  const draws = weekDraws(runs, plan.materials, days);
  return <WeekDraws draws={draws} days={days} plan={plan} showAll={showAll} address={weekWith(monday, {})} />;
}

/** Where there are more runs than this, one opens by its address, so that the page need not carry what stands in all. */
const OPENING_HERE = 12;

/** So many runs that cannot be made are looked at closely, each by planning many days through; and the one asked for. */
const MOST_LOOKED_AT = 2;

function lookedAt(shown: readonly RunOutlook[], asked: string | null): readonly RunOutlook[] {
  const short = shown.filter(({ makeable }) => !makeable);
  const own = short.filter(({ run }) => run.id === asked);
  return own.length > 0 ? own : short.slice(0, MOST_LOOKED_AT);
}

function firstOffered(
  looked: readonly RunOutlook[],
  better: ReadonlyMap<RunOutlook["run"], BetterDay | null>,
): { readonly run: RunOutlook; readonly day: Day } | null {
  for (const outlook of looked) {
    const day = better.get(outlook.run)?.day;
    if (day !== undefined) return { run: outlook, day };
  }
  return null;
}

interface Buttons {
  readonly view: WeekView;
  readonly offered: ReturnType<typeof firstOffered>;
  readonly parameters: Parameters;
}

function WeekButtons({ view, offered, parameters }: Buttons): ReactNode {
  // Where a form is open its own button is the first.
  const asking = ["plan", "hours"].some((form) => textOf(parameters, form) !== "");
  const { monday, desk, workshop } = view;
  if (workshop.products.length === 0)
    return (
      <div className="week-buttons">
        <Link className="button first" href="/book/first">
          Write down the first product
        </Link>
      </div>
    );
  return (
    <div className="week-buttons">
      {offered && <MoveTo outlook={offered.run} day={offered.day} view={view} first={!asking} />}
      <Link
        className={offered || asking ? "button" : "button first"}
        href={`${weekWith(monday, { plan: "run" })}#plan-a-run`}
      >
        Plan a run
      </Link>
      <Link className="button plain" href={`${weekWith(monday, { hours: "1" })}#bench-hours`}>
        {desk.benchMinutes === null ? "Say your bench hours" : "Your bench hours"}
      </Link>
    </div>
  );
}

function Lifted({ view }: { readonly view: WeekView }): ReactNode {
  const { lifted, monday, productOf } = view;
  return (
    <p className="done week-lifted" id="week-lifted">
      Moving {lifted && productOf(lifted.product).name}. Choose a place, here or in another week; arrow keys walk
      through them, Enter puts it there, Escape leaves it. <Link href={weekWith(monday, {})}>Leave it where it is</Link>
    </p>
  );
}

interface Weeks {
  readonly monday: Day;
  readonly thisMonday: Day;
  /** A run that is being moved goes along. */
  readonly lifted: string | null;
}

/** The weeks either side, as far as dates may go. */
function WeekLinks({ monday, thisMonday, lifted }: Weeks): ReactNode {
  const links = [
    { words: "Week before", to: daysAfter(monday, -7) },
    { words: "This week", to: monday === thisMonday ? null : thisMonday },
    { words: "Week after", to: daysAfter(monday, 7) },
  ].flatMap(({ words, to }) => {
    const address = to === null ? null : weekAddress(to);
    return to === null || address === null
      ? []
      : [{ words, to: lifted === null ? address : weekWith(to, { lift: lifted }) }];
  });
  return links.map(({ words, to }) => (
    <Link key={words} className="week-link" href={to}>
      {words}
    </Link>
  ));
}
