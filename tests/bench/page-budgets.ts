/**
 * `npm run budgets`: what a first visit costs in the browser, measured in Chromium on a workshop of 400 materials: script
 * over that of an empty page of the same framework, the largest paint, how long the page takes to answer what is
 * pressed and typed, and how smoothly its ribbons scroll. Prints each beside its budget; times are the machine's, so that none is asserted.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { type Browser, chromium, type Page } from "@playwright/test";
import { largeWorkshop } from "../helpers/random-workshop";
import bringBuildUpToDate from "../journeys/built";
import { findBrowser, launchOptions } from "../journeys/browser";
import { waitForScripts } from "../journeys/scripts-ready";
import { forgetFilledStores, type Opened, PROJECT, type RunningApp, serveFolder, serveStore } from "../journeys/server";
import { line, median, TIMES } from "./median-time";
import { scrolled } from "./scroll-frames";

const SIZE = { materials: 400, products: 60, runs: 200, days: 56, seed: 1 };
const BUDGET = { script: 60, paint: 1_000, interaction: 100 };
const PLACES = [
  "/",
  "/cost",
  "/cost/p1",
  "/week",
  "/shelf",
  "/buying",
  "/bench",
  "/book",
  "/book/formulas/new",
  "/find",
];

interface Visit {
  /** Of the scripts that the page fetched, compressed as a server would, kB. */
  readonly script: number;
  /** Milliseconds from the request. */
  readonly paint: number;
}

/** A visit with nothing kept from another. */
async function visit(browser: Browser, url: string): Promise<Visit> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const scripts: Promise<number>[] = [];
  page.on("response", (response) => {
    if (response.request().resourceType() === "script")
      scripts.push(response.body().then((body) => gzipSync(body).length));
  });
  await page.goto(url, { waitUntil: "networkidle" });
  const paint = await page.evaluate(
    () =>
      new Promise<number>((found) => {
        new PerformanceObserver((list) => {
          found(list.getEntries().at(-1)?.startTime ?? NaN);
        }).observe({ type: "largest-contentful-paint", buffered: true });
      }),
  );
  const sizes = await Promise.all(scripts);
  await page.close();
  return { script: sizes.reduce((sum, size) => sum + size, 0) / 1000, paint };
}

/** The empty page of the framework, built and served like the app. */
async function emptyPage(browser: Browser): Promise<number> {
  const folder = join(PROJECT, ".next", "empty-page");
  mkdirSync(join(folder, "app"), { recursive: true });
  writeFileSync(join(folder, "package.json"), '{ "name": "empty-page", "private": true, "type": "module" }\n');
  writeFileSync(
    join(folder, "next.config.mjs"),
    `export default { turbopack: { root: ${JSON.stringify(PROJECT)} } };\n`,
  );
  writeFileSync(
    join(folder, "app/layout.js"),
    'export default ({ children }) => <html lang="en"><body>{children}</body></html>;\n',
  );
  writeFileSync(
    join(folder, "app/page.js"),
    'export const dynamic = "force-dynamic";\nexport default () => <p>Empty</p>;\n',
  );
  // Without one of its own the build may take up the app's, which asks for a store.
  writeFileSync(join(folder, "instrumentation.js"), "export const register = () => undefined;\n");
  const next = createRequire(import.meta.url).resolve("next/dist/bin/next");
  const built = spawnSync(process.execPath, [next, "build"], { cwd: folder, encoding: "utf8" });
  if (built.status !== 0) throw new Error(`the empty page was not built: ${built.stdout}${built.stderr}`);
  const app = await serveFolder(folder);
  try {
    const { script } = await visit(browser, app.url);
    if (script === 0) throw new Error("the empty page brought no script, so that nothing can be held against it");
    return script;
  } finally {
    await app.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Deed {
  readonly what: string;
  readonly path: string;
  readonly act: (page: Page) => Promise<void>;
}

/** What a maker does most, each from a page that has settled. */
const DEEDS: readonly Deed[] = [
  { what: "a letter typed into Find", path: "/find", act: (page) => page.getByLabel("Find anything").press("o") },
  {
    what: "a material opened on the shelf, by its address",
    path: "/shelf",
    act: (page) => page.locator("a.shelf-line").first().click(),
  },
  {
    what: "a material opened where it stands, in a list of some",
    path: "/shelf?find=25",
    act: (page) => page.locator("summary.shelf-line").first().click(),
  },
  { what: "the page made dark", path: "/", act: (page) => page.getByRole("button", { name: "Dark page" }).click() },
  {
    what: "a run lifted on the week",
    path: "/week",
    act: (page) =>
      page
        .getByRole("link", { name: /^Move / })
        .first()
        .click(),
  },
  { what: "to another place", path: "/", act: (page) => page.getByRole("link", { name: "Cost", exact: true }).click() },
  {
    what: "a letter typed into a form of the book",
    path: "/book/materials/new",
    act: (page) => page.getByLabel("Name", { exact: true }).press("a"),
  },
];

/** From the press to the next paint, as the browser's own event timing tells it; 0 for less than it tells of (16 ms). */
async function interaction(browser: Browser, app: RunningApp, { path, act }: Deed): Promise<number> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.addInitScript(() => {
    const worst = { duration: 0 };
    Object.assign(window, { worst });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) worst.duration = Math.max(worst.duration, duration);
    }).observe({ type: "event", durationThreshold: 16, buffered: true } as PerformanceObserverInit);
  });
  await waitForScripts(page).goto(app.url + path);
  await page.waitForLoadState("networkidle");
  await page.evaluate(() => ((window as unknown as { worst: { duration: number } }).worst.duration = 0));
  await act(page);
  await page.waitForTimeout(400);
  const worst = await page.evaluate(() => (window as unknown as { worst: { duration: number } }).worst.duration);
  await page.close();
  return worst;
}

const against = (budget: number, found: number, unit: string): string =>
  `${found <= budget ? "within" : "OVER"} ${String(budget)} ${unit}`;

async function scriptsAndPaints(browser: Browser, app: RunningApp): Promise<void> {
  const empty = await emptyPage(browser);
  console.log(`An empty page: ${empty.toFixed(1)} kB of script, compressed`);
  for (const path of PLACES) {
    const visits: Visit[] = [];
    for (let time = 0; time < TIMES; time += 1) visits.push(await visit(browser, app.url + path));
    const over = median(visits.map(({ script }) => script)) - empty;
    const paint = median(visits.map((each) => each.paint));
    console.log(
      `${path.padEnd(10)} script ${over.toFixed(1).padStart(5)} kB more, ${against(BUDGET.script, over, "kB")}; ` +
        `largest paint ${paint.toFixed(0).padStart(4)} ms, ${against(BUDGET.paint, paint, "ms")}`,
    );
  }
}

async function interactions(browser: Browser, app: RunningApp): Promise<void> {
  for (const deed of DEEDS) {
    const took: number[] = [];
    for (let time = 0; time < TIMES; time += 1) took.push(await interaction(browser, app, deed));
    const found = median(took);
    console.log(line(deed.what, found, against(BUDGET.interaction, found, "ms")));
  }
}

async function scrolling(browser: Browser, app: RunningApp): Promise<void> {
  const { middle, ninetyFive, late, frames, ribbons } = await scrolled(browser, `${app.url}/shelf`);
  console.log(
    `scrolling ${String(ribbons)} ribbons: a frame in ${middle.toFixed(1)} ms, 95 of 100 within ${ninetyFive.toFixed(1)} ms, ` +
      `${String(late)} of ${String(frames)} late`,
  );
}

const folder = mkdtempSync(join(tmpdir(), "stillroom-budgets-"));
const opened = join(folder, "large.json") as Opened;
writeFileSync(opened, JSON.stringify(largeWorkshop(SIZE)));
bringBuildUpToDate();
const [app, browser] = await Promise.all([serveStore(opened), chromium.launch(launchOptions(findBrowser()))]);
try {
  console.log(
    `${String(SIZE.materials)} materials, ${String(cpus().length)} cores, load ${loadavg()[0]?.toFixed(1) ?? ""}; medians of ${String(TIMES)}`,
  );
  await scriptsAndPaints(browser, app);
  await interactions(browser, app);
  await scrolling(browser, app);
} finally {
  await browser.close();
  await app.stop();
  forgetFilledStores();
  rmSync(folder, { recursive: true, force: true });
}
