import { expect, test } from "vitest";
import { closeRunsAtOnce } from "../helpers/closing-processes";
import { storeForEachTest } from "../helpers/store-folder";

const { file } = storeForEachTest();
const RUNS = 12;
const PATIENCE_MS = 120_000;

test(
  "[LEDGER-3] [LEDGER-4] eight processes that close the same runs at once never oversell a lot",
  async () => {
    const { processes, asked, posted, late, short, open } = await closeRunsAtOnce(file(), RUNS);
    expect([processes, asked, posted + late + short]).toEqual([8, 8 * RUNS, 8 * RUNS]);
    expect(posted + open).toBe(RUNS);
    // Of jars there are half as many as runs.
    expect(posted).toBeLessThanOrEqual(RUNS / 2);
    expect([posted, late, short].every((count) => count > 0)).toBe(true);
  },
  PATIENCE_MS,
);
