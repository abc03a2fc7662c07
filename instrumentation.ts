/** Runs once when the server starts, before the first request: the store is brought up to date, or the start fails. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const [{ openStore }, { storeFile }, { readBooks }, { writeIn }] = await Promise.all([
    import("@/lib/store/open-store"),
    import("@/lib/store/store-file"),
    import("@/lib/store/books"),
    import("@/lib/edge/notation"),
  ]);
  await openStore(storeFile());
  // A form that was drawn before a restart may be sent before any page is.
  const books = await readBooks();
  if (books !== null) writeIn(books.desk.notation);
}
