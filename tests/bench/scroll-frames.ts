/** How smoothly a long page scrolls: its frames while a wheel is turned, as the page's own clock tells them. */
import type { Browser } from "@playwright/test";
import { waitForScripts } from "../journeys/scripts-ready";
import { median } from "./median-time";

export interface Scrolled {
  /** Milliseconds from one frame to the next: the middle one, and what 95 of 100 stay within. */
  readonly middle: number;
  readonly ninetyFive: number;
  /** Frames that took longer than two of sixty in a second, and all of them. */
  readonly late: number;
  readonly frames: number;
  /** Ribbons on the page. */
  readonly ribbons: number;
}

/** Turns of the wheel, each a notch of 120 pixels: a little over two seconds, down a shelf of hundreds of rows. */
const TURNS = 120;
const LATE = 1000 / 30;

export async function scrolled(browser: Browser, url: string): Promise<Scrolled> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await waitForScripts(page).goto(url);
  await page.waitForLoadState("networkidle");
  await page.mouse.move(640, 600);
  // As text: a function that is named on its way here would ask the page for a helper that it does not have.
  await page.evaluate(`
    window.frameTimes = [];
    (function next(at) {
      if (at !== undefined) window.frameTimes.push(at);
      requestAnimationFrame(next);
    })();
  `);
  for (let turn = 0; turn < TURNS; turn += 1) {
    await page.mouse.wheel(0, 120);
    await page.waitForTimeout(16);
  }
  const frames = await page.evaluate<number[]>("window.frameTimes");
  const ribbons = await page.locator("svg.ribbon").count();
  await page.close();
  const gaps = frames.slice(1).map((at, index) => at - (frames[index] ?? at));
  const sorted = [...gaps].sort((one, other) => one - other);
  return {
    middle: median(gaps),
    ninetyFive: sorted[Math.floor(sorted.length * 0.95)] ?? NaN,
    late: gaps.filter((gap) => gap > LATE).length,
    frames: gaps.length,
    ribbons,
  };
}
