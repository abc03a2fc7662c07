import { existsSync } from "node:fs";
import type { Workshop } from "@/lib/domain/workshop";
import { readWorkshop } from "@/lib/store/books";
import { type BooksWithPast, readBooksWithPast } from "@/lib/store/ledger/past";
import { storeFile } from "@/lib/store/store-file";
import { Refusal } from "./refusal";

/** The workshop in the app's own store. No store is made where there is none. @throws Refusal where there is none */
export const ownWorkshop = (): Promise<Workshop> => own(readWorkshop);

/** All that the app's own store holds, with its past. @throws Refusal where there is none */
export const ownBooks = (): Promise<BooksWithPast> => own(readBooksWithPast);

async function own<T>(read: () => Promise<T | null>): Promise<T> {
  const found = existsSync(storeFile()) ? await read() : null;
  if (found !== null) return found;
  throw new Refusal([`${storeFile()} holds no workshop yet: npm run load -- FILE opens one, and so does the app.`]);
}
