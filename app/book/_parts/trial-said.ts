/** Why something was not done with a trial, and what to do instead. @rule TRIAL-6, TRIAL-7 */
const SAID = {
  "load again": "The form did not say what it is about. Load the page again.",
  "no workshop": "No workshop is open any more. Open one on the first page.",
  "no such trial": "This trial is not there any more; it was removed meanwhile.",
  stale: "This trial was changed meanwhile, in another tab or window. Load the page again to see what stands now.",
  "stands on the ledger":
    "What was weighed for it was taken off the shelf, and that posting stands. Reverse the posting first: the page of the trials leads to it.",
  "kept otherwise":
    "This form was sent before, and the trial stands as it was then. Load the trials and correct it there.",
} as const;

export const trialSaid = (why: keyof typeof SAID): string => SAID[why];
