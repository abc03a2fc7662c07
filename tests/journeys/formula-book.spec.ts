/**
 * The formula book in the browser. The figures of the two preservatives are common practice, without a source; the
 * materials and prices are the demo's, which are invented.
 */
import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./fixtures";

test.use({ opened: "./seed/demo-workshop.json" });

// What helps to fill a field stands in its label, after its name.
const field = (page: Page, name: string): Locator => page.getByRole("textbox", { name: new RegExp(`^${name}`) });
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();
const checks = (page: Page): Locator => page.getByRole("region", { name: /^Checks/ });

test("A maker writes down what a formula needs, and the checks follow what is typed", async ({ page }) => {
  await page.goto("/book/materials/m-preservative");
  await page.getByLabel("In a formula it is").selectOption("A preservative");
  await field(page, "Add below").fill("104 °F");
  await field(page, "Works up to pH").fill("6");
  await press(page, "Keep the material");
  await expect(page).toHaveURL(/\/book\/materials\?kept=/);
  await page.goto("/book/materials/m-preservative");
  // 104 °F is 40 °C: kept as what it means.
  await expect(field(page, "Add below")).toHaveValue("40");

  await page.goto("/book/formulas/f-mist");
  await expect(checks(page)).toContainText("no target is written");
  await field(page, "Target pH from").fill("6.5");
  await expect(checks(page)).toContainText("The target pH is outside the window of Preservative blend");
  await field(page, "Target pH from").fill("4");
  await field(page, "Target pH up to").fill("4.5");
  await expect(checks(page)).not.toContainText("The target pH is outside");
  await field(page, "Phase 1, Name").fill("A");
  await field(page, "Phase 1, Goes in at, °C").fill("45");
  await expect(checks(page)).toContainText("Preservative blend goes in too hot");
  await expect(checks(page)).toContainText("45 °C; it is to be added below 40 °C");
  await field(page, "Phase 1, Goes in at, °C").fill("35");
  await expect(checks(page)).not.toContainText("Preservative blend goes in too hot");
  await press(page, "Keep the formula");
  await expect(page).toHaveURL(/\/book\/formulas\?kept=/);
});

test("A maker scales a formula to what is left of one material, and reads what to weigh", async ({ page }) => {
  await page.goto("/book/formulas/f-conditioner");
  await page.getByRole("link", { name: "A batch of it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("A batch of Rinse-off conditioner");
  await page.getByLabel("Or as far as this goes").selectOption("Cationic emulsifier flakes");
  await field(page, "Of which is left").fill("120 g");
  await press(page, "Work it out");
  // 120 g at 6 % make 2 kg.
  await expect(page.getByText("One batch of 2,000 g")).toBeVisible();
  const row = page.getByRole("row").filter({ hasText: "Cationic emulsifier flakes" });
  await expect(row).toContainText("120 g");
  await field(page, "Of which is left").fill("120 mL");
  await press(page, "Work it out");
  await expect(page.getByText("120 mL is a volume", { exact: false })).toBeVisible();
});

test("A maker looks at a swap before anything is changed, and keeps it as a draft", async ({ page }) => {
  await page.goto("/book/formulas/f-conditioner");
  await page.getByRole("link", { name: "Swap a material" }).click();
  await page.getByRole("combobox", { name: "Take out", exact: true }).selectOption("Panthenol");
  await page.getByRole("combobox", { name: "Put in", exact: true }).selectOption("Isopropyl myristate");
  await press(page, "Look at it");
  await expect(page.getByRole("region", { name: /^What changes/ })).toContainText("inside its use range");
  await expect(page.getByRole("region", { name: /^Left over/ })).toContainText("Hand cream");
  await press(page, "Keep it as a draft");
  await expect(page).toHaveURL(/\/book\/formulas\?kept=/);
  await expect(page.getByText("Rinse-off conditioner with Isopropyl myristate").first()).toBeVisible();
});
