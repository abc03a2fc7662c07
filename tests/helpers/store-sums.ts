import { db } from "@/lib/store/client";

/** Reads the safety days of the material, waits a moment, and writes one more: lost if anyone writes between. */
export const addOne = (): Promise<void> =>
  db().$transaction(
    async (books) => {
      const { safetyDays } = await books.material.findUniqueOrThrow({ where: { id: "m" } });
      await new Promise((resolve) => setTimeout(resolve, 1));
      await books.material.update({ where: { id: "m" }, data: { safetyDays: safetyDays + 1 } });
    },
    { maxWait: 60_000, timeout: 60_000 },
  );
