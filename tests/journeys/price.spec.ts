/**
 * Setting a price. What is kept in the demo is worked by hand in seed/WORKED.md: one conditioner costs 3.1371…;
 * to shops 6.80 − 3.1371 = 3.6629, to customers 13.50 ÷ 1.2 − 0.015 × 13.50 − 0.20 − 3.1371 = 7.7104.
 */
import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";
import { expectSoundAtEverySize } from "./every-size";

const PRODUCT = "/cost/p-conditioner";

const shops = (page: Page): Locator => page.getByLabel("To shops, without tax");
const customers = (page: Page): Locator => page.getByLabel("To customers, with tax");
const set = (page: Page): Locator => page.getByRole("button", { name: "Set the prices" });

/** The reckoning under one of the two fields. */
const slip = (field: Locator): Locator => field.locator("xpath=ancestor::div[contains(@class, 'field')][2]//dl");
const line = (field: Locator, name: string): Locator =>
  slip(field)
    .locator("div")
    .filter({ has: field.page().getByText(name, { exact: true }) });

/** What the store holds, as the file that is saved from it. */
async function storedPrices(page: Page): Promise<readonly (string | undefined)[]> {
  const file = (await (await page.request.get("/workshop-file")).json()) as {
    readonly products: readonly {
      readonly id: string;
      readonly priceToShops?: string;
      readonly priceToCustomers?: string;
    }[];
  };
  const product = file.products.find(({ id }) => id === "p-conditioner");
  return [product?.priceToShops, product?.priceToCustomers];
}

// Each of these changes the demo, so each begins with one of its own.
test.describe("with a workshop of its own", () => {
  test.use({ opened: "./seed/demo-workshop.json" });

  test("A maker types a price, sees what is kept at once, sets it, and takes it back", async ({ page }) => {
    await page.goto(PRODUCT);
    await expect(line(shops(page), "Kept")).toHaveText("Kept £3.66");
    await expect(line(customers(page), "Kept")).toHaveText("Kept £7.71");

    await shops(page).fill("7,5");
    // 7.50 − 3.1371 = 4.3629; 4.3629 ÷ 7.50 = 58.17 %; 4.3629 ÷ 3.1371 = 139.07 %.
    await expect(line(shops(page), "Kept")).toHaveText("Keptwas £3.66 £4.36");
    await expect(line(shops(page), "Margin")).toContainText("58.2\u00a0%");
    await expect(line(shops(page), "Markup")).toContainText("139.1\u00a0%");
    expect(await storedPrices(page)).toEqual(["6.80", "13.50"]);

    await set(page).click();
    await expect(page.getByText("Prices set")).toBeVisible();
    await expect(shops(page)).toHaveValue("7.50");
    await expect(line(shops(page), "Price")).toHaveText("Pricewas £6.80 £7.50");
    await expect(line(shops(page), "Kept")).toHaveText("Keptwas £3.66 £4.36");
    await expect(page.getByText("Sold to shops at £7.50 you keep £4.36")).toBeVisible();
    expect(await storedPrices(page)).toEqual(["7.50", "13.50"]);
    await expectAccessible(page);

    await page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: "Cost" }).click();
    const row = page.getByRole("row").filter({ has: page.getByRole("rowheader", { name: "Conditioner, 200 g jar" }) });
    await expect(row).toContainText(/£4\.36.*was £3\.66/);
    await page.goBack();
    await shops(page).fill("8");
    await set(page).click();
    await page.getByRole("button", { name: "Take it back: £7.50 to shops" }).click();
    await expect(page.getByText("As it was before")).toBeVisible();
    await expect(shops(page)).toHaveValue("7.50");
    expect(await storedPrices(page)).toEqual(["7.50", "13.50"]);
  });

  test("A maker sets a price with the keyboard alone, and clears one", async ({ page }) => {
    await page.goto(PRODUCT);
    await customers(page).focus();
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type("£14.40");
    // 14.40 ÷ 1.2 − 0.216 − 0.20 − 3.1371 = 8.4469.
    await expect(line(customers(page), "Kept")).toContainText("£8.45");
    await page.keyboard.press("Enter");
    await expect(page.getByText("Prices set")).toBeVisible();
    expect(await storedPrices(page)).toEqual(["6.80", "14.40"]);
    await shops(page).fill("");
    await expect(line(shops(page), "Kept")).toContainText("not known");
    await set(page).click();
    await expect(page.getByText("No price to shops is set, so nothing is kept that could change.")).toBeVisible();
    expect(await storedPrices(page)).toEqual([undefined, "14.40"]);
  });

  test("What is no price is refused at its field, and nothing typed is lost", async ({ page }) => {
    await page.goto(PRODUCT);
    for (const [typed, told] of [
      ["1,500", /can be read two ways; write 1500 or 1\.5/],
      ["-4", /must not be below zero/i],
      ["0", /must be above zero/i],
      ["€7", /is not the workshop's currency/],
      ["7.1234567", /has more than 6 decimals/],
      ["9".repeat(40), /out of range/i],
      ["<script>alert(1)</script>", /must be a number/i],
    ] as const) {
      await shops(page).fill(typed);
      await customers(page).fill("15");
      await set(page).click();
      await expect(shops(page)).toHaveAttribute("aria-invalid", "true");
      await expect(shops(page)).toHaveAccessibleDescription(told);
      await expect(shops(page)).toHaveValue(typed);
      await expect(customers(page)).toHaveValue("15");
    }
    await expectAccessible(page);
    expect(await storedPrices(page)).toEqual(["6.80", "13.50"]);
    await page.reload();
    await expect(page.getByText("What you had typed here before is back.")).toBeVisible();
    await expect(customers(page)).toHaveValue("15");
    await page.getByRole("button", { name: "Clear what I typed" }).click();
    await expect(customers(page)).toHaveValue("13.50");
  });

  test("A price that was changed in another tab is told and not overwritten", async ({ page, context }) => {
    await page.goto(PRODUCT);
    const other = await context.newPage();
    await other.goto(PRODUCT);
    await shops(other).fill("9");
    await set(other).click();
    await expect(other.getByText("Prices set")).toBeVisible();

    await shops(page).fill("8");
    await set(page).click();
    const told = page.getByRole("alert").filter({ hasText: "Changed meanwhile" });
    await expect(told).toContainText("The price to shops is now £9.00");
    await expect(shops(page)).toHaveValue("8");
    expect(await storedPrices(page)).toEqual(["9.00", "13.50"]);
    await expectAccessible(page);
    await set(page).click();
    await expect(page.getByText("Prices set")).toBeVisible();
    expect(await storedPrices(page)).toEqual(["8.00", "13.50"]);
  });

  test("What came back after a reload does not overwrite what another tab has set meanwhile", async ({
    page,
    context,
  }) => {
    await page.goto(PRODUCT);
    await shops(page).fill("5.55");
    await page.waitForFunction(() => Object.values(sessionStorage).some((kept) => String(kept).includes("5.55")));
    const other = await context.newPage();
    await other.goto(PRODUCT);
    await shops(other).fill("8.88");
    await set(other).click();
    await expect(other.getByText("Prices set")).toBeVisible();
    await page.reload();
    await expect(page.getByText("What you had typed here before is back.")).toBeVisible();
    await expect(shops(page)).toHaveValue("5.55");
    await set(page).click();
    await expect(page.getByRole("heading", { name: "Changed meanwhile, in another tab or window" })).toBeVisible();
    expect(await storedPrices(page)).toEqual(["8.88", "13.50"]);

    // What was set is kept in the books, and no more in the tab.
    await set(page).click();
    await expect(page.getByText("Prices set")).toBeVisible();
    await shops(other).fill("6.80");
    await set(other).click();
    await expect(other.getByText(/Prices set|Changed meanwhile/)).toBeVisible();
    await set(other).click();
    await expect(other.getByText(/Prices set|These are the prices already/)).toBeVisible();
    await page.reload();
    await expect(shops(page)).toHaveValue("6.80");
    expect(await storedPrices(page)).toEqual(["6.80", "13.50"]);
  });

  test("A maker takes the price that a margin asks for", async ({ page }) => {
    await page.goto(PRODUCT);
    await page.getByLabel("Margin wanted, %").fill("60");
    await page.getByRole("button", { name: "Work out the prices" }).click();
    await customers(page).fill("15");
    await page.getByRole("button", { name: "Set £7.85 to shops" }).click();
    await expect(page.getByText("It is set.")).toBeVisible();
    await expect(shops(page)).toHaveValue("7.85");
    // 7.85 − 3.1371 = 4.7129, which is 60.04 %.
    await expect(line(shops(page), "Margin")).toContainText("60.0\u00a0%");
    // What was typed beside it and not sent is still there.
    await expect(customers(page)).toHaveValue("15");
    expect(await storedPrices(page)).toEqual(["7.85", "13.50"]);
  });

  test("Sent twice, a price is set once", async ({ page }) => {
    await page.goto(PRODUCT);
    await shops(page).fill("7.25");
    await set(page).dblclick();
    await expect(page.getByText(/Prices set|These are the prices already/)).toBeVisible();
    await set(page).click();
    await expect(page.getByText("These are the prices already.")).toBeVisible();
    expect(await storedPrices(page)).toEqual(["7.25", "13.50"]);
  });

  test.describe("without scripts", () => {
    test.use({ javaScriptEnabled: false });

    test("A maker whose browser runs no scripts sets prices, is refused, and takes one back", async ({
      page,
      expectFault,
    }) => {
      expectFault(/request failed: .*\/_next\/static\/chunks\/[^/]*\.js: csp/);
      await page.goto(PRODUCT);
      await shops(page).fill("1,500");
      await set(page).click();
      await expect(page.getByText("can be read two ways; write 1500 or 1.5")).toBeVisible();
      await expect(shops(page)).toHaveValue("1,500");

      await shops(page).fill("7.5");
      await set(page).click();
      await expect(page.getByText("Prices set")).toBeVisible();
      await expect(line(shops(page), "Kept")).toHaveText("Keptwas £3.66 £4.36");
      expect(await storedPrices(page)).toEqual(["7.50", "13.50"]);

      await page.getByRole("button", { name: "Take it back: £6.80 to shops" }).click();
      await expect(shops(page)).toHaveValue("6.80");
      expect(await storedPrices(page)).toEqual(["6.80", "13.50"]);

      await page.getByText("Show as table").click();
      await expect(page.getByRole("table", { name: "Change of what is kept of one sold to shops" })).toBeVisible();
    });
  });
});

test("A maker sees what moves what is kept, as a chart and as a table", async ({ page }) => {
  await page.goto(PRODUCT);
  const chart = page.getByRole("img", { name: /^What is kept of one sold to shops where one thing is a tenth/ });
  await chart.scrollIntoViewIfNeeded();
  const height = (await chart.boundingBox())?.height;
  await expect(chart.getByText("Price to shops")).toBeVisible();
  await expect(chart.getByText("−£0.68")).toBeVisible();
  await expect(chart.getByText("+£0.68")).toBeVisible();
  expect((await chart.boundingBox())?.height).toBe(height);

  await page.getByText("Show as table").click();
  const table = page.getByRole("table", { name: "Change of what is kept of one sold to shops" });
  const row = (name: string) => table.getByRole("row").filter({ has: page.getByRole("rowheader", { name }) });
  // Labour is 1.00 of one unit, so that a tenth of its rate is 0.10; a tenth of 6.80 is 0.68.
  await expect(row("Labour")).toHaveText(/£0\.10.*−£0\.10/);
  await expect(row("Price to shops")).toHaveText(/−£0\.68.*\+£0\.68/);
  await expectAccessible(page);

  await page.getByRole("link", { name: "Sold to customers" }).click();
  // 1.35 ÷ 1.2 − 0.015 × 1.35 = 1.1048.
  await expect(page.getByRole("img", { name: /^What is kept of one sold to customers/ })).toContainText("+£1.10");
});

test("A maker asks how many units pay a month", async ({ page }) => {
  await page.goto(PRODUCT);
  await page.getByLabel("Costs of a month").fill("300");
  await page.getByRole("button", { name: "Work out the units" }).click();
  // 300 ÷ 3.6629 = 81.90; 300 ÷ 7.7104 = 38.91.
  await expect(page.getByText("82 sold to shops at £6.80 pay it.")).toBeVisible();
  await expect(page.getByText("39 sold to customers at £13.50 pay it.")).toBeVisible();
  await page.getByLabel("Costs of a month").fill("lots");
  await page.getByRole("button", { name: "Work out the units" }).click();
  await expect(page.getByLabel("Costs of a month")).toHaveAttribute("aria-invalid", "true");
});

test("The price is set at every width without moving sideways or cutting a word", async ({ page }) => {
  await page.goto(`${PRODUCT}?margin=60&month=300`);
  const chart = page.getByRole("img", { name: /^What is kept of one/ });
  await chart.scrollIntoViewIfNeeded();
  await expect(chart.getByText("+£0.68")).toBeVisible();
  await expectSoundAtEverySize(page);
});
