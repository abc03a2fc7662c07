/** Runs as the week says them. */
import type { Day } from "@/lib/domain/calendar";
import { bulkOf, exactFor } from "@/lib/domain/needs";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import type { Run } from "@/lib/domain/workshop";
import { counted, inARow } from "@/lib/edge/counted";
import { countShown, dayShown, stockShown } from "@/lib/edge/figures";
import { massShown } from "@/lib/edge/mass-shown";
import { NO_BREAK } from "@/lib/edge/shown-digits";

/** What a run that cannot be made is short of, in short: `Short 84 g`. */
export function shortWords({ short }: RunOutlook): string {
  const [first] = short;
  return first && short.length === 1
    ? `Short ${stockShown(first.by, first.material.measure, "lacking")}`
    : `Short of ${counted(short.length, "material", "materials")}`;
}

/** A run as a sentence calls it: `Balm of Tue 8 Dec`. */
export const calledRun = ({ run, product }: Pick<RunOutlook, "run" | "product">, today: Day): string =>
  `${product.name} of ${dayShown(run.date, today)}`;

/** What the vessel must hold: `6.08 kg`. */
export const massOf = ({ run, product }: RunOutlook): string =>
  massShown(exactFor(bulkOf(product), run.units), "nearest");

export const unitsShown = (units: bigint): string =>
  `${countShown(units)}${NO_BREAK}${units === 1n ? "unit" : "units"}`;

/** How a run stands by now, where a form was drawn from how it stood before. */
export const isNow = ({ date, units }: Pick<Run, "date" | "units">): string =>
  `it is on ${dayShown(date, date, { year: true })} now, with ${unitsShown(units)}`;

/** Each thing that a run is short of: `84 g of Oat protein`. */
export const shortages = ({ short }: RunOutlook): readonly string[] =>
  short.map(({ material, by }) => `${stockShown(by, material.measure, "lacking")} of ${material.name}`);

const MOST_NAMED = 2;

/** What it is short of by name, or how many materials where they are many. */
export const shortOfWords = ({ short }: RunOutlook): string =>
  short.length > MOST_NAMED
    ? counted(short.length, "material", "materials")
    : inARow(short.map(({ material }) => material.name));
