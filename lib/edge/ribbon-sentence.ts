/** What a ribbon shows, said in one sentence. */
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { Expiry, MaterialOutlook } from "@/lib/domain/plan-figures";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { dayShown, daysShown, stockShown } from "./figures";
import { calledLot } from "./ladder-words";

/** Lots and deliveries named one by one; more are counted. */
const NAMED = 3;

/** What is owed on the first day that a run cannot be met; zero where every run is. @rule PLAN-5 */
export function shortAmount({ events, shortOn }: MaterialOutlook): Stock {
  const owed = shortOn === null ? undefined : events.findLast(({ day }) => day === shortOn)?.owed;
  return owed ?? quantity<Stock>(0n);
}

/** The last day on which a lot could be used. */
export const lastDayOfUse = ({ on }: Expiry): Day => daysAfter(on, -1);

/** On the shelf; due; short by, when; lost, when; order by. */
export function ribbonSentence(outlook: MaterialOutlook, today: Day, lastDay: Day): string {
  const { material, onHand } = outlook;
  const parts = [
    `${stockShown(onHand, material.measure, "there")} on the shelf`,
    ...dueParts(outlook, today),
    ...shortParts(outlook, today, lastDay),
    ...lossParts(outlook, today),
    ...orderParts(outlook, today),
  ];
  return `${material.name}: ${parts.join("; ")}.`;
}

function dueParts({ events, material }: MaterialOutlook, today: Day): readonly string[] {
  const arrivals = events.flatMap((event) => (event.kind === "arrived" ? [event] : []));
  const named = arrivals
    .slice(0, NAMED)
    .map(({ day, quantity: due }) => `${stockShown(due, material.measure, "there")} due ${dayShown(day, today)}`);
  const more = arrivals.length - NAMED;
  return more > 0 ? [...named, `${more} more deliveries`] : named;
}

function shortParts(outlook: MaterialOutlook, today: Day, lastDay: Day): readonly string[] {
  const { material, shortOn, belowSafetyOn, events } = outlook;
  if (shortOn !== null) {
    const lacking = stockShown(shortAmount(outlook), material.measure, "lacking");
    return [`short by ${lacking} on ${dayShown(shortOn, today)}`];
  }
  const below = belowSafetyOn === null ? [] : [`below the safety stock from ${dayShown(belowSafetyOn, today)}`];
  const isDrawn = events.some(({ kind }) => kind === "drawn");
  const runs = isDrawn
    ? `covers every planned run to ${dayShown(lastDay, today, { weekday: false })}`
    : "no runs planned";
  return [...below, runs];
}

function lossParts(outlook: MaterialOutlook, today: Day): readonly string[] {
  const { expiring, material } = outlook;
  const named = expiring.slice(0, NAMED).map((expiry) => {
    const amount = `${stockShown(expiry.quantity, material.measure, "nearest")} of ${calledLot(outlook, expiry.lot)}`;
    const last = lastDayOfUse(expiry);
    return last < today
      ? `${amount} out of date since ${dayShown(last, today)}`
      : `${amount} goes out of date ${dayShown(last, today)}`;
  });
  const more = expiring.length - NAMED;
  return more > 0 ? [...named, `${more} more lots go out of date`] : named;
}

function orderParts({ orderBy, daysLate }: MaterialOutlook, today: Day): readonly string[] {
  if (orderBy === null) return [];
  if (orderBy === today) return ["order today"];
  if (orderBy > today) return [`order by ${dayShown(orderBy, today)}`];
  return [`order day was ${dayShown(orderBy, today)}, ${daysShown(daysLate ?? 0)} late`];
}
