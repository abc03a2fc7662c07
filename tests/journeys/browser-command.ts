/**
 * Puts a browser in place for the journeys: `npm run setup:browser`.
 * It tries Playwright's own download first. The system's packages are installed only by whoever is already root, or
 * where CI is set; anybody else is told which one to install. Where there is a browser with windows alone, the package
 * without is tried, in which the journeys take two thirds of the time; what is there will do where that one cannot be had.
 */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { findBrowser, isHeadlessBuild, launchOptions } from "./browser";
import { PROJECT } from "./server";

const APT = "/usr/bin/apt-get";
const DOWNLOAD_WITHIN_MS = 300_000;

const isRoot = process.getuid?.() === 0;
const maySetUpSystem = existsSync(APT) && (isRoot || Boolean(process.env.CI));

const run = (program: string, ...args: readonly string[]): boolean =>
  spawnSync(program, args, { cwd: PROJECT, stdio: "inherit", timeout: DOWNLOAD_WITHIN_MS }).status === 0;

/** Whether there is a browser and it starts: a downloaded one may lack libraries of the system. */
async function browserStarts(): Promise<boolean> {
  const search = findBrowser();
  if (search.kind === "none") return false;
  try {
    await (await chromium.launch(launchOptions(search))).close();
    console.log(`Browser for the journeys: ${search.path}`);
    return true;
  } catch (fault) {
    console.log(
      `${search.path} is there and does not start: ${fault instanceof Error ? fault.message : String(fault)}`,
    );
    return false;
  }
}

const downloadOwn = (): boolean =>
  run(process.execPath, join(PROJECT, "node_modules/@playwright/test/cli.js"), "install", "chromium");

const installPackage = (name: "chromium" | "chromium-headless-shell"): boolean => {
  const asRoot = isRoot ? [] : ["/usr/bin/sudo", "-n"];
  const apt = (...args: readonly string[]) => {
    const [program = APT, ...rest] = [...asRoot, APT, ...args];
    return run(program, ...rest);
  };
  return apt("update", "-q") && apt("install", "-y", "-q", "--no-install-recommends", name);
};

async function setUp(): Promise<boolean> {
  // What it names comes before everything that could be installed.
  if (process.env.CHROMIUM_PATH && !existsSync(process.env.CHROMIUM_PATH)) {
    console.log(
      `CHROMIUM_PATH names "${process.env.CHROMIUM_PATH}", and there is no such file. Unset it, or set it right.`,
    );
    return false;
  }
  if (await browserStarts()) {
    const found = findBrowser();
    const isQuick = Boolean(process.env.CHROMIUM_PATH) || (found.kind === "found" && isHeadlessBuild(found.path));
    if (isQuick || !maySetUpSystem) return true;
    console.log("Trying the system's package of Chromium without windows, in which the journeys are quicker.");
    installPackage("chromium-headless-shell");
    return await browserStarts();
  }
  console.log("Trying Playwright's own download.");
  if (downloadOwn() && (await browserStarts())) return true;
  if (!maySetUpSystem) return false;
  console.log("Trying the system's packages.");
  if (installPackage("chromium-headless-shell") && (await browserStarts())) return true;
  return installPackage("chromium") && (await browserStarts());
}

if (!(await setUp())) {
  console.error(
    "No browser could be put in place. Install the package `chromium` (Debian, Ubuntu: apt-get install chromium) or " +
      "Google Chrome; where it lies elsewhere, set CHROMIUM_PATH to its program file.",
  );
  process.exitCode = 1;
}
