import { defineConfig } from "@playwright/test";
import { findBrowser, launchOptions } from "./tests/journeys/browser";

export default defineConfig({
  testDir: "tests/journeys",
  outputDir: ".playwright",
  globalSetup: "./tests/journeys/built.ts",
  // Two journeys at a time: one alone leaves one of two cores waiting for the other, its server for its browser. They are
  // handed out one by one, since whole files leave a worker idle while the other comes to the end of a long one.
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  // Tried once more, and told: `npm test` names each journey that passed only then (DEVELOPERS.md, decision 38).
  retries: 1,
  // A busy machine must not fail what is right: what is looked for usually stands there within a tenth of a second.
  timeout: 240_000,
  expect: { timeout: 20_000 },
  reporter: [["list"]],
  use: {
    actionTimeout: 40_000,
    viewport: { width: 1280, height: 900 },
    locale: "en-GB",
    timezoneId: "Europe/London",
    screenshot: "only-on-failure",
    launchOptions: launchOptions(findBrowser()),
  },
});
