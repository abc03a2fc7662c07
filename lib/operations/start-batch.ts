import type { Batch, Instant } from "@/lib/domain/bench/batch";
import { nextCode } from "@/lib/domain/bench/batch-code";
import { checksOfDay, codesUsed } from "@/lib/domain/bench/checks-of-day";
import { sheetFor } from "@/lib/domain/bench/sheet";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { versionsUsed } from "@/lib/domain/formula-book/versions";
import { byId } from "@/lib/domain/index-by-id";
import { onTheBooks } from "./on-the-books";
import { todayIn } from "./on-the-ledger";
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
export const startBatch = (asked: StartBatch) => onTheBooks((books) => decideStart(books, asked));

export function decideStart(books: Books, asked: StartBatch) {
  const found = plannedAsSeen(books, asked.run);
  if (found.kind !== "planned") return found;
  const { run } = found;
  const { workshop, desk } = books;
  const today = todayIn(books, asked.realToday);
  const { errors, warnings } = checksOfDay(books, run, today);
  if (errors.length > 0) return { kind: "formula has errors" as const, findings: errors };
  if (warnings.length > 0 && asked.despite === null) return { kind: "warnings to answer" as const, findings: warnings };
  const code = asked.code ?? (desk.batchCodeScheme && nextCode(desk.batchCodeScheme, today, codesUsed(books)));
  if (code === null) return { kind: "no code" as const };
  if (codesUsed(books).includes(code)) return { kind: "code taken" as const, code };
  const product = byId("product", workshop.products)(run.product);
  const batch: Batch = {
    run,
    code,
    startedOn: today,
    startedAt: asked.at,
    startedBy: asked.who,
    despite: warnings.length > 0 ? asked.despite : null,
    versions: versionsUsed(books, product.formula),
    lines: sheetFor(workshop, run, today),
    notes: [],
  };
  return { kind: "started" as const, batch, books: { workshop, desk: { ...desk, batches: [...desk.batches, batch] } } };
}
