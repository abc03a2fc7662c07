/**
 * What every journey stands on: the app running on a store of its own, and a page that fails its test on anything a
 * maker would never be shown: a console error or warning, a page error, a failed request, a request to another host.
 *
 * A journey begins in the demo workshop, and only reads it. One that begins in another workshop says so by
 * `test.use({ opened: "…" })` and may change it: the next one finds it as it was. One that begins before any workshop was
 * opened says "nothing", and one that minds what the server remembers `ownServer`: each test of it gets a server of its own.
 */
import { AxeBuilder } from "@axe-core/playwright";
import { test as base, expect, type Page } from "@playwright/test";
import { type KeptServer, keptServer } from "./kept-server";
import { waitForScripts } from "./scripts-ready";
import { forgetFilledStores, type Opened, type RunningApp, serveStore, startApp } from "./server";

export { expect } from "@playwright/test";

const DEMO = "seed/demo-workshop.json";

interface Journey {
  readonly opened: Opened;
  readonly ownServer: boolean;
  readonly app: RunningApp;
  /** Names a fault that this journey is about, by what its line says; it must then occur. */
  readonly expectFault: (line: RegExp) => void;
}

interface Worker {
  /** The app with the demo workshop, shared by the journeys that only read it; started by the first that asks. */
  readonly demoApp: () => Promise<RunningApp>;
  readonly kept: KeptServer;
}

interface Watch {
  readonly faults: string[];
  readonly expected: RegExp[];
}

export const test = base.extend<Journey & { watch: Watch }, Worker>({
  opened: [DEMO, { option: true }],
  ownServer: [false, { option: true }],

  demoApp: [
    async ({}, use) => {
      let app: Promise<RunningApp> | undefined;
      await use(() => (app ??= startApp(DEMO)));
      await (await app)?.stop();
      forgetFilledStores();
    },
    { scope: "worker", timeout: 300_000 },
  ],

  kept: [
    async ({}, use) => {
      const kept = keptServer();
      await use(kept);
      await kept.stop();
    },
    { scope: "worker", timeout: 300_000 },
  ],

  app: async ({ opened, ownServer, demoApp, kept }, use) => {
    if (opened === DEMO) return use(await demoApp());
    if (opened !== "nothing" && !ownServer) return use(await kept.begin(opened));
    const app = await serveStore(opened);
    await use(app);
    await app.stop();
  },

  baseURL: async ({ app }, use) => {
    await use(app.url);
  },

  watch: async ({}, use) => {
    const watch: Watch = { faults: [], expected: [] };
    await use(watch);
    for (const line of watch.expected) {
      expect(
        watch.faults.some((fault) => line.test(fault)),
        `expected a fault like ${String(line)}`,
      ).toBe(true);
    }
    const unexpected = watch.faults.filter((fault) => !watch.expected.some((line) => line.test(fault)));
    expect(unexpected, "faults that the browser saw").toEqual([]);
  },

  expectFault: async ({ watch }, use) => {
    await use((line) => {
      watch.expected.push(line);
    });
  },

  context: async ({ context, javaScriptEnabled }, use) => {
    const opened = context.newPage.bind(context);
    if (javaScriptEnabled) context.newPage = async () => waitForScripts(await opened());
    await use(context);
  },

  page: async ({ page, watch, app }, use) => {
    listen(page, app.url, watch.faults);
    await use(page);
  },
});

/**
 * Chromium looks once, some seconds after a page was loaded, for what was preloaded and is not used. Who goes to another
 * place at that very moment has its styles on their way: preloaded, and used a tenth of a second later.
 */
const STYLES_ON_THEIR_WAY = /^The resource \S+\.css was preloaded using link preload but not used within a few seconds/;

function listen(page: Page, home: string, faults: string[]): void {
  page.on("console", (message) => {
    const isTold = message.type() === "error" || message.type() === "warning";
    if (isTold && !STYLES_ON_THEIR_WAY.test(message.text()))
      faults.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on("pageerror", (error) => {
    faults.push(`page error: ${error.message}`);
  });
  page.on("requestfailed", (request) => {
    const why = request.failure()?.errorText ?? "no reason given";
    // Leaving a page stops what it was still fetching ahead; nobody misses it.
    if (why !== "net::ERR_ABORTED") faults.push(`request failed: ${request.url()}: ${why}`);
  });
  page.on("response", (response) => {
    if (response.status() >= 400) faults.push(`answer ${String(response.status())}: ${response.url()}`);
  });
  page.on("request", (request) => {
    const url = new URL(request.url());
    const local = url.protocol === "data:" || url.protocol === "blob:" || url.origin === home;
    if (!local) faults.push(`request to another host: ${request.url()}`);
  });
}

/** Expects axe to find nothing on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  expect.soft(await axeFindings(page), "what axe found").toEqual([]);
}

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/**
 * What axe finds, by WCAG 2.2 A and AA and its own best practices, or by some of its rules alone.
 * The content policy is left in force: Playwright evaluates axe through the browser's own protocol, which no policy
 * of the page forbids.
 */
export async function axeFindings(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  // What passed is not gathered, and its older way of asking opens no second page: the same rules in half the time.
  // A page that was looked at before still has axe in it, which takes as long to read as many of its rules to follow.
  const isThere = await page.evaluate(() => "axe" in globalThis);
  const builder = new AxeBuilder({ page, ...(isThere ? { axeSource: ";" } : {}) });
  const axe = builder.setLegacyMode(true).options({ resultTypes: ["violations"] });
  const asked = rules === undefined ? axe.withTags(TAGS) : axe.withRules([...rules]);
  const { violations } = await asked.analyze();
  return violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html).join(" | ")}`);
}
