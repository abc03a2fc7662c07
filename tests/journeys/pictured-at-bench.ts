/** States of the bench and of a formula's trials, for the pictures, in invented workshops of their own. */
import type { Page } from "@playwright/test";
import type { PicturedState } from "./pictured-state";
import { BENCH_WORKSHOP } from "./places";

const BATCH = "/bench/~r2";
const FORMULAS = "tests/journeys/formula-workshop.json";

const status = (page: Page) => page.getByRole("status").first();

async function weighFromL2(page: Page, grams: string): Promise<void> {
  await page.getByText("L2", { exact: true }).first().click();
  await page.getByLabel("Balance shows").fill(grams);
  await page.getByRole("button", { name: "Write it down" }).click();
}

/** A weight that is out of tolerance asks why it is kept. */
async function outOfTolerance(page: Page): Promise<void> {
  await weighFromL2(page, "2990");
  await page.getByRole("button", { name: "Weigh again" }).waitFor();
}

/** The network goes: what is written down waits on the device. */
async function withoutNetwork(page: Page): Promise<void> {
  await page.route("**/notes", (route) => route.abort());
  await weighFromL2(page, "2880");
  await status(page).filter({ hasText: "No connection" }).waitFor();
}

async function closeRefused(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Close the batch", exact: true }).click();
  await page.locator("[aria-invalid]").first().waitFor();
}

async function noteOpened(page: Page): Promise<void> {
  await page.getByText("A temperature", { exact: true }).click();
}

/** Two trials, so that there is something to compare. */
async function tried(page: Page): Promise<void> {
  for (const [name, water, blend, viscosity] of [
    ["Thin one", "95", "5", "3200"],
    ["Thick one", "92", "8", "9100"],
  ] as const) {
    await page.goto(new URL("/book/formulas/f/trials/new", page.url()).href);
    await page.getByLabel("Name", { exact: true }).fill(name);
    await page.getByLabel("Water, g").fill(water);
    await page.getByLabel("Emulsifier blend, g").fill(blend);
    await page.getByLabel("Viscosity, mPa·s").fill(viscosity);
    await page.getByLabel("pH", { exact: true }).fill("5.2");
    await page.getByRole("button", { name: "Keep the trial", exact: true }).click();
    await page.getByRole("region", { name: new RegExp(`^${name}`) }).waitFor();
  }
  await page.waitForLoadState("networkidle");
}

const atBench = (name: string, path: string, act?: PicturedState["act"]): PicturedState => ({
  name,
  opened: BENCH_WORKSHOP,
  path,
  ...(act && { act }),
});

export const BENCH_STATES: readonly PicturedState[] = [
  atBench("bench-open", "/bench"),
  atBench("bench-today", "/"),
  atBench("bench-note", BATCH, noteOpened),
  atBench("bench-out-of-tolerance", BATCH, outOfTolerance),
  atBench("bench-close-refused", `${BATCH}/close`, closeRefused),
  atBench("bench-offline", BATCH, withoutNetwork),
  { ...atBench("bench-record-letter", "/bench/~r1/record"), paper: "Letter" },
  { ...atBench("bench-sheet-letter", `${BATCH}/sheet`), paper: "Letter" },
  atBench("label-form", "/book/labels/l-plain"),
  atBench("paper-form", "/book/papers/a4-21"),
  { name: "trials", opened: FORMULAS, path: "/book/formulas/f/trials", act: tried },
];
