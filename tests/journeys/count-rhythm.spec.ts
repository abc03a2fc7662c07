/** A maker says how often a material is counted, is told when it falls due, counts it, and sees what is set aside. */
import { expect, test } from "./fixtures";

test.use({ opened: "tests/journeys/week-workshop.json" });

test("What is due for a count is told where a maker looks, and is quiet once it was counted", async ({ page }) => {
  await page.goto("/shelf/count/due");
  await expect(page.locator(".finding")).toContainText("No material is counted by a rhythm yet.");
  await page.getByRole("link", { name: "Oat kernel oil" }).click();
  await page.getByLabel("After so many days").fill("soon");
  await page.getByRole("button", { name: "Keep how often" }).click();
  await expect(page.getByLabel("After so many days")).toHaveAttribute("aria-invalid", "true");
  await expect(page.getByLabel("After so many days")).toHaveValue("soon");
  await page.getByLabel("After so many days").fill("1");
  await page.getByRole("button", { name: "Keep how often" }).click();
  const row = page.getByRole("row", { name: /^Oat kernel oil/ });
  await expect(row).toContainText("every one day");
  await expect(row).toContainText("count due");

  await page.goto("/");
  await page.getByRole("link", { name: "Enter the count of Oat kernel oil", exact: true }).click();
  await expect(page.getByRole("row", { name: /^Oat kernel oil/ }).first()).toBeVisible();
  await expect(page.getByRole("row", { name: /^Jar/ })).toHaveCount(0);
  await page.getByRole("textbox", { name: /^Balance shows.*lot L1$/ }).fill("600");
  await page.getByLabel("Why it was counted").fill("as often as I said");
  await page.getByRole("button", { name: "Show the differences" }).click();
  await expect(page.getByText("All that was counted is as it is written down.").first()).toBeVisible();
  await page.getByRole("button", { name: "Keep the count" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /^Counted/ })).toBeVisible();
  await page.goto("/shelf/count/due");
  await expect(row).not.toContainText("count due");
  await expect(row).toContainText("last counted");
});

test("A lot that is wholly on hold still stands in its material's list, with the way to release it", async ({
  page,
}) => {
  await page.goto("/shelf/lots/L1?do=hold");
  await page.getByLabel("How much").fill("600 g");
  await page.getByLabel("Why").selectOption("Recalled by the supplier");
  await page.getByRole("button", { name: "Put it on hold" }).click();
  await expect(page.locator(".finding")).toContainText("on hold");
  await page.goto("/shelf?open=oil");
  await expect(page.getByText(/600.g of lot L1 on hold/)).toBeVisible();
  await page.getByRole("link", { name: "release it or write it off" }).click();
  await expect(page.getByRole("link", { name: "Release it" })).toBeVisible();
});
