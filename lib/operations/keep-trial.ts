import type { Books } from "@/lib/domain/desk";
import { drawsForTrial, type Trial, type TrialReading } from "@/lib/domain/formula-book/trials";
import { isTypedAs, type TypedTrial } from "@/lib/domain/formula-book/typed-trial";
import { materialLot } from "@/lib/domain/ledger/posting";
import { writeOff } from "@/lib/domain/ledger/stock-moves";
import type { Day } from "@/lib/domain/calendar";
import type { NoWorkshop } from "@/lib/store/change-books";
import type { Ledger } from "@/lib/store/post-to-books";
import { onTheBooks } from "./on-the-books";
import { type Asked, onTheLedger } from "./on-the-ledger";

export interface TrialToKeep extends Asked {
  readonly trial: Omit<Trial, "posting">;
  /** What the history says of it. */
  readonly reason: string;
}

const holding = (books: Books, trial: Trial): Books => ({
  ...books,
  desk: { ...books.desk, trials: [...books.desk.trials, trial] },
});

/**
 * What stands of a trial whose form was sent before. What was typed into that form since, as after going back to it, is
 * not kept by it: it is put right in the trial itself.
 */
export type SentBefore = { readonly kind: "already kept" } | { readonly kind: "kept otherwise" };

/** @returns null where there is no such trial @rule TRIAL-6 */
function sentBefore({ desk }: Books, typed: TypedTrial): SentBefore | null {
  const found = desk.trials.find(({ id }) => id === typed.id);
  return found === undefined ? null : { kind: isTypedAs(found, typed) ? "already kept" : "kept otherwise" };
}

/** The answer to a form whose key was posted before: whether what it says now is what stands. */
export const answeredBefore = (typed: TypedTrial): Promise<SentBefore | NoSuchTrial | NoWorkshop> =>
  onTheBooks((books) => sentBefore(books, typed) ?? ({ kind: "no such trial" } as const));

export interface NoSuchTrial {
  readonly kind: "no such trial";
}

const hasFormula = ({ workshop }: Books, { formula }: TypedTrial): boolean =>
  workshop.formulas.some(({ id }) => id === formula);

/** Decides on taking what was weighed off the shelf, whole or not at all. @rule TRIAL-2 */
export async function takenOff(
  { books, standingOf, records }: Ledger,
  today: Day,
  asked: Asked & { readonly trial: TypedTrial; readonly reason: string },
) {
  const { draws, short } = drawsForTrial(books.workshop, asked.trial.lines, asked.day);
  if (short.length > 0) return { kind: "short" as const, short };
  const lines = draws.map(({ lot, quantity }) => ({ lot: materialLot(lot.id), quantity }));
  const standing = await standingOf(lines.map(({ lot }) => lot));
  return writeOff({ ...asked, today, lines, as: "lost", from: "stock" }, standing, records);
}

/** Keeps a trial and takes what was weighed for it off the shelf, in one posting. @rule TRIAL-2 */
export async function keepTrialFromShelf(asked: TrialToKeep) {
  const told = await onTheLedger(asked, async (ledger, today) => {
    const { books } = ledger;
    const before = sentBefore(books, asked.trial);
    if (before !== null) return before;
    if (!hasFormula(books, asked.trial)) return { kind: "no such formula" as const };
    const decided = await takenOff(ledger, today, asked);
    if (decided.kind !== "posted") return decided;
    return { ...decided, books: holding(books, { ...asked.trial, posting: asked.key }) };
  });
  return told.kind === "already posted" ? answeredBefore(asked.trial) : told;
}

/** Keeps a trial of which nothing is to be taken off the shelf. A second time it changes nothing. @rule TRIAL-2 */
export const keepTrialAlone = ({ trial }: Pick<TrialToKeep, "trial">) =>
  onTheBooks((books) => {
    const before = sentBefore(books, trial);
    if (before !== null) return before;
    if (!hasFormula(books, trial)) return { kind: "no such formula" as const };
    return { kind: "kept" as const, books: holding(books, { ...trial, posting: null }) };
  });

/**
 * Adds what was read of a trial. The same reading sent twice is there once.
 * @rule TRIAL-3
 */
export const addReading = (trial: string, reading: TrialReading) =>
  onTheBooks((books) => {
    const found = books.desk.trials.find(({ id }) => id === trial);
    if (found === undefined) return { kind: "no such trial" as const };
    const last = found.readings.at(-1);
    if (last !== undefined && JSON.stringify(last) === JSON.stringify(reading))
      return { kind: "already kept" as const };
    const trials = books.desk.trials.map((one) =>
      one.id === trial ? { ...one, readings: [...one.readings, reading] } : one,
    );
    return { kind: "kept" as const, books: { ...books, desk: { ...books.desk, trials } } };
  });
