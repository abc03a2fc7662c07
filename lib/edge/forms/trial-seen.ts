/** What a form remembers of the trial that it was drawn from, to notice that it has changed since. @rule TRIAL-6 */
import type { Trial } from "@/lib/domain/formula-book/trials";
import { trialWritten } from "@/lib/edge/workshop/formula-history-writing";
import { fingerprint } from "./fingerprint";

/** All of it: who removes it should have seen what was read of it. */
export const trialSeen = (trial: Trial): string => fingerprint(trialWritten(trial));

/** What was typed and posted: a reading that came meanwhile is nothing to a correction. */
export const typedSeen = (trial: Trial): string => trialSeen({ ...trial, readings: [] });
