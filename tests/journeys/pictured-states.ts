/** States of pages that an address alone does not bring about, for the pictures: how each is come to. */
import type { Page } from "@playwright/test";
import type { Opened } from "./server";

export interface PicturedState {
  readonly name: string;
  readonly opened: Opened;
  readonly path: string;
  /** What is done on the page before the picture. */
  readonly act?: (page: Page) => Promise<void>;
}

const DEMO = "seed/demo-workshop.json";

const press = (name: string) => async (page: Page) => {
  await page.getByRole("button", { name, exact: true }).first().click();
  await page.waitForLoadState("networkidle");
};

async function begunEmpty(page: Page): Promise<void> {
  const begin = page.getByRole("button", { name: "Begin with an empty workshop" });
  if (await begin.isVisible()) await begin.click();
  await page.getByText("Nothing is in this workshop yet.").waitFor();
}

/** In this order: what one of them does to its store stays for those after it. */
export const STATES: readonly PicturedState[] = [
  { name: "begin", opened: "nothing", path: "/" },
  { name: "begin-refused", opened: "nothing", path: "/", act: press("Open this file") },
  { name: "empty-today", opened: "nothing", path: "/", act: begunEmpty },
  ...["cost", "week", "shelf", "buying", "bench", "book", "find"].map((place): PicturedState => ({
    name: `empty-${place}`,
    opened: "nothing",
    path: `/${place}`,
  })),
  { name: "empty-first-product", opened: "nothing", path: "/book/first", act: press("Keep it and see what it costs") },
  { name: "not-found", opened: DEMO, path: "/nowhere" },
  { name: "find-nothing", opened: DEMO, path: "/find?q=zzz" },
  { name: "material-open", opened: DEMO, path: "/shelf?open=m-calendula" },
  { name: "week-planning", opened: DEMO, path: "/week?plan=run" },
  { name: "week-refused", opened: DEMO, path: "/week?plan=run", act: press("Plan it") },
  { name: "form-refused", opened: DEMO, path: "/book/materials/new", act: press("Keep the material") },
  { name: "receive-refused", opened: DEMO, path: "/shelf/receive?order=po-1", act: press("Receive it") },
  { name: "count-differences", opened: DEMO, path: "/shelf/count", act: press("Show the differences") },
];
