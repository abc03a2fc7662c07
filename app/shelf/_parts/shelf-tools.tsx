import type { ReactNode } from "react";
import { Choice } from "@/app/_ui/choice";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { addressOf, type Asked, type Changed, countShown, type Show, SHOWS, type Sort } from "./shelf-list";

const SHOW_WORDS: Readonly<Record<Show, string>> = {
  all: "All",
  order: "To buy",
  date: "Going out of date",
  packaging: "Packaging",
  changed: "Changed last",
};

const SORT_WORDS: readonly (readonly [Sort, string])[] = [
  ["day", "Order day, soonest first"],
  ["name", "Name"],
  ["lasts", "What lasts shortest first"],
];

/** Finds and orders what is listed. A form that asks by its address, so that it needs no script. */
export const ShelfTools = ({
  asked,
  outlooks,
  changed,
}: {
  readonly asked: Asked;
  readonly changed: Changed;
  readonly outlooks: readonly MaterialOutlook[];
}): ReactNode => (
  <div className="shelf-tools">
    <form action="/shelf" method="get" role="search" className="shelf-find">
      {asked.show !== "all" && <input type="hidden" name="show" value={asked.show} />}
      <div className="field">
        <label htmlFor="shelf-find">Find a material or lot</label>
        <input id="shelf-find" type="search" name="find" defaultValue={asked.find} autoComplete="off" />
      </div>
      <div className="field">
        <label htmlFor="shelf-by">In order of</label>
        <select id="shelf-by" name="by" defaultValue={asked.by}>
          {SORT_WORDS.map(([sort, words]) => (
            <option key={sort} value={sort}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <button className="button" type="submit">
        Show
      </button>
    </form>
    <Choice
      name="Show materials"
      options={SHOWS.filter((show) => show !== "changed" || changed.size > 0 || asked.show === show).map((show) => ({
        href: addressOf(asked, { show }),
        label: `${SHOW_WORDS[show]}, ${String(countShown(outlooks, show, changed))}`,
        chosen: show === asked.show,
      }))}
    />
  </div>
);
