/** When a material is to be counted again. @rule LEDGER-25 */
import { type Day, daysAfter } from "@/lib/domain/calendar";

/** How often the maker counts a material: after so many days, after so many draws, or whichever comes first. */
export interface CountRhythm {
  readonly material: string;
  readonly days: number | null;
  readonly draws: number | null;
}

/** After how many days and draws a material is counted; null where it is by neither. */
export type Rhythm = Pick<CountRhythm, "days" | "draws"> | null;

/** What is kept of a material's counting. */
export function rhythmOf(rhythms: readonly CountRhythm[], material: string): Rhythm {
  const kept = rhythms.find((each) => each.material === material);
  return kept === undefined ? null : { days: kept.days, draws: kept.draws };
}

/** What the ledger says of a material since it was last counted. */
export interface SinceCounted {
  /** Of the latest count of one of its lots that was not taken back; null where there was none. */
  readonly countedOn: Day | null;
  /** The day from which it is reckoned: of that count, else on which the books began with it; null where they never did. */
  readonly since: Day | null;
  /** Runs that drew of it after that, those taken back left out. */
  readonly draws: number;
}

export interface CountDue extends SinceCounted {
  readonly rhythm: CountRhythm;
  /** The day on which it falls due by days; null where the maker counts by draws alone, or nothing was ever there. */
  readonly dueOn: Day | null;
  readonly isDue: boolean;
}

/**
 * Whether a material is due for a count on a day, and why.
 * @rule LEDGER-25
 */
export function countDue(rhythm: CountRhythm, { countedOn, since, draws }: SinceCounted, today: Day): CountDue {
  const dueOn = since === null || rhythm.days === null ? null : daysAfter(since, rhythm.days);
  const byDraws = rhythm.draws !== null && draws >= rhythm.draws;
  return { rhythm, countedOn, since, draws, dueOn, isDue: byDraws || (dueOn !== null && dueOn <= today) };
}
