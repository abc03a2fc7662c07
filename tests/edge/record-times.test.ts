/** Moments of a batch's record: each with the day that it was in universal time. @rule BENCH-4 */
import { expect, test } from "vitest";
import { timesFrom, timeShown } from "@/app/bench/_parts/record-words";
import type { Instant } from "@/lib/domain/bench/batch";

const at = (moment: string): Instant => moment as Instant;

test("[BENCH-4] a time without a day is of the day that stands above it", () => {
  // Half past midnight in a workshop an hour ahead of universal time.
  const started = at("2026-11-24T23:30:00Z");
  expect(timesFrom(started)).toBe("Tue\u00a024\u00a0Nov\u00a02026, times in UTC");
  expect(timeShown(started, started)).toBe("23:30");
  expect(timeShown(at("2026-11-25T00:10:00Z"), started)).toBe("25\u00a0Nov\u00a000:10");
  expect(timeShown(at("2027-11-24T23:30:00Z"), started)).toBe("24\u00a0Nov\u00a02027\u00a023:30");
});
