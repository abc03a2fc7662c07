/** Why something was not done with a trial, and what to do instead. @rule TRIAL-6, TRIAL-7 */
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";

const SAID = {
  "load again": PAGE_OUT_OF_DATE,
  "no workshop": "No workshop is open any more. Open one on the first page.",
  "no such trial": "This trial is not there any more; it was removed meanwhile.",
  stale: "This trial was changed meanwhile, in another tab or window. Load the page again to see what stands now.",
  "stands on the ledger":
    "What was weighed for it was taken off the shelf, and that stands. Take that back first: the page of the trials leads to it.",
  "kept otherwise":
    "This form was sent before, and the trial stands as it was then. Load the trials and correct it there.",
} as const;

export const trialSaid = (why: keyof typeof SAID): string => SAID[why];
