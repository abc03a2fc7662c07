import { afterEach, beforeEach, expect, vi } from "vitest";

// A warning that nobody reads is a fault that nobody finds: any console.error or console.warn fails its test.
beforeEach(() => {
  vi.spyOn(console, "error");
  vi.spyOn(console, "warn");
});

afterEach(() => {
  expect(vi.mocked(console.error).mock.calls, "console.error was called").toEqual([]);
  expect(vi.mocked(console.warn).mock.calls, "console.warn was called").toEqual([]);
  vi.restoreAllMocks();
});
