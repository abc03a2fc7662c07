/**
 * `npm run pictures`: every place of the app with the demo workshop, and its states, at three sizes on a light and a dark
 * page, and as it prints, into pictures/. To be looked at; nothing is compared. `-- today` takes those whose names begin so.
 */
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium } from "@playwright/test";
import { findBrowser, launchOptions } from "./browser";
import bringBuildUpToDate from "./built";
import type { PicturedState } from "./pictured-state";
import { STATES } from "./pictured-states";
import { BENCH_PLACES, BENCH_WORKSHOP, PICTURED, SCHEMES, SIZES } from "./places";
import { forgetFilledStores, type Opened, PROJECT, serveStore } from "./server";

const FOLDER = join(PROJECT, "pictures");
const DEMO: Opened = "seed/demo-workshop.json";

/** How long a drawing that comes when it is seen, or a bar that settles, may take to be there. */
const SETTLES_MS = 300;
/** The browser draws no taller picture than this. */
const TALLEST_PX = 16_000;

async function take(
  browser: Browser,
  url: string,
  { name, path, act, paper = "A4" }: Omit<PicturedState, "opened">,
): Promise<void> {
  const context = await browser.newContext({ locale: "en-GB" });
  const page = await context.newPage();
  await page.goto(url + path, { waitUntil: "networkidle" });
  await act?.(page);
  for (const size of SIZES) {
    // In a window as tall as the page all of it is seen, and what stays at the window's foot stands at the page's.
    await page.setViewportSize(size);
    const whole = await page.evaluate(() => document.documentElement.scrollHeight);
    await page.setViewportSize({ ...size, height: Math.min(Math.max(size.height, whole), TALLEST_PX) });
    await page.waitForTimeout(SETTLES_MS);
    for (const scheme of SCHEMES) {
      await page.emulateMedia({ colorScheme: scheme, media: "screen" });
      await page.screenshot({ path: join(FOLDER, `${name}-${String(size.width)}-${scheme}.png`), fullPage: true });
    }
  }
  await page.setViewportSize(SIZES[0]);
  await page.emulateMedia({ colorScheme: "light", media: "print" });
  await page.pdf({ path: join(FOLDER, `${name}-print.pdf`), format: paper, preferCSSPageSize: true });
  await context.close();
  console.log(`${name}: ${String(SIZES.length * SCHEMES.length)} pictures and a print`);
}

/** The other pictures are taken though one could not be. */
async function taken(browser: Browser, url: string, picture: PicturedState): Promise<void> {
  try {
    await take(browser, url, picture);
  } catch (fault) {
    console.error(`${picture.name}: ${fault instanceof Error ? fault.message : String(fault)}`);
    process.exitCode = 1;
  }
}

/** Those of one store, on one app. */
async function takeAll(browser: Browser, opened: Opened, pictures: readonly PicturedState[]): Promise<void> {
  if (pictures.length === 0) return;
  const app = await serveStore(opened);
  try {
    for (const picture of pictures) await taken(browser, app.url, picture);
  } finally {
    await app.stop();
  }
}

rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
const only = process.argv[2] ?? "";
bringBuildUpToDate();
// Date and time fields are written as the browser's own language has them.
const browser = await chromium.launch({ ...launchOptions(findBrowser()), env: { ...process.env, LANGUAGE: "en_GB" } });
try {
  const pictures = (
    [
      ...PICTURED.map((place) => ({ ...place, opened: DEMO })),
      ...BENCH_PLACES.map((place) => ({ ...place, opened: BENCH_WORKSHOP })),
      ...STATES,
    ] as readonly PicturedState[]
  ).filter(({ name }) => name.startsWith(only));
  for (const opened of new Set(pictures.map((picture) => picture.opened)))
    await takeAll(
      browser,
      opened,
      pictures.filter((picture) => picture.opened === opened),
    );
} finally {
  await browser.close();
  forgetFilledStores();
}
