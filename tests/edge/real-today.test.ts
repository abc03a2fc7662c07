import { afterEach, expect, test, vi } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import { realToday } from "@/lib/edge/real-today";

const zone = process.env["TZ"];

afterEach(() => {
  vi.useRealTimers();
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
});

test.each([
  ["UTC", "2026-11-25T23:59:59Z", "2026-11-25"],
  ["Pacific/Auckland", "2026-11-25T12:00:00Z", "2026-11-26"],
  ["America/Los_Angeles", "2026-11-25T07:59:59Z", "2026-11-24"],
  ["Europe/London", "2026-07-31T23:30:00Z", "2026-08-01"],
])("[DAY-1] in %s at %s it is %s", (timeZone, instant, date) => {
  process.env["TZ"] = timeZone;
  vi.useFakeTimers({ now: new Date(instant) });
  expect(isoDate(realToday())).toBe(date);
});
