/** A newcomer is led from an empty workshop to what a jar costs, and from there to what is still missing. */
import { expect, test } from "./fixtures";
import { expectChosen } from "./hands";

test.use({ opened: "nothing" });

test("A newcomer pastes a list, takes an offered density over, and is led to the packs that are missing", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByLabel("Name of the workshop").fill("Merrow bench");
  await page.getByRole("button", { name: "Begin with an empty workshop", exact: true }).click();
  await expect(page.getByText("Nothing is in this workshop yet.")).toBeVisible();
  await page.goto("/week");
  await page.getByRole("link", { name: "Write down the first product", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "A product in one go" })).toBeVisible();

  await page.getByLabel("Product", { exact: true }).fill("Foot balm");
  await page.getByLabel("Fill of one").fill("50 g");
  await page.getByText("Paste it as lines of text", { exact: true }).click();
  await page.getByLabel(/^One line for each material/).fill("Glycerin ..... 40 %\nBeeswax\tqs");
  await page.getByRole("button", { name: "Put the lines into the formula", exact: true }).click();
  const goesIn = page.getByRole("group", { name: "What goes in" });
  await expectChosen(goesIn.getByLabel("Line 1, Material", { exact: true }), "Glycerin");
  await goesIn.getByLabel("Line 1, Bought in packs of").fill("1 L");
  await goesIn.getByLabel("Line 1, Price of a pack").fill("12.613");
  const density = goesIn.getByLabel("Line 1, Density, g/mL");
  // Offered with its source, and not there before it is asked for.
  await expect(density).toHaveValue("");
  await expect(goesIn.getByText(/Glycerol at 20 °C; CRC Handbook/)).toBeVisible();
  await goesIn.getByRole("button", { name: "Use 1.2613 g/mL", exact: true }).click();
  await expect(density).toHaveValue("1.2613");
  await page.getByRole("button", { name: "Keep it and see what it costs", exact: true }).click();

  await expect(page.getByRole("heading", { level: 1, name: "Foot balm" })).toBeVisible();
  await page
    .getByText(/^What one costs is/)
    .getByRole("link", { name: "Beeswax", exact: true })
    .click();
  await expect(page.getByRole("heading", { level: 1, name: "Add an offer" })).toBeVisible();
  await expectChosen(page.getByLabel("Material", { exact: true }), "Beeswax");
  await page.getByLabel("Pack", { exact: true }).fill("1 kg");
  await page.getByLabel("Price of one pack").fill("20");
  await page.getByRole("button", { name: "Keep the offer", exact: true }).click();
  await expect(page.getByText("kept", { exact: true })).toBeVisible();
  await page.goto("/cost");
  await page.getByRole("link", { name: "Foot balm", exact: true }).click();
  // 20 g at 12.613 for 1261.3 g are 0.20; 30 g at 20.00 a kilogram are 0.60.
  await expect(page.getByText("One costs £0.80.")).toContainText("Your time is not in it");
  await page.goto("/");
  await page.getByRole("link", { name: "Plan a run on the week", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: / to \d+ \w+$/ })).toBeVisible();
});
