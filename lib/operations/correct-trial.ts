import type { Books } from "@/lib/domain/desk";
import type { Trial } from "@/lib/domain/formula-book/trials";
import { isTypedAs, isWeighedAs, type TypedTrial } from "@/lib/domain/formula-book/typed-trial";
import type { Ledger } from "@/lib/store/post-to-books";
import { answeredBefore, takenOff } from "./keep-trial";
import { type Asked, besideTheLedger, onTheLedger } from "./on-the-ledger";

/** A posting that took a trial off the shelf and was not taken back. */
export interface StandsOnLedger {
  readonly kind: "stands on the ledger";
  readonly posting: string;
}

const NO_SUCH_TRIAL = { kind: "no such trial" } as const;
const STALE = { kind: "stale" } as const;

interface SeenTrial {
  /** Whether the trial is as the form was drawn from it. */
  readonly isAsSeen: (trial: Trial) => boolean;
}

export interface TrialToCorrect extends Asked, SeenTrial {
  readonly trial: TypedTrial;
  /** Whether what was weighed is taken off the shelf now. */
  readonly takes: boolean;
  /** What the history says of it. */
  readonly reason: string;
}

const trialIn = ({ desk }: Books, trial: string): Trial | undefined => desk.trials.find(({ id }) => id === trial);

const holding = (books: Books, trial: Trial): Books => ({
  ...books,
  desk: { ...books.desk, trials: books.desk.trials.map((one) => (one.id === trial.id ? trial : one)) },
});

/** What of a trial stands on the ledger: not what was taken back, and not what the ledger does not know. */
async function standingPosting({ postingNamed, reversalOf }: Ledger, { posting }: Trial): Promise<string | null> {
  const stands = posting !== null && (await postingNamed(posting)) !== null && (await reversalOf(posting)) === null;
  return stands ? posting : null;
}

/**
 * Puts right what was typed of a trial, and takes it off the shelf where that is asked. Sent twice it is done once.
 * @rule TRIAL-6
 */
export async function correctTrial(asked: TrialToCorrect) {
  const told = await onTheLedger(
    asked,
    async (ledger, today) => {
      const found = trialIn(ledger.books, asked.trial.id);
      if (found === undefined) return NO_SUCH_TRIAL;
      const posting = await standingPosting(ledger, found);
      if (isTypedAs(found, asked.trial) && (posting !== null || !asked.takes)) return { kind: "already kept" as const };
      if (!asked.isAsSeen(found)) return STALE;
      if (posting !== null && !isWeighedAs(found, asked.trial))
        return { kind: "stands on the ledger", posting } satisfies StandsOnLedger;
      const corrected = { ...found, ...asked.trial };
      if (posting !== null || !asked.takes)
        return { kind: "corrected" as const, keeps: holding(ledger.books, corrected) };
      const decided = await takenOff(ledger, today, asked);
      if (decided.kind !== "posted") return decided;
      return { ...decided, books: holding(ledger.books, { ...corrected, posting: asked.key }) };
    },
    "any row",
  );
  return told.kind === "already posted" ? answeredBefore(asked.trial) : told;
}

/** Removes a trial with what was read of it; one that is gone already is told as such. @rule TRIAL-7 */
export const removeTrial = ({
  trial,
  realToday,
  isAsSeen,
}: SeenTrial & Pick<Asked, "realToday"> & { readonly trial: string }) =>
  besideTheLedger(realToday, async (ledger) => {
    const found = trialIn(ledger.books, trial);
    if (found === undefined) return NO_SUCH_TRIAL;
    const posting = await standingPosting(ledger, found);
    if (posting !== null) return { kind: "stands on the ledger", posting } satisfies StandsOnLedger;
    if (!isAsSeen(found)) return STALE;
    const { books } = ledger;
    const trials = books.desk.trials.filter(({ id }) => id !== trial);
    return { kind: "removed" as const, keeps: { ...books, desk: { ...books.desk, trials } } };
  });
