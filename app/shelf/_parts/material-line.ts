/** The line of a material on the shelf, as markup: a long shelf has hundreds of them. */
import { type Day, daysBetween } from "@/lib/domain/calendar";
import type { MaterialFigures } from "@/lib/domain/plan-changes";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { Material } from "@/lib/domain/workshop";
import { dayShown, daysShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { element, escaped, unseen } from "@/lib/edge/markup";
import { ribbonOf } from "@/lib/edge/ribbon";
import { lastDayOfUse } from "@/lib/edge/ribbon-sentence";
import { ribbonDrawing } from "@/lib/edge/ribbon-markup";
import { signMarkup } from "@/lib/edge/sign-markup";
import type { Shelf } from "./shelf";
import type { Group } from "./shelf-list";

const KIND_WORDS: Readonly<Record<Material["kind"], string>> = {
  ingredient: "",
  packaging: "Packaging",
  consumable: "Consumable",
};

/** What is there, how long it lasts, when to order, and its ribbon. */
export function materialLine(outlook: MaterialOutlook, shelf: Shelf, group: Group): string {
  const { material } = outlook;
  const { today, lastDay, axis } = shelf;
  const before = shelf.before.get(material.id) ?? null;
  const held = (figures: MaterialFigures): string => stockShown(figures.onHand, material.measure, "there");
  const until = (figures: MaterialFigures): string => lasts(figures, today, lastDay);
  const ribbon = ribbonOf(outlook, today, lastDay, group === "covered" ? "slim" : "row");
  return [
    part("shelf-name", [
      element("span", {}, escaped(material.name)),
      small(KIND_WORDS[material.kind]),
      shelf.countDue.has(material.id) ? element("small", {}, signMarkup("tally", "open", "count due")) : "",
    ]),
    part("shelf-held number", [
      element("b", {}, escaped(held(outlook))),
      " ",
      before ? was(held(outlook), held(before)) : "",
      unseen(" on the shelf,"),
    ]),
    part("shelf-lasts number", [
      unseen("lasts "),
      escaped(until(outlook)),
      small(lastsNote(outlook)),
      " ",
      before ? was(until(outlook), until(before)) : "",
      unseen(","),
    ]),
    part("shelf-when", [orderDay(outlook, today, group), before ? orderBefore(outlook, before, today) : ""]),
    part("shelf-ribbon", [ribbonDrawing(ribbon, axis.lines)]),
  ].join("");
}

const part = (className: string, inner: readonly string[]): string =>
  element("span", { class: className }, inner.join(""));
const small = (words: string): string => (words === "" ? "" : element("small", {}, escaped(words)));

/** What a figure was before the last change, where it was another. */
const was = (now: string, before: string): string =>
  before === now ? "" : element("small", { class: "was" }, `was ${escaped(before)}`);

/** Days to the first run that cannot be met; where every one is, at least the days that were looked at. */
function lasts({ shortOn }: MaterialFigures, today: Day, lastDay: Day): string {
  if (shortOn !== null) return daysShown(daysBetween(today, shortOn));
  return `${String(daysBetween(today, lastDay))}+${NO_BREAK}days`;
}

/** Why the days are what they are, where nothing is there or no run takes any. */
function lastsNote({ onHand, shortOn, events }: MaterialOutlook): string {
  if (shortOn !== null) return onHand === 0n ? "until needed" : "";
  return events.some(({ kind }) => kind === "drawn") ? "" : "no runs";
}

/** The order day and what is to be bought, where the last change altered them. */
function orderBefore(outlook: MaterialOutlook, before: MaterialFigures, today: Day): string {
  const { measure } = outlook.material;
  const day = ({ orderBy }: MaterialFigures): string => (orderBy === null ? "no order" : dayShown(orderBy, today));
  const bought = ({ toBuy }: MaterialFigures): string =>
    toBuy > 0n ? `buy ${stockShown(toBuy, measure, "lacking")}` : "nothing to buy";
  const purchase =
    bought(outlook) === bought(before)
      ? ""
      : element("small", { class: "was" }, escaped(`${bought(outlook)}, was ${bought(before)}`));
  return ` ${was(day(outlook), day(before))}${purchase}`;
}

function orderDay(outlook: MaterialOutlook, today: Day, group: Group): string {
  const { orderBy, shortOn, belowSafetyOn } = outlook;
  if (group === "to make") return signMarkup("notch", "open", "make it");
  if (group === "no offer") return signMarkup("box", "wrong", "no offer");
  if (orderBy === null && group === "out of date") return signMarkup("hourglass", "wrong", lossDay(outlook, today));
  if (orderBy === null) return element("span", { "aria-hidden": "true" }, "–") + unseen("no order needed,");
  if (group === "nothing to buy") return signMarkup("dash", "still", "nothing to buy");
  const day = unseen("order by ") + escaped(orderBy === today ? "today" : dayShown(orderBy, today));
  // What lasts can be late all the same, for its safety stock.
  const why =
    shortOn === null && belowSafetyOn !== null && belowSafetyOn <= today ? small("below its safety stock") : "";
  if (orderBy < today) return signMarkup("pennant", "wrong", day) + why;
  return signMarkup("notch", group === "this week" ? "open" : "still", day) + why;
}

/** When the first of its lots goes out of date unused. */
function lossDay({ expiring }: MaterialOutlook, today: Day): string {
  const last = expiring.map(lastDayOfUse).reduce((first, day) => (day < first ? day : first));
  if (last < today) return "out of date";
  return last === today ? "goes out today" : `goes out ${dayShown(last, today, { weekday: false })}`;
}
