import type { Page } from "@playwright/test";
import { axeFindings, expect, expectAccessible, test } from "./fixtures";
import { expectWhole } from "./layout";

const rowOf = (page: Page, name: string) =>
  page.getByRole("row").filter({ has: page.getByRole("rowheader", { name }) });

test("A maker sees what every product costs and what is kept of its prices", async ({ page }) => {
  await page.goto("/cost");
  await expect(page.getByRole("heading", { level: 1, name: "What each product costs" })).toBeVisible();
  // Worked by hand in seed/WORKED.md: 1.0698 + 0.8673 + 1.0000 + 0.2000 = 3.1371; 6.80 − 3.1371 = 3.6629.
  await expect(rowOf(page, "Conditioner, 200 g jar")).toContainText(/£1\.07.*£0\.87.*£1\.00.*£0\.20.*£3\.14.*£3\.66/);
  await expect(rowOf(page, "Sugar scrub")).toContainText("No price for Apricot stone powder");
  await expect(rowOf(page, "Sugar scrub")).toContainText(/not known.*£0\.85/);
  await expectAccessible(page);
});

test("A maker opens a product and follows a figure down to the pack and its density", async ({ page }) => {
  await page.goto("/cost");
  await page.getByRole("link", { name: "Conditioner, 200 g jar" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Conditioner, 200 g jar" })).toBeVisible();
  await expect(page.getByText("One costs £3.14.")).toBeVisible();

  const water = rowOf(page, "Water, deionised");
  await expect(water).toContainText(/81\.40.%.*162\.80.g.*5.L, £4\.00.*£0\.000801.*£0\.1305/);
  const working = page.getByText("5 L × 0.9982 g/mL".replaceAll(" ", "\u00a0").replace("\u00a0×\u00a0", " × "));
  await expect(working).toBeHidden();
  await water.getByText("Water, deionised").click();
  await expect(working).toBeVisible();
  await expect(page.getByText("phase A: 81.00\u00a0% (the rest)")).toBeVisible();
  await expect(page.getByText("0.50\u00a0% × 80.00\u00a0% = 0.40\u00a0%")).toBeVisible();
  await expectAccessible(page);
});

test("A maker walks through the rows with the keyboard alone", async ({ page }) => {
  await page.goto("/cost/p-conditioner");
  const [water, glycerin] = ["Water, deionised", "Glycerin"].map((name) =>
    rowOf(page, name).locator("summary").filter({ hasText: name }),
  );
  if (!water || !glycerin) throw new Error("two rows were asked for");
  await water.focus();
  await page.keyboard.press("ArrowRight");
  await expect(page.getByText("for one gram").first()).toBeVisible();
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByText("for one gram").first()).toBeHidden();
  await page.keyboard.press("ArrowDown");
  await expect(glycerin).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByText("5\u00a0kg from Imagined Ingredients")).toBeVisible();
});

test("A maker compares buying now, the shelf and the average paid", async ({ page }) => {
  await page.goto("/cost/p-conditioner");
  const bases = page.getByRole("navigation", { name: "Ingredient and packaging prices" });
  await expect(bases.getByRole("link", { name: "If bought now, £3.14" })).toHaveAttribute("aria-current", "true");
  await expect(page.getByText("£3.1371 before rounding to the coin")).toBeVisible();

  await bases.getByRole("link", { name: "Average paid, £3.16" }).click();
  await expect(page.getByText("£3.1626 before rounding to the coin")).toBeVisible();

  await bases.getByRole("link", { name: "From the shelf, £3.14" }).click();
  await expect(page.getByText("£3.1413 before rounding to the coin")).toBeVisible();
  await rowOf(page, "Water, deionised").getByText("Water, deionised").click();
  await expect(page.getByText("4.12\u00a0kg of lot L01, which cost £41.60 for 52.0\u00a0kg")).toBeVisible();
  await expect(page.getByText("what a run of 24 draws today, first expired first out").first()).toBeVisible();
});

test("A maker asks which price a margin needs, and is told where none reaches it", async ({ page }) => {
  await page.goto("/cost/p-conditioner");
  await page.getByLabel("Margin wanted, %").fill("60");
  await page.getByRole("button", { name: "Work out the prices" }).click();
  // 3.13710… ÷ 0.4 = 7.8427…; (3.13710… + 0.20) ÷ (0.4 − 0.015 × 1.2) × 1.2 = 10.4830…
  await expect(page.getByText("Of shops ask £7.85")).toBeVisible();
  await expect(page.getByText("Of customers ask £10.49")).toBeVisible();

  await page.getByLabel("Margin wanted, %").fill("99");
  await page.getByRole("button", { name: "Work out the prices" }).click();
  await expect(page.getByText("Of customers: no price reaches 99.0\u00a0%")).toBeVisible();

  await page.getByLabel("Margin wanted, %").fill("much");
  await page.getByRole("button", { name: "Work out the prices" }).click();
  await expect(page.getByText("Write a percent from 0 to less than 100")).toBeVisible();
  await expect(page.getByLabel("Margin wanted, %")).toHaveValue("much");
});

test("A product that cannot be priced says which material is in the way and counts nothing as zero", async ({
  page,
}) => {
  await page.goto("/cost/p-scrub");
  await expect(page.getByText("What one costs is not known: nothing prices Apricot stone powder.")).toBeVisible();
  await expect(rowOf(page, "Apricot stone powder")).toContainText(/no offer, no usable lot.*not known.*not known/);
  await expect(rowOf(page, "Sucrose")).toContainText("£0.1742");
  await expect(rowOf(page, "One unit")).toContainText("not known");
  await expectAccessible(page);
});

test("A product that is not there is said so", async ({ page, expectFault }) => {
  expectFault(/answer 404: .*\/cost\/nothing/);
  expectFault(/console error: .*404/);
  await page.goto("/cost/nothing");
  await expect(page.getByRole("heading", { level: 1, name: "No such product" })).toBeVisible();
  await page.getByRole("link", { name: "all products" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "What each product costs" })).toBeVisible();
});

test("Cost with its working open is whole and accessible on a phone, and on a dark tablet", async ({ page }) => {
  for (const address of ["/cost", "/cost/p-cream"]) {
    await page.emulateMedia({ colorScheme: "light" });
    await page.setViewportSize({ width: 390, height: 900 });
    await page.goto(address);
    await page
      .locator("summary")
      .first()
      .or(page.getByRole("heading", { level: 1 }))
      .first()
      .click();
    await expectWhole(page);
    await expectAccessible(page);
    await page.emulateMedia({ colorScheme: "dark" });
    await page.setViewportSize({ width: 820, height: 900 });
    await expectWhole(page);
    expect.soft(await axeFindings(page, ["color-contrast"]), "contrast in the dark").toEqual([]);
  }
});
