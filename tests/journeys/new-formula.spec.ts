/** A formula that is not kept yet: what is found, what it holds and what to weigh follow what is typed. Invented. */
import { expect, test } from "./fixtures";
import { MOUSE } from "./hands";

test.use({ opened: "tests/journeys/ahead-workshop.json" });

test("A maker sees checks, expansion and targets of a new formula and of a draft while typing", async ({ page }) => {
  await page.goto("/book/formulas/new");
  const checks = page.getByRole("region", { name: /^Checks/ });
  await expect(checks).toContainText("once something goes in");
  await page.getByLabel("Name", { exact: true }).fill("Thin lotion");
  await MOUSE.choose(page, "Line 1, Material or premix", "Calendula steep");
  await page.getByLabel("Line 1, Percent by weight, %").fill("30");
  await checks.getByText("materials so far, premixes opened").click();
  // Of 30 % of the steep 80 % are oil.
  await expect(checks.getByRole("row", { name: /Oat kernel oil/ })).toContainText("24.00");
  await MOUSE.choose(page, "Line 2, Material or premix", "Water");
  // What line 2 takes is not known yet, so that nothing is said of the whole.
  await expect(checks).toContainText("The checks wait for line 2");
  await expect(checks).not.toContainText("It does not add up");
  await page.getByLabel("Line 2, Percent by weight, %").fill("60");
  await expect(checks).toContainText("Three materials so far, premixes opened");
  await page.getByRole("button", { name: "Keep it as a draft", exact: true }).click();

  await page.getByRole("link", { name: "Thin lotion" }).click();
  await expect(page.getByRole("heading", { name: "Thin lotion", level: 1 })).toBeVisible();
  await page.getByLabel("Line 2, Percent by weight, %").fill("qs");
  await checks.getByText(/^What to weigh for 100/).click();
  await expect(checks.getByRole("row", { name: /^Calendula steep 30/ })).toContainText(/30.g/);
  await expect(checks.getByRole("row", { name: /^Water/ }).filter({ hasText: "(qs)" })).toContainText(/70.g/);
});
