/** A run brought forward, so that a lot is used before it goes out of date; planned through before it is offered. */
import { inBatchesOf } from "./bench/in-batches";
import type { Batch } from "./bench/batch";
import { type Day, daysAfter } from "./calendar";
import { plan, preparedFor } from "./plan";
import type { Expiry, MaterialOutlook, Plan, RunOutlook } from "./plan-figures";
import { quantity, type Stock } from "./quantity";
import { type Planned, roomFor } from "./suggested-days";
import { runsOn } from "./turns-of-day";
import type { Workshop } from "./workshop";

export interface BroughtForward {
  /** The lot that it saves of. */
  readonly lot: string;
  readonly outlook: RunOutlook;
  readonly day: Day;
  /** How much less of the lot is lost, µg or pieces. */
  readonly saved: Stock;
  /** What would be lost of it all the same. */
  readonly stillLost: Stock;
}

/** Each day is a whole plan. */
const MOST_DAYS_TRIED = 3;

/**
 * The first run after a lot's last day of use that could be made by then, and how much of the lot that saves.
 * @param losing  a material of which a lot will go out of date
 * @param batches  those of the desk, since what is at the bench is not moved
 * @returns null where no day was found
 * @rule SUGGEST-5
 */
export function broughtForward(
  { material }: MaterialOutlook,
  { lot, on }: Expiry,
  planned: Planned,
  batches: readonly Batch[],
): BroughtForward | null {
  const { plan: before, prepared, workshop } = planned;
  const lastUse = daysAfter(on, -1);
  const inBatches = inBatchesOf(batches);
  const turn = prepared.runs.find(({ run, day, asks }) => {
    if (day <= lastUse || inBatches.has(run.id)) return false;
    return asks.some(({ use }) => use.material.id === material.id);
  });
  const outlook = turn && before.runs.find(({ run }) => run === turn.run);
  if (turn === undefined || outlook === undefined) return null;
  for (const day of daysUpTo(lastUse, before.today, roomFor(turn, planned, before.today))) {
    const changed = withRunOn(workshop, outlook, day);
    const after = plan(changed, before.today, preparedFor(changed, before.today, inBatches, prepared), planned);
    const stillLost = lostOf(after, material.id, lot);
    const saved = lostOf(before, material.id, lot) - stillLost;
    if (saved > 0n && isMade(after, outlook) && isNoWorse(before, after))
      return { lot, outlook, day, saved: quantity<Stock>(saved), stillLost: quantity<Stock>(stillLost) };
  }
  return null;
}

function daysUpTo(last: Day, first: Day, hasRoom: (day: Day) => boolean): readonly Day[] {
  const days: Day[] = [];
  for (let day = last; day >= first && days.length < MOST_DAYS_TRIED; day = daysAfter(day, -1))
    if (hasRoom(day)) days.push(day);
  return days;
}

function withRunOn(workshop: Workshop, { run }: RunOutlook, day: Day): Workshop {
  const last = runsOn(workshop.runs, day).at(-1);
  const moved = { ...run, date: day, sequence: last === undefined ? 0 : last.sequence + 1 };
  return { ...workshop, runs: workshop.runs.map((each) => (each === run ? moved : each)) };
}

const lostOf = ({ materials }: Plan, material: string, lot: string | null): bigint =>
  (materials.find((each) => each.material.id === material)?.expiring ?? [])
    .filter((each) => lot === null || each.lot === lot)
    .reduce((sum, each) => sum + each.quantity, 0n);

const isMade = ({ runs }: Plan, { run: { id } }: RunOutlook): boolean =>
  runs.some(({ run, makeable }) => run.id === id && makeable);

function isNoWorse(before: Plan, after: Plan): boolean {
  const makeable = new Map(after.runs.map(({ run, makeable: can }) => [run.id, can]));
  return (
    before.runs.every(({ run, makeable: could }) => !could || makeable.get(run.id) === true) &&
    before.materials.every(({ material: { id } }) => lostOf(after, id, null) <= lostOf(before, id, null))
  );
}
