import type { Route } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { countShown, dayShown } from "@/lib/edge/figures";
import { CountRow, ExpiryMatter, OrderMatter, RunMatter } from "./matter-rows";
import type { CountMatter, Matters } from "./what-matters";

/** So many of each kind are shown; the rest are one link away. */
const MOST_SHOWN = 6;

/** What asks for a hand, in the order in which it presses; what is quiet is said in one line. */
export function MattersList({
  matters,
  toCount,
  today,
}: {
  readonly matters: Matters;
  readonly toCount: readonly CountMatter[];
  readonly today: Day;
}): ReactNode {
  const { notMakeable, toOrder, goingOut, quiet } = matters;
  return (
    <>
      <Group
        name="Cannot be made"
        of={`${countShown(notMakeable.length)} of ${countShown(matters.runs)} runs`}
        rows={notMakeable.map((outlook) => (
          <RunMatter key={outlook.run.id} outlook={outlook} today={today} />
        ))}
        more={{ href: "/week", name: "All runs by week" }}
      />
      <Group
        name="To order"
        of="by the end of next week"
        rows={toOrder.map((outlook) => (
          <OrderMatter
            key={outlook.material.id}
            outlook={outlook}
            instead={matters.instead.get(outlook.material.id) ?? null}
            today={today}
          />
        ))}
        more={{ href: "/shelf?show=order", name: "All that is to be bought" }}
      />
      <Group
        name="Going out of date"
        of={`to ${dayShown(matters.lastDay, today)}`}
        rows={goingOut.map((outlook) => (
          <ExpiryMatter key={outlook.material.id} outlook={outlook} today={today} />
        ))}
        more={{ href: "/shelf?show=date", name: "All lots going out of date" }}
      />
      <Group
        name="To count"
        of="as often as you said"
        rows={toCount.map((matter) => (
          <CountRow key={matter.material.id} matter={matter} today={today} />
        ))}
        more={{ href: "/shelf/count?lots=due", name: "Count what is due" }}
      />
      {quiet > 0 && (
        <p className="quiet">
          Nothing else needs a hand: {countShown(quiet)} of {countShown(matters.materials)} materials cover every run to{" "}
          {dayShown(matters.lastDay, today)}.
        </p>
      )}
    </>
  );
}

function Group({
  name,
  of,
  rows,
  more,
}: {
  readonly name: string;
  readonly of: string;
  readonly rows: readonly ReactNode[];
  readonly more: { readonly href: Route; readonly name: string };
}): ReactNode {
  if (rows.length === 0) return null;
  return (
    <section className="matters">
      <h2>
        {name} <small>{of}</small>
      </h2>
      <div>
        <ul>{rows.slice(0, MOST_SHOWN)}</ul>
        <Link className="more" href={more.href}>
          {rows.length > MOST_SHOWN ? `${more.name}, ${countShown(rows.length - MOST_SHOWN)} more here` : more.name}
        </Link>
      </div>
    </section>
  );
}
