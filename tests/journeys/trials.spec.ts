/** A trial that was weighed wrongly: put back on the shelf, put right, and removed. Everything in it is invented. */
import { expect, test } from "./fixtures";

test.use({ opened: "./tests/journeys/formula-workshop.json" });

test("A trial is put back on the shelf, put right and removed", async ({ page }) => {
  const trials = page.getByRole("heading", { name: "Trials of Conditioner", exact: true });
  await page.goto("/book/formulas/f/trials/new");
  await page.getByLabel("Name", { exact: true }).fill("Thin one");
  await page.getByLabel("Water, g").fill("95");
  await page.getByLabel("Emulsifier blend, g").fill("5");
  await page.getByRole("button", { name: "Keep the trial", exact: true }).click();
  await expect(trials).toBeVisible();
  const thin = page.getByRole("region", { name: /^Thin one/ });
  await expect(thin).toContainText("taken off the shelf by this posting");

  await thin.getByRole("link", { name: "Correct or remove Thin one", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Correct Thin one", exact: true })).toBeVisible();
  await expect(page.getByLabel("Water, g")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Remove Thin one" })).toHaveCount(0);
  await page.getByRole("link", { name: "its posting", exact: true }).click();
  await expect(page.getByRole("heading", { name: /^Written off/ })).toBeVisible();
  await page.getByLabel("Why").fill("The scale was not level.");
  await page.getByRole("button", { name: "Take it back", exact: true }).click();
  await expect(page.getByText("Taken back. Both postings stay in the history.")).toBeVisible();

  await page.goto("/book/formulas/f/trials");
  await expect(thin).toContainText("put back on the shelf after this posting");
  await thin.getByRole("link", { name: "Correct or remove Thin one", exact: true }).click();
  await expect(page.getByLabel("Emulsifier blend, g")).toHaveValue("5");
  await page.getByLabel("Emulsifier blend, g").fill("5 %");
  await page.getByRole("button", { name: "Keep the correction", exact: true }).click();
  await expect(page.getByText("Is a percent; write the grams that the balance showed, as 6.02 g")).toBeVisible();
  await page.getByLabel("Emulsifier blend, g").fill("4.9");
  await page.getByRole("button", { name: "Keep the correction", exact: true }).click();
  await expect(trials).toBeVisible();
  await expect(thin.getByRole("row", { name: /^Emulsifier blend 4.9/ })).toBeVisible();

  await thin.getByRole("link", { name: "Correct or remove Thin one", exact: true }).click();
  await page.getByRole("button", { name: "Remove Thin one", exact: true }).click();
  await expect(page.getByText("None yet.")).toBeVisible();
});
