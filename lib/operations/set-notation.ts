import type { Notation } from "@/lib/domain/notation";
import { onTheBooks } from "./on-the-books";

/** Keeps how figures are written from now on. @rule SHOW-1 */
export const setNotation = (notation: Notation) =>
  onTheBooks((books) => ({ kind: "kept" as const, books: { ...books, desk: { ...books.desk, notation } } }));
