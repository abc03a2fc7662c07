import { expect, test } from "vitest";
import { clockShown } from "@/lib/edge/clock-shown";

test("a moment of today by its time, another with its day", () => {
  const now = new Date(2026, 10, 25, 18, 30);
  expect(clockShown(new Date(2026, 10, 25, 9, 12), now)).toBe("09:12");
  expect(clockShown(new Date(2026, 10, 24, 23, 5), now)).toBe("24 Nov, 23:05");
});
