import Link from "next/link";
import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { RowKeys } from "@/app/_ui/row-keys";
import { runAddress, runAnchor } from "@/lib/edge/run-address";
import type { Day } from "@/lib/domain/calendar";
import type { MostWorking } from "@/lib/domain/lots-drawn";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import type { TookIt } from "@/lib/domain/took-it";
import type { Run } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { element, escaped } from "@/lib/edge/markup";
import { signMarkup } from "@/lib/edge/sign-markup";
import type { BetterDay } from "@/app/_ui/better-day";
import { mostLines } from "./most-working";
import { MoveTo } from "./move-to";
import { NeedWorking } from "./need-working";
import type { OpenedRun } from "./opened-runs";
import { RunDraws } from "./run-draws";
import { RunTools } from "./run-tools";
import { calledRun, massOf, shortages, unitsShown } from "./run-words";
import { type WeekView, weekWith } from "./week-view";

interface Runs {
  readonly runs: readonly RunOutlook[];
  /** Those that open in their place; the others are links to the same week with that run open. */
  readonly opened: ReadonlyMap<Run, OpenedRun>;
  /** The id of the run that is to stand open. */
  readonly asked: string | null;
  readonly view: WeekView;
  /** Of each run that cannot be made: which earlier one took what it is short of. */
  readonly took: ReadonlyMap<Run, TookIt>;
  /** Of runs that were looked at closely: another day on which each could be made, or null for none. */
  readonly better: ReadonlyMap<Run, BetterDay | null>;
}

/** Every run of the week with what it draws and how that comes about. */
export function RunByRun({ runs, opened, asked, view, took, better }: Runs): ReactNode {
  if (runs.length === 0) return null;
  const { today, addressOf } = view;
  return (
    <section className="run-by-run">
      <h2>Run by run</h2>
      <RowKeys>
        {runs.map((outlook) => {
          const { run } = outlook;
          const line = lineOf(outlook, today);
          const made = opened.get(run);
          if (made === undefined) {
            const link = element("a", { class: "run-line", href: addressOf(outlook) }, line);
            return <div key={run.id} className="run-row" dangerouslySetInnerHTML={{ __html: link }} />;
          }
          return (
            <details key={run.id} className="run-row" open={run.id === asked}>
              <summary className="run-line" dangerouslySetInnerHTML={{ __html: line }} />
              <div className="run-open" id={runAnchor(run.id)}>
                <RunSays
                  outlook={outlook}
                  most={made.lots.most}
                  took={took.get(run)}
                  better={better.get(run)}
                  view={view}
                />
                <RunTools outlook={outlook} view={view} />
                <RunDraws outlook={outlook} opened={made} today={today} called={calledRun(outlook, today)} />
                <NeedWorking outlook={outlook} needs={made.needs} />
              </div>
            </details>
          );
        })}
      </RowKeys>
    </section>
  );
}

/** A run's line, as markup: a busy week has many. */
function lineOf(outlook: RunOutlook, today: Day): string {
  const { run, product, makeable } = outlook;
  const part = (name: string, inner: string): string => element("span", { class: name }, inner);
  const state = makeable
    ? signMarkup("tick", "still", "can be made")
    : signMarkup("box", "wrong", escaped(`short ${inARow(shortages(outlook))}`));
  return [
    part("run-name", escaped(product.name)),
    part("run-day", escaped(dayShown(run.date, today))),
    part("run-size", escaped(`${massOf(outlook)}, ${unitsShown(run.units)}`)),
    part("run-state", state),
  ].join("");
}

interface Says {
  readonly outlook: RunOutlook;
  readonly most: MostWorking;
  readonly took: TookIt | undefined;
  /** Left out where it was not looked for. */
  readonly better: BetterDay | null | undefined;
  readonly view: WeekView;
}

/** The most that could be made at its turn, what sets that limit, which run took what is missing, and a day that would do. */
function RunSays({ outlook, most, took, better, view }: Says): ReactNode {
  const { run, makeable, mostUnits, limiting, day } = outlook;
  const { today } = view;
  return (
    <div className="run-says">
      <p>
        At its turn the shelf allows <b>{unitsShown(mostUnits)}</b> at most; {limiting.name} sets that limit.
      </p>
      <HowItComes {...mostLines(most, today, "usable at its turn")} />
      {took && (
        <p>
          <Link href={runAddress(took.run)} prefetch={false}>
            {took.product.name} of {dayShown(took.run.date, today)}
          </Link>{" "}
          {took.enough
            ? "took it: without that run this one could be made."
            : "drew most of what is short, though leaving it out would not be enough."}
        </p>
      )}
      {!makeable && better !== undefined && !took && (
        <p>No earlier run drew any of what is short: there is not enough in the house.</p>
      )}
      {!makeable && <AnotherDay outlook={outlook} better={better} view={view} />}
      {run.date < today && <p>Its day has passed and it is not closed, so it draws {dayShown(day, today)}, today.</p>}
    </div>
  );
}

/** A day on which it could be made, with what that depends on. @rule SUGGEST-3 */
function AnotherDay({ outlook, better, view }: Omit<Says, "took" | "most">): ReactNode {
  const { run } = outlook;
  if (better === undefined)
    return (
      <p>
        <Link href={`${weekWith(view.monday, { run: run.id })}#${runAnchor(run.id)}`} prefetch={false}>
          See which run took it, and on which day it could be made
        </Link>
      </p>
    );
  if (better === null) return <p>No later day was found on which it could be made with what is on the way.</p>;
  const { day, dependsOn } = better;
  return (
    <div className="another-day">
      <p>
        On {dayShown(day, view.today)} it could be made in full
        {dependsOn.length > 0 && `, if ${inARow(dependsOn)}`}.
      </p>
      <MoveTo outlook={outlook} day={day} view={view} first={false} />
    </div>
  );
}
