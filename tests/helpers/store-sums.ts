import { db } from "@/lib/store/client";

/** Reads what remains of the lot, waits a moment, and writes one more: lost if anyone writes between. */
export const addOne = (): Promise<void> =>
  db().$transaction(
    async (books) => {
      const { remaining } = await books.lot.findUniqueOrThrow({ where: { id: "L" } });
      await new Promise((resolve) => setTimeout(resolve, 1));
      await books.lot.update({ where: { id: "L" }, data: { remaining: remaining + 1n } });
    },
    { maxWait: 60_000, timeout: 60_000 },
  );
