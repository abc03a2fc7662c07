/** Labels, recalls and yields in the browser, in a small workshop. The workshop is invented. */
import type { Page } from "@playwright/test";
import { expect, test } from "./fixtures";

test.use({ opened: "tests/journeys/label-workshop.json" });

const title = (page: Page) => page.getByRole("heading", { level: 1 });
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();
const drawn = (page: Page) => page.getByRole("region", { name: /^True size/ }).getByRole("img");

/** Points of the pages of a printed page, whole. */
async function printedPages(page: Page): Promise<readonly string[]> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  return [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(
    ([, width, height]) => `${String(Math.round(Number(width)))} × ${String(Math.round(Number(height)))}`,
  );
}

test("A maker prints the label of a batch, at true size on A4 and on Letter", async ({ page }) => {
  await page.goto("/book/products/p-cream");
  await page.getByRole("link", { name: "Its label", exact: true }).click();
  await expect(title(page)).toHaveText("The label of Night hand cream");
  await expect(page.getByText("One thing is missing")).toBeVisible();
  await page.getByLabel("Batch", { exact: true }).selectOption({ index: 1 });
  await page.getByLabel("Starting at label").fill("20");
  await page.getByLabel("How many").fill("4");
  await press(page, "Show the labels");
  await expect(page.getByText("Of what the European Union asks, all that the app can check is there.")).toBeVisible();
  await expect(page.getByText("Local rules and a qualified assessor decide")).toBeVisible();
  const says = await drawn(page).getAttribute("aria-label");
  expect(says).toContain("Butyrospermum Parkii Butter, Glycerin");
  expect(says).toContain("Parfum, Dehydroacetic Acid, Linalool, Limonene");
  expect(says).toContain("Batch NHC-261120");
  // 63.5 × 38.1 mm of 96 pixels an inch.
  const box = await drawn(page).boundingBox();
  expect([box?.width, box?.height].map((side) => Math.round(side ?? 0))).toEqual([240, 144]);
  await expect(page.getByRole("img", { name: /^Sheet \d/ })).toHaveCount(2);
  expect(await printedPages(page)).toEqual(["595 × 842", "595 × 842"]);

  await page.goto("/book/labels/l-us/print?lot=NHC-261120&paper=letter-10&from=3&count=4");
  await expect(page.getByText("One thing is missing")).toBeVisible();
  await expect(page.getByText("an electronic address, for reports of harm")).toBeVisible();
  expect(await drawn(page).getAttribute("aria-label")).toContain("Net Wt 1.76\u00a0oz, 50\u00a0g");
  expect(await printedPages(page)).toEqual(["612 × 792"]);
});

test("A label that is too long for its paper says what does not fit", async ({ page }) => {
  await page.goto("/book/labels/l-eu/print?lot=NHC-261120&paper=small&from=66");
  await expect(page.getByText("There is no room for the ingredients")).toBeVisible();
  await expect(page.getByText("66 is no label of this sheet: it has 65")).toBeVisible();
});

test("A maker types a label for another market, and measures a sheet that is too wide", async ({ page }) => {
  await page.goto("/book/labels/new?product=p-cream");
  await expect(title(page)).toHaveText("Add a label");
  // Who answers for the product is as it stood on the last label.
  await expect(page.getByRole("textbox", { name: /^Responsible person/ })).toHaveValue("Invented Maker");
  await page.getByLabel("Sold in").selectOption("Great Britain");
  await page.getByRole("textbox", { name: /^GTIN/ }).fill("6291041500214");
  await press(page, "Keep the label");
  await expect(page.getByText("is no GTIN").first()).toBeVisible();
  await page.getByRole("textbox", { name: /^GTIN/ }).fill("6291041500213");
  await press(page, "Keep the label");
  await expect(page).toHaveURL(/\/book\/labels\?kept=/);
  await expect(page.getByRole("row", { name: /Great Britain/ })).toContainText("Night hand cream");

  await page.goto("/book/papers/a4-21");
  await expect(title(page)).toHaveText("21 on A4");
  await page.getByRole("textbox", { name: /^From the left edge/ }).fill("20");
  await press(page, "Keep the label sheet");
  await expect(page.getByText("go over the page to the right by 5.50 mm").first()).toBeVisible();
});

test("A recall says where all of a lot is, as a page and as rows", async ({ page }) => {
  await page.goto("/shelf/finished/~NHC-261120");
  await page.getByRole("link", { name: "Recall drill: where all of it is" }).click();
  await expect(title(page)).toHaveText("Recall of Night hand cream, lot NHC-261120");
  await expect(page.getByText("is accounted for")).toBeVisible();
  await expect(page.getByRole("row", { name: /in stock/ })).toContainText("18");
  const rows = await page.request.get("/shelf/recall/csv?lot=finished%3ANHC-261120");
  expect(rows.headers()["content-type"]).toContain("text/csv; charset=utf-8");
  expect(await rows.text()).toContain("NHC-261120,Night hand cream,,,,in stock,18,18,units,100\r\n");
  expect((await page.request.get("/shelf/recall/csv?lot=finished%3Agone")).status()).toBe(404);
});

test("What batches say of heel and loss is offered, and changes nothing by itself", async ({ page }) => {
  await page.goto("/book/products/p-cream");
  await expect(
    page.getByText("Once 3 batches are made, what is lost is told apart into heel and process loss."),
  ).toBeVisible();
  await page.goto("/book/products/p-cream?heel=12.3+g&processLoss=1.25");
  await expect(page.getByText("Nothing is changed until you keep the product.")).toBeVisible();
  await expect(page.getByRole("textbox", { name: /^Heel/ })).toHaveValue("12.3 g");
  await expect(page.getByRole("textbox", { name: /^Process loss/ })).toHaveValue("1.25");
});
