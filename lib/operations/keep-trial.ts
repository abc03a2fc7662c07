import type { Books } from "@/lib/domain/desk";
import { drawsForTrial, type Trial, type TrialReading } from "@/lib/domain/formula-book/trials";
import { materialLot } from "@/lib/domain/ledger/posting";
import { writeOff } from "@/lib/domain/ledger/stock-moves";
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

const isKept = ({ desk }: Books, { trial }: Pick<TrialToKeep, "trial">): boolean =>
  desk.trials.some(({ id }) => id === trial.id);
const hasFormula = ({ workshop }: Books, { trial }: Pick<TrialToKeep, "trial">): boolean =>
  workshop.formulas.some(({ id }) => id === trial.formula);

/** Keeps a trial and takes what was weighed for it off the shelf, in one posting. @rule TRIAL-2 */
export const keepTrialFromShelf = (asked: TrialToKeep) =>
  onTheLedger(asked, async ({ books, standingOf, records }, today) => {
    if (isKept(books, asked)) return { kind: "already kept" as const };
    if (!hasFormula(books, asked)) return { kind: "no such formula" as const };
    const { draws, short } = drawsForTrial(books.workshop, asked.trial.lines, asked.day);
    if (short.length > 0) return { kind: "short" as const, short };
    const lines = draws.map(({ lot, quantity }) => ({ lot: materialLot(lot.id), quantity }));
    const standing = await standingOf(lines.map(({ lot }) => lot));
    const decided = writeOff({ ...asked, today, lines, as: "lost", from: "stock" }, standing, records);
    if (decided.kind !== "posted") return decided;
    return { ...decided, books: holding(books, { ...asked.trial, posting: asked.key }) };
  });

/** Keeps a trial of which nothing is to be taken off the shelf. A second time it changes nothing. @rule TRIAL-2 */
export const keepTrialAlone = (asked: Pick<TrialToKeep, "trial">) =>
  onTheBooks((books) => {
    if (isKept(books, asked)) return { kind: "already kept" as const };
    if (!hasFormula(books, asked)) return { kind: "no such formula" as const };
    return { kind: "kept" as const, books: holding(books, { ...asked.trial, posting: null }) };
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
