/**
 * `npm run pictures`: every place of the app with the demo workshop, and its states, at three sizes on a light and a dark
 * page, and as it prints, into pictures/. To be looked at; nothing is compared. `-- today` takes those whose names begin so.
 */
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium } from "@playwright/test";
import { findBrowser, launchOptions } from "./browser";
import bringBuildUpToDate from "./built";
import { type PicturedState, STATES } from "./pictured-states";
import { BENCH_PLACES, BENCH_WORKSHOP, PICTURED, type Place, SCHEMES, SIZES } from "./places";
import { forgetFilledStores, type Opened, PROJECT, serveStore } from "./server";

const FOLDER = join(PROJECT, "pictures");
const DEMO: Opened = "seed/demo-workshop.json";

async function take(browser: Browser, url: string, { name, path }: Place, act?: PicturedState["act"]): Promise<void> {
  const page = await browser.newPage({ locale: "en-GB" });
  await page.goto(url + path, { waitUntil: "networkidle" });
  await act?.(page);
  for (const size of SIZES) {
    for (const scheme of SCHEMES) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme: scheme, media: "screen" });
      await page.screenshot({ path: join(FOLDER, `${name}-${String(size.width)}-${scheme}.png`), fullPage: true });
    }
  }
  await page.emulateMedia({ colorScheme: "light", media: "print" });
  await page.pdf({ path: join(FOLDER, `${name}-print.pdf`), format: "A4", preferCSSPageSize: true });
  await page.close();
  console.log(`${name}: ${String(SIZES.length * SCHEMES.length)} pictures and a print`);
}

/** Those of one store, on one app. */
async function takeAll(browser: Browser, opened: Opened, pictures: readonly PicturedState[]): Promise<void> {
  if (pictures.length === 0) return;
  const app = await serveStore(opened);
  try {
    for (const picture of pictures) await take(browser, app.url, picture, picture.act);
  } finally {
    await app.stop();
  }
}

rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
const only = process.argv[2] ?? "";
bringBuildUpToDate();
const browser = await chromium.launch(launchOptions(findBrowser()));
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
