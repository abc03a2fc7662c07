import type { Batch, Instant } from "@/lib/domain/bench/batch";
import { checksOfDay } from "@/lib/domain/bench/checks-of-day";
import { sheetFor } from "@/lib/domain/bench/sheet";
import { asStarted } from "@/lib/domain/bench/started-as";
import type { Day } from "@/lib/domain/calendar";
import { versionsUsed } from "@/lib/domain/formula-book/versions";
import { byId } from "@/lib/domain/index-by-id";
import type { Ledger } from "@/lib/store/post-to-books";
import { isCodeFree, nextFreeCode } from "./free-code";
import { besideTheLedger } from "./on-the-ledger";
import { plannedAsSeen, type RunAsSeen } from "./planned-run";

export interface StartBatch {
  readonly run: RunAsSeen;
  /** As typed; null for the next of the maker's scheme. */
  readonly code: string | null;
  readonly at: Instant;
  readonly who: string;
  /** Why it may start although a check warns. */
  readonly despite: string | null;
  readonly realToday: Day;
}

/** Starts a planned run as a batch: nothing leaves the shelf yet. A second time it changes nothing. @rule BENCH-1, BENCH-2 */
export const startBatch = (asked: StartBatch) =>
  besideTheLedger(asked.realToday, (ledger, today) => Promise.resolve(decideStart(ledger, asked, today)));

function decideStart(ledger: Pick<Ledger, "books" | "records">, asked: StartBatch, today: Day) {
  const { books } = ledger;
  const found = plannedAsSeen(books, asked.run);
  if (found.kind !== "planned") return found;
  const { run } = found;
  const { workshop, desk } = books;
  const { errors, warnings } = checksOfDay(books, run, today);
  if (errors.length > 0) return { kind: "formula has errors" as const, findings: errors };
  if (warnings.length > 0 && asked.despite === null) return { kind: "warnings to answer" as const, findings: warnings };
  const code = asked.code ?? nextFreeCode(ledger, today, null);
  if (code === null) return { kind: "no code" as const };
  if (!isCodeFree(ledger, code)) return { kind: "code taken" as const, code, next: nextFreeCode(ledger, today, code) };
  const product = byId("product", workshop.products)(run.product);
  const batch: Batch = {
    run,
    code,
    startedOn: today,
    startedAt: asked.at,
    startedBy: asked.who,
    despite: warnings.length > 0 ? asked.despite : null,
    as: asStarted(workshop, run),
    versions: versionsUsed(books, product.formula).map((used) => ({
      ...used,
      called: byId("formula", workshop.formulas)(used.formula).name,
    })),
    lines: sheetFor(workshop, run, today),
    notes: [],
    labels: [],
  };
  return { kind: "started" as const, batch, keeps: { workshop, desk: { ...desk, batches: [...desk.batches, batch] } } };
}
