/** What is typed oddly is asked about or refused in words; and figures of the week open to what they are made of. */
import { expect, test } from "./fixtures";

test.describe("in a small workshop", () => {
  test.use({ opened: "tests/journeys/week-workshop.json" });

  test("Half a date is refused, and far more units than planned are asked about before they are posted", async ({
    page,
  }) => {
    await page.goto("/week/make/~r1");
    const [units, day] = [page.getByLabel("Units that came out"), page.getByLabel("Made on")];
    const close = page.getByRole("button", { name: "Close it as made, drawing this", exact: true });
    await day.press("Backspace");
    await close.click();
    await expect(page.getByText("Is not a whole date; fill in its day, month and year")).toBeVisible();
    await day.fill("2026-11-24");
    await units.fill("9999");
    await close.click();
    await expect(page.getByText(/9,999.units came out of a run of 10: is that right\?/)).toBeVisible();
    await expect(units).toHaveValue("9999");
    await page.getByRole("button", { name: /^Yes, 9,999.units came out$/ }).click();
    await expect(page.locator(".finding")).toContainText(/9,999.units came out, 9,989.units more than planned/);
  });
});

test("A day's minutes and the most that can be made open to how they come about", async ({ page }) => {
  await page.goto("/week");
  const monday = page
    .getByRole("list", { name: "Runs by day" })
    .getByRole("listitem")
    .filter({ hasText: "Linen mist" });
  await monday
    .locator("summary")
    .filter({ hasText: /^50.min$/ })
    .click();
  // 30 + 20 × 1
  await expect(monday.getByText(/30.min a run and 20 × 1.min a unit/)).toBeVisible();
  const most = page.locator("section", { has: page.getByRole("heading", { name: /^Most you can make/ }) });
  const first = most.getByRole("listitem").first();
  await first.locator("summary").click();
  await expect(first.getByText(/on the shelf and usable today, in/)).toBeVisible();
  await expect(first.getByText("for each unit, at the least")).toBeVisible();
});
