import Link from "next/link";
import type { ReactNode } from "react";
import { isoDate, mondayOf } from "@/lib/domain/calendar";
import type { Product, Run } from "@/lib/domain/workshop";
import { dayShown } from "@/lib/edge/figures";
import { hoursCarried } from "@/lib/edge/forms/week-forms";
import { planAgain, putRun, removeRun, resizeTo } from "../actions";
import { hoursBack } from "../hours-actions";
import type { Deed } from "./deed";
import { Press } from "@/app/_ui/press";
import { unitsShown } from "./run-words";
import type { WeekView } from "./week-view";
import { WhatChanged } from "./what-changed";

interface Notice {
  readonly deed: Deed | null;
  readonly view: WeekView;
}

/** What was done last and, in the same place until the next thing is done, the way to take it back. */
export function WeekNotice({ deed, view }: Notice): ReactNode {
  const said = deed && saidOf(deed, view);
  return (
    <div role="status">
      {said && (
        <div className={said.isRefusal ? "fault week-notice" : "done week-notice"}>
          <div className="week-notice-line">
            <p>{said.words}</p>
            {said.back}
          </div>
          {view.before && <WhatChanged changes={view.before.changes} today={view.today} />}
        </div>
      )}
    </div>
  );
}

interface Said {
  readonly words: ReactNode;
  readonly back: ReactNode;
  readonly isRefusal?: boolean;
}

/** Nothing where the books do not bear out what the address says. */
function saidOf(deed: Deed, view: WeekView): Said | null {
  if (!("about" in deed)) return saidOfHours(deed, view);
  const { workshop, productOf } = view;
  const run = workshop.runs.find(({ id }) => id === deed.about);
  const product = run && productOf(run.product);
  switch (deed.kind) {
    case "planned":
    case "moved":
    case "resized":
      return run && product ? saidOfRun(deed, run, product, view) : null;
    case "deleted": {
      const deleted = workshop.products.find(({ id }) => id === deed.product);
      return run || !deleted ? null : saidOfDeleted(deed, deleted, view);
    }
    case "changed meanwhile":
      return run && product ? { words: meanwhileWords(run, product, view), back: null, isRefusal: true } : null;
    case "made meanwhile":
      return {
        words: "That run was closed as made meanwhile, in another tab. Nothing was changed.",
        back: null,
        isRefusal: true,
      };
    case "at the bench":
      return {
        words: "A batch of that run is open at the bench: it is closed, or given up, there. Nothing was changed.",
        back: null,
        isRefusal: true,
      };
    case "gone meanwhile":
      return run
        ? null
        : {
            words: "That run was removed meanwhile, in another tab. Nothing was changed.",
            back: null,
            isRefusal: true,
          };
  }
}

function saidOfHours(
  deed: Extract<Deed, { kind: "hours" | "hours changed meanwhile" }>,
  { desk, monday }: WeekView,
): Said | null {
  if (deed.kind === "hours changed meanwhile")
    return {
      words: "The hours were changed meanwhile, in another tab. Nothing was overwritten.",
      back: null,
      isRefusal: true,
    };
  const [now, was] = [hoursCarried(desk.benchMinutes), hoursCarried(deed.hours)];
  return {
    words:
      desk.benchMinutes === null
        ? "Your hours at the bench are not said any more."
        : "Your hours at the bench are kept.",
    back: now !== was && <TakeBack act={hoursBack} carried={{ hours: now, to: was, of: isoDate(monday) }} />,
  };
}

const TakeBack = ({
  act,
  carried,
}: {
  readonly act: (form: FormData) => Promise<void>;
  readonly carried: Readonly<Record<string, string>>;
}): ReactNode => (
  <Press act={act} carried={carried}>
    Take it back
  </Press>
);

function saidOfRun(
  deed: Extract<Deed, { kind: "planned" | "moved" | "resized" }>,
  run: Run,
  product: Product,
  view: WeekView,
): Said | null {
  const { today, carriedOf } = view;
  const on = <OnDay run={run} view={view} />;
  const carried = carriedOf(run);
  const rounded = "said" in deed && deed.said !== "" && ` (${deed.said} in the vessel, rounded down to whole units)`;
  switch (deed.kind) {
    case "planned":
      return {
        words: (
          <>
            Planned: {product.name}, {unitsShown(run.units)}
            {rounded}, on {on}.
          </>
        ),
        back: <TakeBack act={removeRun} carried={carried} />,
      };
    case "moved": {
      const back = { ...carried, to: isoDate(deed.was), before: deed.before ?? "" };
      const within = deed.was === run.date ? "to another place in its day," : `from ${dayShown(deed.was, today)} to`;
      return {
        words: (
          <>
            Moved: {product.name}, {within} {on}.
          </>
        ),
        back: <TakeBack act={putRun} carried={back} />,
      };
    }
    case "resized":
      if (run.units === deed.was) return null;
      return {
        words: (
          <>
            Changed: {product.name} of {on} to {unitsShown(run.units)}
            {rounded}; it was {unitsShown(deed.was)}.
          </>
        ),
        back: <TakeBack act={resizeTo} carried={{ ...carried, to: deed.was.toString() }} />,
      };
  }
}

/** The day, which leads to its week where that is another one. */
function OnDay({ run, view: { today, monday } }: { readonly run: Run; readonly view: WeekView }): ReactNode {
  const words = dayShown(run.date, today);
  if (mondayOf(run.date) === monday) return words;
  return <Link href={`/week?of=${isoDate(run.date)}`}>{words}</Link>;
}

function saidOfDeleted(
  { about, was, units, before }: Extract<Deed, { kind: "deleted" }>,
  product: Product,
  { today, monday }: WeekView,
): Said {
  const carried = {
    run: about,
    product: product.id,
    from: isoDate(was),
    units: units.toString(),
    before: before ?? "",
    of: isoDate(monday),
  };
  return {
    words: `Removed: ${product.name} of ${dayShown(was, today)}, ${unitsShown(units)}.`,
    back: <TakeBack act={planAgain} carried={carried} />,
  };
}

const meanwhileWords = (run: Run, product: Product, { today }: WeekView): string =>
  `${product.name} was changed meanwhile, in another tab: it is on ${dayShown(run.date, today)} now, with ${unitsShown(run.units)}. Nothing was overwritten.`;
