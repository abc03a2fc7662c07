/** From an empty workshop to the price of a jar. The figures are worked by hand beside each check. */
import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";
import { expectChosen, type Hand, KEYBOARD, MOUSE } from "./hands";

test.use({ opened: "nothing" });

async function begin(page: Page, { write, press }: Hand): Promise<void> {
  await page.goto("/");
  await write(page, "Name of the workshop", "Merrow bench");
  await press(page, "Begin with an empty workshop");
  await expect(page.getByText("Nothing is in this workshop yet.")).toBeVisible();
}

async function add(page: Page, { press }: Hand, section: string, what: string): Promise<void> {
  await press(page, "Book");
  await expect(page.getByRole("heading", { level: 1, name: "The Book" })).toBeVisible();
  await press(page, section);
  await expect(page.getByRole("heading", { level: 1, name: section, exact: true })).toBeVisible();
  await press(page, what);
  await expect(page.getByRole("heading", { level: 1, name: what })).toBeVisible();
}

const kept = (page: Page, name: string) =>
  expect(page.getByRole("row").filter({ has: page.getByRole("link", { name, exact: true }) })).toContainText("kept");

for (const hand of [MOUSE, KEYBOARD]) {
  test(`By ${hand.name}, a maker builds a workshop of two materials, a premix, a formula and a product, and prices it`, async ({
    page,
  }) => {
    const { press, write, choose } = hand;
    await begin(page, hand);

    await add(page, hand, "Suppliers", "Add a supplier");
    await write(page, "Name", "Hollin Wharf");
    await press(page, "Keep the supplier");
    await kept(page, "Hollin Wharf");

    await add(page, hand, "Materials", "Add a material");
    await write(page, "Name", "Jojoba oil");
    await write(page, "Density at 20 °C", "0,9");
    await press(page, "Keep it and add another");
    await expect(page.getByText("Kept: Jojoba oil.")).toBeVisible();
    await write(page, "Name", "Shea butter");
    await press(page, "Keep it and add another");
    await expect(page.getByText("Kept: Shea butter.")).toBeVisible();
    await write(page, "Name", "Tin");
    await choose(page, "Kind", "Packaging");
    await choose(page, "Measured by", "Pieces");
    await press(page, "Keep the material");
    await kept(page, "Tin");

    await add(page, hand, "Offers", "Add an offer");
    for (const [material, pack, price] of [
      ["Jojoba oil", "500 ml", "£18"],
      ["Shea butter", "1kg", "9,00"],
      ["Tin", "24 pcs", "12"],
    ] as const) {
      await choose(page, "Material", material);
      await expectChosen(page.getByLabel("Supplier"), "Hollin Wharf");
      await write(page, "Pack", pack);
      await write(page, "Price of one pack", price);
      await press(page, "Keep it and add another");
      await expect(page.getByText("Here is room for another.")).toBeVisible();
      await expect(page.getByLabel("Pack", { exact: true })).toHaveValue("");
    }

    await add(page, hand, "Formulas", "Add a formula");
    await write(page, "Name", "Oil base");
    await choose(page, "Line 1, Material or premix", "Jojoba oil");
    await write(page, "Line 1, Percent by weight, %", "40");
    await expect(page.getByRole("status").filter({ hasText: "60 % is still missing" })).toBeVisible();
    await choose(page, "Line 2, Material or premix", "Shea butter");
    await write(page, "Line 2, Percent by weight, %", "60");
    await expect(page.getByText("100 %, as it must be")).toBeVisible();
    await press(page, "Keep it and add another");
    await expect(page.getByText("Kept: Oil base.")).toBeVisible();
    await write(page, "Name", "Hand balm");
    await choose(page, "Line 1, Material or premix", "Oil base");
    await write(page, "Line 1, Percent by weight, %", "50 %");
    await choose(page, "Line 2, Material or premix", "Shea butter");
    await write(page, "Line 2, Percent by weight, %", "qs");
    await press(page, "Keep the formula");
    await kept(page, "Hand balm");

    await add(page, hand, "Products", "Add a product");
    await write(page, "Name", "Hand balm, 50 g");
    await choose(page, "Formula", "Hand balm");
    await write(page, "Fill of one", "50 g");
    await choose(page, "Line 1, Material", "Tin");
    await write(page, "Line 1, Amount", "1 each");
    await press(page, "Keep the product");
    await kept(page, "Hand balm, 50 g");

    await press(page, "Cost");
    await expect(page.getByRole("heading", { level: 1, name: "What each product costs" })).toBeVisible();
    await press(page, "Hand balm, 50 g");
    // Jojoba 20 % of 50 g at 18.00 ÷ (500 mL × 0.9 g/mL) is 0.40; shea 80 % at 9.00 ÷ 1 kg is 0.36; a tin 12 ÷ 24 is 0.50.
    await expect(page.getByText("One costs £1.26.")).toBeVisible();
    await expectAccessible(page);
  });
}

/** What a maker with a notebook presses and types, from a store with nothing in it to the price. */
test("A maker writes the first product down in one form and sees what a jar costs", async ({ page }) => {
  await page.goto("/");
  let [clicks, keys] = [0, 0];
  const click = async (name: string) => {
    clicks += 1;
    await page.getByRole("link", { name }).or(page.getByRole("button", { name })).first().click();
  };
  const type = async (text: string) => {
    keys += text.length;
    await page.keyboard.type(text);
  };
  const tab = async (times = 1) => {
    for (let time = 0; time < times; time += 1) await page.keyboard.press("Tab");
    keys += times;
  };
  await click("Begin with the first product");
  await expect(page.getByRole("heading", { level: 1, name: "A product in one go" })).toBeVisible();
  await expect(page.getByLabel("Product", { exact: true })).toBeFocused();
  await type("Hand cream");
  await tab();
  await type("100 g");
  const lines = [
    ["Water", "qs", "10 kg", "10", ""],
    ["Glycerin", "5", "1 L", "12.50", "1.25"],
    ["Preservative", "1", "100 g", "8", ""],
  ];
  for (const line of lines) {
    for (const text of line) {
      await tab();
      await type(text);
    }
    // Past the buttons of the row.
    const buttons = line === lines[0] || line === lines[2] ? 2 : 3;
    if (line !== lines[2]) await tab(buttons);
  }
  await expect(page.getByText("6 % and qs, which takes the 94 % that is left")).toBeVisible();
  clicks += 1;
  await page.getByLabel("Line 1, Jar, lid, label").click();
  await type("Jar");
  await tab();
  await type("50");
  await tab();
  await type("20");
  keys += 1;
  await page.keyboard.press("Enter");
  // 94 g × 0.001 + 5 g × 12.50 ÷ 1,250 g + 1 g × 0.08 + 20 ÷ 50 = 0.094 + 0.05 + 0.08 + 0.40
  await expect(page.getByText("One costs £0.62.")).toBeVisible();
  await expect(page.getByRole("heading", { level: 1, name: "Hand cream" })).toBeVisible();
  test.info().annotations.push({ type: "steps", description: `${String(clicks)} clicks, ${String(keys)} keys` });
  expect([clicks, keys]).toEqual([2, 100]);
  await expectAccessible(page);
});
