/** What nobody offers because it is made here: every place says which run makes it. Everything in it is invented. */
import { expect, test } from "./fixtures";

test.use({ opened: "tests/journeys/instead-workshop.json" });

test("A maker is told to make what nobody offers, and plans that run from there", async ({ page }) => {
  // 250 g are to be kept and none is there: three bottles of 100 g.
  const wanted = { name: "a run of Steep, 100 g of 3 units, today", exact: true } as const;
  await page.goto("/");
  await expect(page.getByText("Make 250 g.")).toBeVisible();
  await expect(page.getByRole("link", wanted)).toBeVisible();
  await page.goto("/shelf?open=infused");
  await expect(page.getByRole("heading", { name: /^To be made, not bought/ })).toBeVisible();
  await expect(page.getByRole("link", wanted)).toBeVisible();
  await page.goto("/buying");
  await expect(page.locator(".finding")).toContainText("One material is to be made, not bought.");
  await expect(page.getByText("nobody offers it")).toHaveCount(0);
  await page.getByRole("region", { name: "To be made, not bought" }).getByRole("link", wanted).click();

  await expect(page.getByRole("heading", { name: "Plan a run", exact: true })).toBeVisible();
  await expect(page.getByLabel("How much")).toHaveValue("3");
  await page.getByRole("button", { name: "Plan it", exact: true }).click();
  await expect(page).toHaveURL(/did=planned/);
  await page.goto("/buying");
  await expect(
    page.getByText("One run of Steep, 100 g is planned, on Wed 25 Nov, which is enough once it is made."),
  ).toBeVisible();
});
