/** The batches of a file against the rest of its past. @rule BENCH-5, BENCH-7, FILE-5 */
import type { Batch } from "@/lib/domain/bench/batch";
import type { ClosedRun } from "@/lib/domain/desk";
import type { Posted } from "@/lib/domain/ledger/posting";
import type { FaultList } from "@/lib/edge/fault-list";
import { quoted } from "@/lib/edge/shown-value";

/** The batches against the rest of the past: what was weighed is posted, and what was closed is closed. @rule BENCH-5, BENCH-7 */
export function checkBatches(
  batches: readonly Batch[],
  past: { readonly closedRuns: readonly ClosedRun[]; readonly postings: readonly Posted[] },
  planned: ReadonlySet<string>,
  faults: FaultList,
): void {
  const posted = new Set(past.postings.map(({ id: key }) => key));
  checkNotes(batches, faults);
  const closed = new Set(past.closedRuns.map(({ run }) => run.id));
  batches.forEach(({ run, notes }, at) => {
    const path = `batches[${String(at)}]`;
    const isClosed = notes.some(({ kind }) => kind === "closed");
    if (isClosed !== closed.has(run.id) || (!isClosed && !planned.has(run.id)))
      faults.tell(`${path}.id`, "an open batch is of a planned run, a closed one of a run that is closed");
    notes.forEach((each, index) => {
      const moves = each.kind === "added" || (each.kind === "weighed" && each.lot !== null) || each.kind === "closed";
      if (moves && !posted.has(each.key))
        faults.tell(`${path}.notes[${String(index)}].key`, `nothing is posted under ${quoted(each.key)}`);
    });
  });
}

/** Each note stands once, names a line of its sheet, and strikes one before it. */
function checkNotes(batches: readonly Batch[], faults: FaultList): void {
  const keys = new Set<string>();
  batches.forEach(({ lines, notes }, at) => {
    notes.forEach((each, index) => {
      const path = `batches[${String(at)}].notes[${String(index)}]`;
      if (keys.has(each.key)) faults.tell(`${path}.key`, `another note has the key ${quoted(each.key)} already`);
      keys.add(each.key);
      if (each.kind === "weighed" && !lines.some(({ key }) => key === each.line))
        faults.tell(`${path}.line`, `the sheet has no line ${quoted(each.line)}`);
      if (each.kind === "struck" && !notes.slice(0, index).some(({ key }) => key === each.strikes))
        faults.tell(`${path}.strikes`, `no note before it has the key ${quoted(each.strikes)}`);
    });
  });
}
