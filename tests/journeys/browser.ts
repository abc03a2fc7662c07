/** Finds the browser that the journeys and the pictures are driven in. */
import { existsSync } from "node:fs";
import { chromium, type LaunchOptions } from "@playwright/test";

/** The one command that puts a browser in place. */
export const BROWSER_COMMAND = "npm run setup:browser";

/** Chromium without windows, as the system packs it: it draws no frame around each page, which costs as much as the page. */
const HEADLESS = "/usr/bin/chromium-headless-shell";

const INSTALLED_BROWSERS = [
  HEADLESS,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

export type BrowserSearch =
  { readonly kind: "found"; readonly path: string } | { readonly kind: "none"; readonly message: string };

/** The program of a browser: the one that CHROMIUM_PATH names, else Playwright's own, else one that is installed. */
export function findBrowser(): BrowserSearch {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (existsSync(named)) return { kind: "found", path: named };
    return { kind: "none", message: `CHROMIUM_PATH names "${named}", and there is no such file.` };
  }
  const path = [chromium.executablePath(), ...INSTALLED_BROWSERS].find((candidate) => existsSync(candidate));
  if (path) return { kind: "found", path };
  return { kind: "none", message: `The journeys need Chromium or Chrome, and none was found. Run: ${BROWSER_COMMAND}` };
}

/** Whether it is built to run without windows; Playwright's own brings such a build along. */
export const isHeadlessBuild = (path: string): boolean => path === HEADLESS || path === chromium.executablePath();

/** How a found browser is started. Playwright's own is left to Playwright, which knows its headless build. */
export function launchOptions(search: BrowserSearch): LaunchOptions {
  if (search.kind === "none") throw new Error(search.message);
  // Chromium refuses its sandbox to root, which is who runs in most containers.
  const args = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  return search.path === chromium.executablePath() ? { args } : { executablePath: search.path, args };
}
