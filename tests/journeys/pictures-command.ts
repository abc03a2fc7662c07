/**
 * `npm run pictures`: every place of the app with the demo workshop, at three sizes on a light and a dark page, and as
 * it prints, into pictures/. To be looked at; nothing is compared.
 */
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium } from "@playwright/test";
import { findBrowser, launchOptions } from "./browser";
import { BENCH_PLACES, BENCH_WORKSHOP, PICTURED, type Place, SCHEMES, SIZES } from "./places";
import { type Opened, PROJECT, startApp } from "./server";

const FOLDER = join(PROJECT, "pictures");

async function take(browser: Browser, url: string, { name, path }: Place): Promise<void> {
  const page = await browser.newPage({ locale: "en-GB" });
  for (const size of SIZES) {
    for (const scheme of SCHEMES) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme: scheme, media: "screen" });
      await page.goto(url + path, { waitUntil: "networkidle" });
      await page.screenshot({ path: join(FOLDER, `${name}-${String(size.width)}-${scheme}.png`), fullPage: true });
    }
  }
  await page.emulateMedia({ colorScheme: "light", media: "print" });
  await page.pdf({ path: join(FOLDER, `${name}-print.pdf`), format: "A4", preferCSSPageSize: true });
  await page.close();
  console.log(`${name}: ${String(SIZES.length * SCHEMES.length)} pictures and a print`);
}

async function takeAll(browser: Browser, opened: Opened, places: readonly Place[]): Promise<void> {
  const app = await startApp(opened);
  try {
    for (const place of places) await take(browser, app.url, place);
  } finally {
    await app.stop();
  }
}

rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
const only = process.argv[2];
/** All places, or those whose name begins with what was asked for. */
const wanted = PICTURED.filter(({ name }) => name.startsWith(only ?? ""));
const browser = await chromium.launch(launchOptions(findBrowser()));
try {
  await takeAll(browser, "nothing", [{ name: "first", path: "/" }]);
  await takeAll(browser, "seed/demo-workshop.json", wanted);
  await takeAll(
    browser,
    BENCH_WORKSHOP,
    BENCH_PLACES.filter(({ name }) => name.startsWith(only ?? "")),
  );
} finally {
  await browser.close();
}
