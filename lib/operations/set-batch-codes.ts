import type { BatchCodeScheme } from "@/lib/domain/bench/batch-code";
import { onTheBooks } from "./on-the-books";

/** Keeps how the codes of batches are made from now on; those that are given stay. @rule BENCH-2 */
export const setBatchCodes = (scheme: BatchCodeScheme) =>
  onTheBooks((books) => ({
    kind: "kept" as const,
    books: { ...books, desk: { ...books.desk, batchCodeScheme: scheme } },
  }));
