/** Which week the page shows, and what falls into it. */
import { type Day, daysAfter, dayOf, FIRST_YEAR, isoDate, LAST_YEAR, later, mondayOf } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { MaterialOutlook, RunOutlook } from "@/lib/domain/plan-figures";
import { quantity, type Stock, sum } from "@/lib/domain/quantity";
import type { Material } from "@/lib/domain/workshop";

/** The Monday of the week that an address asks for by a date (2026-10-05) or a week (2026-W41), or of today's. @rule DAY-4 */
export function mondayAsked(of: string | readonly string[] | undefined, today: Day): Day {
  const text = typeof of === "string" ? of : "";
  const day = dayOf(text) ?? mondayOfWeekNamed(text);
  return mondayOf(day ?? today);
}

/** The Monday of an ISO 8601 week; the week with the number 1 holds 4 January. */
function mondayOfWeekNamed(text: string): Day | null {
  const parts = /^(\d{4})-W(\d{2})$/.exec(text);
  const fourthOfJanuary = parts && dayOf(`${parts[1] ?? ""}-01-04`);
  if (!parts || fourthOfJanuary === null) return null;
  const monday = daysAfter(mondayOf(fourthOfJanuary), (Number(parts[2]) - 1) * 7);
  const thursday = isoDate(daysAfter(monday, 3));
  return thursday.startsWith(parts[1] ?? "") ? monday : null;
}

/** The address of a week, or null where it lies outside the years that dates may have. */
export function weekAddress(monday: Day): `/week?${string}` | null {
  const isWithin = monday >= firstMonday && monday <= lastMonday;
  return isWithin ? `/week?of=${isoDate(monday)}` : null;
}

const dayNumbered = (date: string): Day => dayOf(date) ?? (0 as Day);
const firstMonday = daysAfter(mondayOf(dayNumbered(`${String(FIRST_YEAR)}-01-07`)), 0);
const lastMonday = daysAfter(mondayOf(dayNumbered(`${String(LAST_YEAR)}-12-31`)), -7);

/** Runs in the order in which they draw. @rule PLAN-4 */
const inTurn = (outlooks: readonly RunOutlook[]): readonly RunOutlook[] =>
  [...outlooks].sort(({ run: a }, { run: b }) => a.date - b.date || a.sequence - b.sequence || byCodePoint(a.id, b.id));

export interface RunsOfWeek {
  readonly runs: readonly RunOutlook[];
  /** For today's week: those of earlier weeks, which are not closed and draw today. */
  readonly earlier: readonly RunOutlook[];
  /** The first run to come after the week, if there is one. */
  readonly next: RunOutlook | undefined;
}

export function runsOfWeek(outlooks: readonly RunOutlook[], monday: Day, today: Day): RunsOfWeek {
  const sunday = daysAfter(monday, 6);
  const isThisWeek = monday === mondayOf(today);
  return {
    runs: inTurn(outlooks.filter(({ run }) => run.date >= monday && run.date <= sunday)),
    earlier: isThisWeek ? inTurn(outlooks.filter(({ run }) => run.date < monday)) : [],
    next: inTurn(outlooks.filter(({ run }) => run.date > later(sunday, today)))[0],
  };
}

/** What one material gives to the week, day by day. */
export interface WeekDraw {
  readonly outlook: MaterialOutlook;
  readonly days: readonly { readonly need: Stock; readonly short: Stock }[];
  readonly need: Stock;
  readonly short: Stock;
}

const NONE = quantity<Stock>(0n);

/** What the week's runs need of each material, those that are short of something first, then by order day. */
export function weekDraws(
  runs: readonly RunOutlook[],
  materials: readonly MaterialOutlook[],
  days: readonly Day[],
): readonly WeekDraw[] {
  const cells = new Map<Material, { need: Stock; short: Stock }[]>();
  for (const { run, draws, short } of runs) {
    for (const { material, need } of draws) {
      const row = cells.get(material) ?? days.map(() => ({ need: NONE, short: NONE }));
      cells.set(material, row);
      const cell = row[days.indexOf(run.date)];
      const lacking = short.find((each) => each.material === material)?.by ?? NONE;
      if (cell) Object.assign(cell, { need: sum(cell.need, need), short: sum(cell.short, lacking) });
    }
  }
  const together = (row: readonly { need: Stock; short: Stock }[], of: "need" | "short"): Stock =>
    row.reduce((all, cell) => sum(all, cell[of]), NONE);
  return materials
    .flatMap((outlook) => {
      const row = cells.get(outlook.material);
      return row ? [{ outlook, days: row, need: together(row, "need"), short: together(row, "short") }] : [];
    })
    .sort(
      (a, b) =>
        Number(b.short > 0n) - Number(a.short > 0n) ||
        (a.outlook.orderBy ?? Infinity) - (b.outlook.orderBy ?? Infinity) ||
        a.outlook.material.name.localeCompare(b.outlook.material.name),
    );
}

/** Nothing to do about it: the week draws on it, no run lacks it, nothing is to be ordered or lost. */
export const isCovered = ({ outlook, short }: WeekDraw): boolean =>
  short === 0n && outlook.belowSafetyOn === null && outlook.expiring.length === 0;
