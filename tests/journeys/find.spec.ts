/** Finding anything by typing, figures by the maker's notation, and single keys for who wants them. */
import { expect, test } from "./fixtures";

test("A maker types part of a name, walks to it by arrows and comes back to what was found", async ({ page }) => {
  await page.goto("/shelf");
  await page.getByRole("link", { name: "Find", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Find" })).toBeVisible();
  const field = page.getByLabel("Find anything");
  await expect(field).toBeFocused();
  await page.keyboard.type("cety");
  await expect(page).toHaveURL(/\/find\?q=cety$/);
  const found = page.getByRole("link", { name: /^Cetyl alcohol(?!, lot)/ });
  await expect(found).toBeVisible();
  await page.keyboard.press("ArrowDown");
  await expect(found).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(field).toBeFocused();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "The shelf" })).toBeVisible();
  await page.goBack();
  await expect(field).toHaveValue("cety");
  await field.fill("zzz");
  await expect(page.getByText("Nothing here is called “zzz”.")).toBeVisible();
  await field.fill("Calednula");
  await expect(page.getByText("Nothing here is called “Calednula”.")).toContainText(
    "for “calendula”, which is like it.",
  );
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("What is looked for is asked by the address", async ({ page, expectFault }) => {
    expectFault(/^request failed: .*\.js: csp$/);
    await page.goto("/find");
    await page.getByLabel("Find anything").fill("L03");
    await page.getByRole("button", { name: "Find it" }).click();
    await expect(page.getByRole("link", { name: /^Glycerin, lot L03/ })).toBeVisible();
  });
});

test.describe("in a workshop of one's own", () => {
  test.use({ opened: "tests/journeys/week-workshop.json" });

  test("Figures are written in pounds and with a decimal comma, in fields too, and single keys go to places", async ({
    page,
  }) => {
    await page.goto("/book/screen");
    await page.getByLabel("Weights").selectOption("Ounces and pounds");
    await page.getByLabel("Numbers, money and dates as in").selectOption("Germany");
    await page.getByRole("button", { name: "Write figures like this" }).click();
    await expect(page.getByText("Figures are written like this from now on")).toBeVisible();
    // 1.5 kg ÷ 0.453 592 37 kg is 3.306 9 lb.
    await expect(page.locator(".finding")).toContainText(/A kilogram and a half is written 3,31.lb/);

    await page.goto("/book/rates");
    const labour = page.getByLabel("An hour of labour");
    await labour.fill("12,50");
    await page.getByRole("button", { name: "Keep rates and calendar" }).click();
    await expect(page.getByText("Rates and calendar are kept.")).toBeVisible();
    await page.goto("/book/rates");
    await expect(labour).toHaveValue("12,50");
    await labour.fill("1.500");
    await page.getByRole("button", { name: "Keep rates and calendar" }).click();
    await expect(page.getByText("can be read two ways; write 1500 or 1,5").first()).toBeVisible();

    // What the browser draws anew must be what the server drew: a difference would be told on the console.
    await page.goto("/cost");
    await page.getByRole("rowheader").first().getByRole("link").click();
    await expect(page.getByRole("heading", { name: /^If one thing changes/ })).toBeVisible();
    await page.reload();
    await expect(page.getByText(/One costs \d+,\d\d.£/)).toBeVisible();
    await page.goto("/book/formulas/new");
    await expect(page.getByRole("heading", { level: 1, name: "Add a formula" })).toBeVisible();

    await page.goto("/book/screen");
    await page.keyboard.press("w");
    await expect(page.getByRole("heading", { level: 1, name: "Figures and keys" })).toBeVisible();
    await page.getByRole("button", { name: "Turn single keys on" }).click();
    await expect(page.getByRole("button", { name: "Turn single keys off" })).toBeVisible();
    await page.keyboard.press("w");
    await expect(page.getByRole("link", { name: "Plan a run", exact: true })).toBeVisible();
    await page.keyboard.press("f");
    await expect(page.getByLabel("Find anything")).toBeFocused();
    await page.keyboard.type("week");
    await expect(page.getByRole("heading", { level: 1, name: "Find" })).toBeVisible();
  });
});
