import { existsSync } from "node:fs";
import type { Books } from "@/lib/domain/desk";
import { readBooks } from "@/lib/store/books";
import { type BooksWithPast, readBooksWithPast } from "@/lib/store/ledger/past";
import { storeFile } from "@/lib/store/store-file";
import { Refusal } from "./refusal";

/** The app's own books as they stand. No store is made where there is none. @throws Refusal where there is none */
export const ownStanding = (): Promise<Books> => own(readBooks);

/** All that the app's own store holds, with its past. @throws Refusal where there is none */
export const ownBooks = (): Promise<BooksWithPast> => own(readBooksWithPast);

async function own<T>(read: () => Promise<T | null>): Promise<T> {
  const found = existsSync(storeFile()) ? await read() : null;
  if (found !== null) return found;
  throw new Refusal([`${storeFile()} holds no workshop yet: npm run load -- FILE opens one, and so does the app.`]);
}
