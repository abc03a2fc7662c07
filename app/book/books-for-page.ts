import "server-only";
import { redirect } from "next/navigation";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { realToday } from "@/lib/edge/real-today";
import { readOnce } from "@/app/plan-for-page";

export interface OpenBooks {
  readonly books: Books;
  /** The day that the workshop is set to, else the real one. */
  readonly today: Day;
  readonly realToday: Day;
}

/** All that the app keeps, read once for one page; where no workshop is open, the first page says how to begin. */
export async function booksForPage(): Promise<OpenBooks> {
  const books = await readOnce();
  if (books === null) redirect("/");
  const real = realToday();
  return { books, today: books.workshop.settings.today ?? real, realToday: real };
}
