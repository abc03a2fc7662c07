/** States of pages that an address alone does not bring about, for the pictures: how each is come to. */
import type { Page } from "@playwright/test";
import { BENCH_STATES } from "./pictured-at-bench";
import type { PicturedState } from "./pictured-state";
import type { Opened } from "./server";

const DEMO = "seed/demo-workshop.json";

export const press = (name: string) => async (page: Page) => {
  await page.getByRole("button", { name, exact: true }).first().click();
  await page.waitForLoadState("networkidle");
};

/** Presses, and waits for the refusal that stands at the form's head. */
const pressRefused = (name: string) => async (page: Page) => {
  await press(name)(page);
  await page.getByRole("alert").first().waitFor();
};

async function begunEmpty(page: Page): Promise<void> {
  const begin = page.getByRole("button", { name: "Begin with an empty workshop" });
  if (await begin.isVisible()) await begin.click();
  await page.getByText("Nothing is in this workshop yet.").waitFor();
}

async function faultyFile(page: Page): Promise<void> {
  const text = '{"format":"stillroom-workshop","version":1,"workshop":{"name":"x"},"suppliers":[],"lots":3}';
  await page
    .getByRole("button", { name: "Workshop file" })
    .setInputFiles({ name: "faulty.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await pressRefused("Open this file")(page);
}

/** Opens all that opens on the page. */
const openAll = async (page: Page): Promise<void> => {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
};

/** The list of a choice, open at what was typed of a name. */
const choosing = (label: string, typed: string) => async (page: Page) => {
  const field = page.getByRole("combobox", { name: label }).first();
  await field.click();
  await field.pressSequentially(typed);
  await page.getByRole("listbox").first().waitFor();
};

/** Another tab keeps the supplier while this one is being written. */
async function changedMeanwhile(page: Page): Promise<void> {
  await page.getByLabel("Delivery of one order").fill("6.50");
  const other = await page.context().newPage();
  await other.goto(page.url());
  await other.getByLabel("Delivery of one order").fill("5.95");
  await press("Keep the supplier")(other);
  await other.getByRole("row").filter({ hasText: "kept" }).waitFor();
  await other.close();
  await pressRefused("Keep the supplier")(page);
}

/** A form that meets an app which does not answer, since it was stopped. */
async function unanswered(page: Page): Promise<void> {
  await page.getByLabel("Delivery of one order").fill("6.50");
  await page.route("**/*", (route) => route.abort());
  await page.getByRole("button", { name: "Keep the supplier" }).click();
  await page.getByText("Stillroom does not answer.").waitFor();
}

/** The app fails at what is asked of it. */
const failed = (pressed: string) => async (page: Page) => {
  await page.route("**/*", (route) => {
    const isAsked = route.request().method() === "POST";
    return isAsked ? route.fulfill({ status: 500, body: "failed" }) : route.continue();
  });
  await page.getByRole("button", { name: pressed }).click();
  await page.getByRole("alert").first().waitFor();
};

async function counted(page: Page): Promise<void> {
  await page.getByLabel(/^Balance shows, g, Beeswax/).fill("1080");
  await page.getByLabel("Why it was counted").fill("The month’s end");
  await press("Show the differences")(page);
  await page.locator(".form-shown, .form-summary").first().waitFor();
}

async function inPounds(page: Page): Promise<void> {
  await page.getByLabel("Weights").selectOption({ index: 2 });
  await page.getByLabel("Numbers, money and dates as in").selectOption({ index: 2 });
  await press("Write figures like this")(page);
  await page.goto(new URL("/shelf", page.url()).href, { waitUntil: "networkidle" });
}

const of = (opened: Opened, states: Readonly<Record<string, string>>): readonly PicturedState[] =>
  Object.entries(states).map(([name, path]) => ({ name, opened, path }));

/** In this order: what one of them does to its store stays for those after it. */
export const STATES: readonly PicturedState[] = [
  { name: "begin", opened: "nothing", path: "/" },
  { name: "begin-refused", opened: "nothing", path: "/", act: press("Open this file") },
  { name: "begin-faulty-file", opened: "nothing", path: "/", act: faultyFile },
  { name: "empty-today", opened: "nothing", path: "/", act: begunEmpty },
  ...["cost", "week", "shelf", "buying", "bench", "book", "find", "book/formulas", "shelf/count", "shelf/receive"].map(
    (place): PicturedState => ({ name: `empty-${place.replace("/", "-")}`, opened: "nothing", path: `/${place}` }),
  ),
  { name: "empty-first-product", opened: "nothing", path: "/book/first", act: press("Keep it and see what it costs") },
  ...of(DEMO, {
    "not-found": "/nowhere",
    "find-nothing": "/find?q=zzz",
    "find-slip": "/find?q=calednula",
    "shelf-nothing": "/shelf?find=zzz",
    "material-open": "/shelf?open=m-calendula",
    "book-offers": "/book/offers",
    "book-lots": "/book/lots",
    "book-orders": "/book/orders",
    "book-suppliers": "/book/suppliers",
    "book-products": "/book/products",
    "book-formulas": "/book/formulas",
    "book-material": "/book/materials/m-calendula",
    "book-offer-new": "/book/offers/new",
    "book-supplier-new": "/book/suppliers/new",
    "book-lot-new": "/book/lots/new",
    "book-order-new": "/book/orders/new",
    "book-label-new": "/book/labels/new",
    "book-paper-new": "/book/papers/new",
    "book-compare": "/book/formulas/compare?first=f-conditioner&second=f-cream&product=p-conditioner",
    "shelf-receive": "/shelf/receive",
    "shelf-recall": "/shelf/recall",
    "shelf-finished-lot": "/shelf/finished/~F1",
    "lot-off": "/shelf/lots/L03?do=off",
    "week-short": "/week?of=2026-12-07&run=r10",
    "week-moving": "/week?lift=r02",
    "week-hours": "/week?hours=1",
    "week-make": "/week/make/~r01",
    "week-planning": "/week?plan=run",
  }),
  { name: "lot-posting", opened: DEMO, path: "/shelf/lots/L03", act: followed("Opened the books") },
  { name: "product-opened", opened: DEMO, path: "/cost/p-conditioner", act: openAll },
  { name: "buying-opened", opened: DEMO, path: "/buying", act: openAll },
  {
    name: "choice-open",
    opened: DEMO,
    path: "/book/formulas/f-conditioner",
    act: choosing("Material or premix", "gly"),
  },
  { name: "week-refused", opened: DEMO, path: "/week?plan=run", act: press("Plan it") },
  { name: "form-refused", opened: DEMO, path: "/book/materials/new", act: pressRefused("Keep the material") },
  { name: "receive-refused", opened: DEMO, path: "/shelf/receive?order=po-1", act: pressRefused("Receive it") },
  { name: "count-refused", opened: DEMO, path: "/shelf/count", act: pressRefused("Show the differences") },
  { name: "count-differences", opened: DEMO, path: "/shelf/count", act: counted },
  { name: "form-changed-meanwhile", opened: DEMO, path: "/book/suppliers/s-ingredients", act: changedMeanwhile },
  { name: "page-fault", opened: DEMO, path: "/book/screen", act: failed("Write figures like this") },
  { name: "app-fault", opened: DEMO, path: "/book/screen", act: failed("Dark page") },
  { name: "away", opened: DEMO, path: "/book/suppliers/s-ingredients", act: unanswered },
  ...BENCH_STATES,
  { name: "shelf-in-pounds", opened: DEMO, path: "/book/screen", act: inPounds },
];

function followed(name: string) {
  return async (page: Page): Promise<void> => {
    await page.getByRole("link", { name, exact: true }).first().click();
    await page.waitForLoadState("networkidle");
  };
}
