/** Figures of the week, the shelf, buying and the book open down to lots, packs, density and calendar. */
import { expect, test } from "./fixtures";

const OPENS = "How it comes about";

test("A maker opens how long a material lasts, when to order it, and what a gram of its pack costs", async ({
  page,
}) => {
  await page.goto("/shelf?open=m-btms");
  const row = page.locator("details", { hasText: "Cationic emulsifier flakes" }).first();
  await expect(row).toHaveAttribute("open", "");
  const lasts = row.getByText(OPENS, { exact: true }).last();
  await lasts.click();
  await expect(row.getByText("on the shelf and usable today", { exact: true })).toBeVisible();
  await expect(
    row.getByText(/^owed to runs at the end of .*, the first day on which one cannot be met$/),
  ).toBeVisible();
  await expect(row.getByText(/^the lead time of .*, its working days alone$/).last()).toBeVisible();
  await expect(row.getByText(/^Ordered on .*, the next working day, it would come .*, too late\.$/)).toBeVisible();
  await row.getByText("1 kg", { exact: true }).first().click();
  await expect(row.getByText("for one gram", { exact: true }).first()).toBeVisible();
  // What a locator has is looked for inside it.
  const used = page.getByText("Which runs use which lot", { exact: true });
  await row.locator("details", { has: used }).locator("summary").click();
  await expect(row.locator("details", { has: used }).locator("dl.working")).toContainText(
    /of lot .*(left at the plan’s end|goes out of date)/,
  );
});

test("A maker opens a line of an order to its packs, and the order to its calendar", async ({ page }) => {
  await page.goto("/buying");
  const order = page.locator("section.order", { hasText: "Castor oil" });
  const castor = order.getByRole("row").filter({ hasText: "Then enough" }).filter({ hasText: "948.8" });
  await order.getByText(/^Ordered today, comes /).click();
  await expect(order.getByText("it comes", { exact: true })).toBeVisible();
  await castor.getByText(OPENS).click();
  const [line, lasts] = [castor.locator("dl.working").first(), castor.locator("dl.working").last()];
  // 1 L at 0.9568 g/mL, less the 8 g that are lacking
  await expect(line.getByText(/^1.L × 0\.9568.g\/mL$/)).toBeVisible();
  await expect(line.getByText(/^948\.80.g$/)).toBeVisible();
  await expect(line.getByText(/^to buy: .*, the day with least$/)).toBeVisible();
  await expect(lasts.getByText(/^comes in .*, bought here$/)).toBeVisible();
});

test("A maker opens the value of stock on a day to its lots, and a lot to what happened to it", async ({ page }) => {
  await page.goto("/book/stock-value");
  await page.getByRole("link", { name: "Materials on the shelf and on hold", exact: true }).click();
  const lots = page.getByRole("table", { name: /lot by lot$/ });
  await expect(lots.getByRole("row", { name: /^Glycerin, lot L03/ })).toContainText("£14.30");
  await expect(lots.getByRole("row", { name: /^Together/ })).toContainText("£711.55");
  await lots.getByRole("link", { name: "Glycerin, lot L03", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Glycerin, lot L03" })).toBeVisible();
  await page.getByText(/a gram: how it comes about$/).click();
  await expect(page.getByText("for one gram", { exact: true })).toBeVisible();
});

test("A maker opens a price to what is kept of it, its margin and its markup", async ({ page }) => {
  await page.goto("/cost/p-conditioner");
  const shops = page.locator("div.field").filter({ has: page.getByLabel("To shops, without tax") });
  await shops.getByText(OPENS, { exact: true }).click();
  const working = shops.locator("dl.working");
  // 6.80 less 3.1371 is 3.6629, of which 6.80 and 3.1371 make 53.9 % and 116.8 %.
  await expect(working).toContainText("3.6629");
  await expect(working).toContainText(/53\.9.%margin/);
  await expect(working).toContainText(/116\.8.%markup/);
});
