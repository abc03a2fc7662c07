import { codesOf } from "@/lib/domain/bench/batch";
import type { Books, ClosedRun } from "@/lib/domain/desk";
import { compositions } from "@/lib/domain/formula";
import type { Fraction } from "@/lib/domain/fraction";
import { errorsOf } from "@/lib/domain/formula-book/accepted-warnings";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { potsOfRun, versionsOfRun } from "@/lib/domain/formula-book/versions-of-run";
import { byId } from "@/lib/domain/index-by-id";
import { type Draw, makeRun, type RunMade } from "@/lib/domain/ledger/make-run";
import { plannedLosses, plannedMinutes, timeCost } from "@/lib/domain/ledger/planned-loss";
import { materialLot } from "@/lib/domain/ledger/posting";
import { aheadBook } from "@/lib/domain/made-ahead";
import { drawsFor } from "@/lib/domain/made-run";
import { usesOf } from "@/lib/domain/needs";
import { lotOfNothing, materialOfUnit, type RunOutput, withOutput } from "@/lib/domain/run-output";
import type { FinishedLot, Run } from "@/lib/domain/workshop";
import type { Ledger } from "@/lib/store/post-to-books";
import { type Asked, onTheLedger } from "./on-the-ledger";
import { plannedAsSeen, type RunAsSeen } from "./planned-run";

export interface MakeRun extends Asked, Pick<RunMade, "note" | "unitsMade" | "outOfDate"> {
  /** The run as it was shown: what is planned for it follows from that. */
  readonly run: RunAsSeen;
  readonly finishedLot: Pick<FinishedLot, "id" | "bestBefore">;
  /** As the maker confirmed them; null to draw the need first expired first, as far as it is there. */
  readonly draws: readonly Draw[] | null;
  /** What it took at the bench; null for what is planned. */
  readonly minutes: Fraction | null;
}

/**
 * Makes a planned run: draws, finishes and closes it. A second time it changes nothing.
 * @rule LEDGER-11, LEDGER-12, CLOSE-1, VERSION-2, VERSION-5
 */
export const makePlannedRun = (asked: MakeRun) =>
  onTheLedger(asked, (ledger, today) => decideRun(ledger, asked, today));

export async function decideRun(ledger: Ledger, asked: MakeRun, today: RunMade["today"]) {
  const { books } = ledger;
  const found = plannedAsSeen(books, asked.run);
  if (found.kind !== "planned") return found;
  const { run } = found;
  const findings = errorsOf(checksOfRun(books, run, today));
  if (findings.length > 0) return { kind: "formula has errors" as const, findings };
  if (books.desk.batches.some((batch) => codesOf(batch).includes(asked.finishedLot.id)))
    return { kind: "finished lot exists" as const, lot: asked.finishedLot.id };
  const draws = asked.draws ?? proposed(books, run, asked.day);
  const standing = await ledger.standingOf(draws.map(({ lot }) => materialLot(lot)));
  const decided = makeRun(runMade(books, run, asked, draws, today), standing, lossesOf(books, run), ledger.records);
  if (decided.kind !== "posted") return decided;
  const output: RunOutput = {
    product: byId("product", books.workshop.products)(run.product),
    lot: asked.finishedLot,
    made: asked.day,
    units: asked.unitsMade,
    value: decided.finished.materials,
  };
  const drawing = { run, draws };
  const makers = await ledger.runsOfLots(potsOfRun(books, drawing).lots.map(materialLot));
  const versions = versionsOfRun(books, drawing, makers);
  const closed: ClosedRun = { run, madeOn: asked.day, unitsMade: asked.unitsMade, versions };
  const after = withClosed(books, closed, output);
  return asked.unitsMade > 0n
    ? { ...decided, books: after }
    : { ...decided, books: after, failed: lotOfNothing(output) };
}

/** What the checks find of a run's formula as it stands. @rule VERSION-5 */
function checksOfRun({ workshop }: Books, run: Run, today: Asked["day"]) {
  const { formula } = byId("product", workshop.products)(run.product);
  const checked = { ...workshop, today, step: workshop.settings.balanceStep.quantity, batch: null };
  return checksOf(byId("formula", workshop.formulas)(formula), checked);
}

const proposed = (books: Books, run: Run, day: Asked["day"]): readonly Draw[] =>
  drawsFor(books.workshop, run, day).map(({ lot, quantity }) => ({ lot: lot.id, quantity, spilt: 0n }));

/** What the ledger is asked to make of a run. */
export function runMade(
  { workshop }: Books,
  run: Run,
  { key, day, note, unitsMade, finishedLot, outOfDate, minutes }: Omit<MakeRun, "run" | "draws" | "realToday">,
  draws: readonly Draw[],
  today: RunMade["today"],
): RunMade {
  const product = byId("product", workshop.products)(run.product);
  return {
    key,
    day,
    today,
    note,
    unitsMade,
    outOfDate,
    draws,
    run: run.id,
    unitsPlanned: run.units,
    finishedLot: finishedLot.id,
    ofMaterial: materialOfUnit(product),
    before: [],
    onHold: false,
    ...timeCost(minutes ?? plannedMinutes(product, run.units), workshop.settings),
  };
}

/** What the plan loses of each material of a run. @rule LEDGER-11 */
export function lossesOf({ workshop }: Books, run: Run) {
  const product = byId("product", workshop.products)(run.product);
  // What is lost of a draw is a share of it, whether it was drawn instead of a premix or to make it.
  const opened = aheadBook(workshop)?.openedOf(product);
  if (opened) return plannedLosses(product, opened.atMost.uses, opened.atMost.composition, run.units);
  const composition = compositions(workshop.formulas)(product.formula);
  const uses = usesOf(product, composition, byId("material", workshop.materials));
  return plannedLosses(product, uses, composition, run.units);
}

/** @rule CLOSE-1, CLOSE-4, AHEAD-7 */
export const withClosed = ({ workshop, desk }: Books, closed: ClosedRun, output: RunOutput): Books => ({
  workshop: withOutput({ ...workshop, runs: workshop.runs.filter(({ id }) => id !== closed.run.id) }, output),
  desk: { ...desk, closedRuns: [...desk.closedRuns, closed] },
});
