/** The shelf of the demo workshop. Its figures are worked by hand in seed/WORKED.md, by the rules named there. */
import { expect, expectAccessible, test } from "./fixtures";

test("A maker sees at a glance what to order this week, what is lost and how far the rest lasts", async ({ page }) => {
  await page.goto("/shelf");
  await expect(page.getByRole("heading", { level: 1, name: "The shelf" })).toBeVisible();
  await expect(page.getByText("37 materials.")).toContainText("Five to order this week");
  await expect(page.getByText("37 materials.")).toContainText("six lots of five materials going out of date unused");
  const groups = [
    /^Order this week 5.materials$/,
    /^Going out of date before use, with nothing to order this week 2.materials$/,
    /^Order later, by 20.Jan.2027 11.materials$/,
  ];
  for (const name of groups) await expect(page.getByRole("heading", { level: 2, name })).toBeVisible();
});

test("A maker reads how much is there, how long it lasts and by which day to order", async ({ page }) => {
  await page.goto("/shelf");
  const emulsifier = page.locator("summary", { hasText: "Cationic emulsifier" });
  await expect(emulsifier).toContainText("900 g");
  await expect(emulsifier).toContainText("13 days");
  await expect(emulsifier).toContainText("Tue 24 Nov");
  await expect(
    emulsifier.getByRole("img", {
      name: /: 900 g on the shelf; short by 198 g on Tue 8 Dec; order day was Tue 24 Nov, 1 day late\.$/,
    }),
  ).toBeVisible();
  await expect(page.locator("summary", { hasText: "Hydrolysed oat protein" })).toContainText("today");
});

test("A maker opens a material to its lots, what goes out of date and what that is worth", async ({ page }) => {
  await page.goto("/shelf");
  const row = page.locator("details", { hasText: "Hydrolysed oat protein" }).first();
  await row.locator("summary").first().press("Enter");
  await expect(row.getByRole("heading", { name: "Two lots: first expired, first out" })).toBeVisible();
  const lots = row.getByRole("table").first();
  await expect(lots.getByRole("row", { name: /^L14 / })).toContainText("150 g");
  await expect(lots).toContainText("18 g goes out of date 5 Dec");
  // 17.69375 g of a lot that cost 8.40 for 150 g
  await expect(lots).toContainText("worth £0.99");
  await expect(lots.getByRole("row", { name: /^Both / })).toContainText("350 g");
  await expect(row.getByRole("link", { name: "Conditioner, 200 g jar, today" })).toBeVisible();
});

test("A maker sees how the order day was reached and how much to buy", async ({ page }) => {
  await page.goto("/shelf");
  const row = page.locator("details", { hasText: "Beeswax" }).first();
  await row.locator("summary").first().click();
  const working = row.locator("dl").filter({ hasText: "needed by" });
  await expect(working).toContainText("Tue 5 Jan 2027");
  await expect(working).toContainText("Sun 3 Jan 2027");
  await expect(working).toContainText("Wed 23 Dec");
  await expect(working).toContainText(
    "comes in 3 working days; shut Thu 24 Dec, Fri 25 Dec, Mon 28 Dec, Tue 29 Dec and Fri 1 Jan 2027",
  );
  await expect(row.getByText("Nothing to buy.")).toBeVisible();
  await expect(page.locator("details", { hasText: "Hydrolysed oat protein" }).getByText("Buy 79 g")).toHaveCount(1);
});

test("A maker sees what is on the way, and that a late order is expected on the next working day", async ({ page }) => {
  await page.goto("/shelf?find=Calendula");
  const row = page.locator("details", { hasText: "Calendula extract" }).first();
  await row.locator("summary").first().click();
  await expect(row).toContainText("50 g on the way, Thu 26 Nov");
  await expect(row).toContainText("it was due Fri 20 Nov");
  await expect(row).toContainText("156 g goes out of date 31 Dec");
});

test("A maker finds a material by its name, or by one of its lots, which then stands open", async ({ page }) => {
  await page.goto("/shelf");
  const find = page.getByRole("searchbox", { name: "Find a material or lot" });
  await find.fill("beeswax");
  await find.press("Enter");
  await expect(page.locator("main details.shelf-row")).toHaveCount(1);
  await find.fill("L14");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(/find=L14/);
  await expect(page.getByRole("heading", { name: "Two lots: first expired, first out" })).toBeVisible();
  await find.fill("nothing of the kind");
  await find.press("Enter");
  await expect(page.getByText("Nothing called “nothing of the kind”.")).toBeVisible();
  await page.getByRole("link", { name: "Show every material" }).click();
  await expect(page.locator("main details.shelf-row")).toHaveCount(37);
});

test("A maker looks at packaging only, in order of name", async ({ page }) => {
  await page.goto("/shelf");
  await page.getByRole("link", { name: "Packaging, 10" }).click();
  await expect(page.locator("main details.shelf-row")).toHaveCount(10);
  await page.getByRole("combobox", { name: "In order of" }).selectOption("Name");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(/show=packaging/);
  await expect(page).toHaveURL(/by=name/);
  const shown = page.locator("main summary .shelf-name > span");
  await expect(shown).toHaveCount(10);
  const names = await shown.allTextContents();
  expect(names).toEqual([...names].sort((a, b) => a.localeCompare(b)));
});

test("A maker walks the rows by arrow keys and opens one without a mouse", async ({ page }) => {
  await page.goto("/shelf");
  const rows = page.locator("main summary.shelf-line");
  await rows.first().focus();
  await page.keyboard.press("ArrowDown");
  await expect(rows.nth(1)).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await expect(page.locator("main details.shelf-row").nth(1)).toHaveAttribute("open", "");
  await page.keyboard.press("ArrowLeft");
  await expect(page.locator("main details.shelf-row").nth(1)).not.toHaveAttribute("open", "");
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("a maker finds, opens and reads the shelf all the same", async ({ page, expectFault }) => {
    // A script that the browser was told not to run is reported as a request that the page's policy stopped.
    expectFault(/^request failed: .*\.js: csp$/);
    await page.goto("/shelf");
    await page.getByRole("searchbox", { name: "Find a material or lot" }).fill("oat");
    await page.getByRole("button", { name: "Show" }).click();
    const row = page.locator("details", { hasText: "Hydrolysed oat protein" }).first();
    await row.locator("summary").first().click();
    await expect(row.getByRole("heading", { name: "Next to draw on it" })).toBeVisible();
  });
});

test("A maker walks along a ribbon by keyboard: each thing that it shows is marked, written down and read", async ({
  page,
}) => {
  await page.goto("/shelf");
  const row = page.locator("summary", { hasText: "Cationic emulsifier" });
  const said = page.locator(".ribbon-says");
  await row.focus();
  await page.keyboard.press("ArrowRight");
  await expect(page.locator("details[open]", { hasText: "Cationic emulsifier" })).toBeVisible();
  await page.keyboard.press("ArrowRight");
  await expect(said).toHaveText(/^Today: 900.g on the shelf\.$/);
  await page.keyboard.press("ArrowRight");
  await expect(said).toHaveText("The order day was Tue 24 Nov.");
  await page.keyboard.press("ArrowRight");
  await expect(said).toHaveText(/ draws .* left\.$/);
  await expect(row.locator(".ribbon-step")).toHaveCount(1);
  await expectAccessible(page);
  await page.keyboard.press("ArrowDown");
  await expect(said).toHaveText("");
  await expect(page.locator(".ribbon-step")).toHaveCount(0);

  await page.goto("/");
  const ribbon = page.getByRole("link", { name: /^Hydrolysed oat protein: .* on the shelf/ }).first();
  await ribbon.focus();
  await page.keyboard.press("ArrowRight");
  await expect(said).toHaveText(/^Today: .* on the shelf\.$/);
  await page.keyboard.press("ArrowLeft");
  await expect(said).toHaveText("");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "The shelf" })).toBeVisible();
  await expect(page.locator("details[open]", { hasText: "Hydrolysed oat protein" })).toBeVisible();
});
