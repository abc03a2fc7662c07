/** How often a material is counted, as it is typed and as forms carry it. @rule LEDGER-25 */
import type { Rhythm } from "@/lib/domain/ledger/counts-due";
import type { Outcome } from "@/lib/edge/fields";
import { readTypedWholeNumber } from "./typed-amount";
import { withoutEnds } from "./typed-number";

export const RHYTHM_FIELDS = ["days", "draws"] as const;
export type RhythmField = (typeof RHYTHM_FIELDS)[number];

/** Ten years of days; and as many runs. */
const MOST = 3_660;

/** Both left empty is by neither. */
export function readRhythmTyped(
  typed: Readonly<Record<RhythmField, string>>,
): { readonly rhythm: Rhythm } | { readonly faults: Partial<Record<RhythmField, string>> } {
  const [days, draws] = [readNumber(typed.days), readNumber(typed.draws)];
  if ("fault" in days || "fault" in draws)
    return {
      faults: {
        ...("fault" in days && { days: days.fault }),
        ...("fault" in draws && { draws: draws.fault }),
      },
    };
  const rhythm = { days: days.value, draws: draws.value };
  return { rhythm: rhythm.days === null && rhythm.draws === null ? null : rhythm };
}

function readNumber(typed: string): Outcome<number | null> {
  if (withoutEnds(typed) === "") return { value: null };
  const read = readTypedWholeNumber(typed);
  if ("fault" in read) return read;
  if (read.value >= 1 && read.value <= MOST) return read;
  return { fault: `must be from 1 to ${String(MOST)}; leave it empty where it does not count` };
}

/** `30 -`, `- 4`, `30 4`; nothing where it is by neither. */
export const rhythmCarried = (rhythm: Rhythm): string =>
  rhythm === null ? "" : `${String(rhythm.days ?? "-")} ${String(rhythm.draws ?? "-")}`;

/** @returns undefined where the text carries none */
export function carriedRhythm(text: string): Rhythm | undefined {
  if (text === "") return null;
  const [found, days, draws] = /^(\d{1,4}|-) (\d{1,4}|-)$/.exec(text) ?? [];
  if (found === undefined) return undefined;
  const number = (part: string | undefined): number | null => (part === "-" ? null : Number(part));
  return { days: number(days), draws: number(draws) };
}
