/** Runs once when the server starts, before the first request: the store is brought up to date, or the start fails. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const [{ openStore }, { storeFile }] = await Promise.all([
    import("@/lib/store/open-store"),
    import("@/lib/store/store-file"),
  ]);
  await openStore(storeFile());
}
