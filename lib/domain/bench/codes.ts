/** What the codes of batches name, and what may not be named by them. @rule BENCH-2, BENCH-10 */
import { lotIdOfLine } from "@/lib/domain/arrivals";
import type { Books, Desk } from "@/lib/domain/desk";
import { byId } from "@/lib/domain/index-by-id";
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Workshop } from "@/lib/domain/workshop";
import { type Batch, codeOf, codesOf, openBatches, stateOf } from "./batch";

/** The codes that no new batch may have: of batches, of finished lots, whose ids they become, and of lots that are here or on order. @rule BENCH-2 */
export const codesUsed = ({ workshop, desk }: Books): readonly string[] => [
  ...desk.batches.flatMap(codesOf),
  ...lotIds(workshop),
];

/** The batch that is open under a code: no lot that comes in from elsewhere may have it. @rule BENCH-10 */
export const openUnder = ({ batches }: Desk, code: string): Batch | null =>
  openBatches(batches).find((batch) => codeOf(batch) === code) ?? null;

/** The batch that waits for a second look under a code: what came out of it is judged at the bench alone. @rule BENCH-8 */
export function heldUnder({ workshop, desk }: Books, lot: LotName): Batch | null {
  const made = byId("product", workshop.products);
  const isOf = ({ run }: Batch): boolean => (made(run.product).madeInto === null ? "finished" : "material") === lot.of;
  return desk.batches.find((batch) => stateOf(batch) === "held" && codeOf(batch) === lot.id && isOf(batch)) ?? null;
}

/** A lot that stands in a workshop, or is on order in it, and not in another, under the code of an open batch. */
export function lotUnderOpenBatch(before: Workshop, after: Workshop, desk: Desk): string | null {
  const open = openBatches(desk.batches).map(codeOf);
  if (open.length === 0) return null;
  const known = new Set(lotIds(before));
  return lotIds(after).find((id) => !known.has(id) && open.includes(id)) ?? null;
}

const lotIds = ({ lots, finished, orders }: Workshop): readonly string[] => [
  ...finished.map(({ id }) => id),
  ...lots.map(({ id }) => id),
  ...orders.flatMap(({ id, lines }) => lines.map((_, at) => lotIdOfLine(id, at))),
];
