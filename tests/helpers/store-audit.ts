/** What must hold of a store after every test, whatever was done to it. */
import { afterEach, expect } from "vitest";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { readBooks } from "@/lib/store/books";
import { day } from "./notation";
import { soundness } from "./store-soundness";

/** The real date of the tests: later than any lot that they hold. */
const REAL_TODAY = day("2026-11-25");

/** The store is sound, and the workshop in it can be saved as a file and opened again as it is. @rule FILE-4 */
export function auditAfterEachTest(file: () => string): void {
  afterEach(async () => {
    expect(soundness(file())).toEqual(["ok"]);
    const books = await readBooks();
    if (books === null) return;
    const reading = readWorkshopFile(new TextEncoder().encode(writeWorkshopFile(books.workshop)), REAL_TODAY);
    expect(reading).toStrictEqual({ kind: "read", workshop: books.workshop });
  });
}
