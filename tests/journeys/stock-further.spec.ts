/**
 * A maker says what was spilt, counts finished units and a past day, and finds lots that are on no list. The workshop is
 * invented; its figures are worked by hand beside each check, by the rules named there.
 */
import type { Page } from "@playwright/test";
import { expect, test } from "./fixtures";

test.use({ opened: "tests/journeys/week-workshop.json" });

const finding = (page: Page) => page.locator(".finding");
const close = (page: Page) => page.getByRole("button", { name: "Close it as made, drawing this" }).click();

test("What was spilt beside a batch is lost with its cost; finished units are counted, and a past day", async ({
  page,
}) => {
  await page.goto("/week/make/~r1");
  await page.getByText("Something was spilt or broken beside the batch").click();
  const spilt = page.getByLabel("Spilt of Oat kernel oil, lot L2, g");
  await spilt.fill("30 kg");
  await close(page);
  await expect(spilt).toHaveAccessibleDescription(/Asks for 30,454\.2.g; there is 20,000.g/);
  await spilt.fill("50");
  await close(page);
  // 504.2 g of L2, 240.00 for 20 kg, are 6.05; 50 g of them are 0.60 (LEDGER-7, LEDGER-12)
  await expect(
    page.getByText(/Spilt or broken beside the batch, and lost: 50.g of Oat kernel oil, lot L2, worth £0.60/),
  ).toBeVisible();

  await page.goto("/shelf/count");
  const units = page.getByRole("row", { name: /^Plain oil/ });
  await units.getByRole("textbox", { name: /^Counted/ }).fill("9.5");
  await page.getByLabel("Why it was counted").fill("one is missing");
  await page.getByRole("button", { name: "Show the differences" }).click();
  await expect(units.getByRole("textbox")).toHaveAccessibleDescription(/whole number/);
  await expect(units.getByRole("textbox")).toHaveValue("9.5");
  await units.getByRole("textbox").fill("9");
  await page.getByRole("button", { name: "Keep the count" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /^Counted, Wed.25.Nov/ })).toBeVisible();
  await expect(page.getByRole("row", { name: /^Plain oil.*from finished stock/ })).toContainText(/1.unit/);

  await page.goto("/shelf/count");
  await page.getByLabel("Counted at the end of").fill("2026-11-20");
  await page.getByRole("button", { name: "Count for this day" }).click();
  await expect(finding(page)).toContainText("as they stood at the end of Friday 20 November");
  await expect(page.getByRole("row", { name: /^Plain oil/ })).toHaveCount(0);
  const oil = page
    .getByRole("row", { name: /Oat kernel oil, lot L1/ })
    .getByRole("textbox", { name: /^Balance shows/ });
  await oil.fill("590");
  await page.getByLabel("Why it was counted").fill("written down late");
  await page.getByRole("button", { name: "Keep the count" }).click();
  // All 600 g of L1 went into the run of 25 November (LEDGER-4, LEDGER-26).
  await expect(oil).toHaveAccessibleDescription(/would be missing: 10.g at the end of Wed.25.Nov/);
  await expect(oil).toHaveValue("590");
  await oil.fill("610");
  await page.getByRole("button", { name: "Keep the count" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /^Counted, Fri.20.Nov/ })).toBeVisible();
});

test("A lot of a batch that failed keeps its page, and an unknown one is said to be unknown", async ({
  page,
  expectFault,
}) => {
  await page.goto("/week/make/~r1");
  await page.getByLabel("Units that came out").fill("0");
  await close(page);
  await expect(finding(page)).toContainText("The batch failed");
  await page.getByRole("link", { name: "The posting with its entries" }).click();
  await page
    .getByRole("link", { name: /^Plain oil, lot/ })
    .first()
    .click();
  await expect(finding(page)).toContainText("It is on no list: its batch failed");
  await expect(page.getByRole("table", { name: "Lots that went into it" })).toContainText("Oat kernel oil");
  await page.getByRole("link", { name: "Jar, 200 g" }).click();
  await expect(page.getByRole("row", { name: /^Finished lot .* lost/ })).toContainText("10 pieces");

  expectFault(/404/);
  await page.goto("/shelf/lots/~nowhere");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("No such lot");
  await expect(finding(page)).toContainText("No lot of a material was ever kept under this number");
});
