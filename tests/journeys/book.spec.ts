/** The book of the demo workshop: reading, changing, and everything that can go wrong while somebody types. */
import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";
import { expectSoundAtEverySize } from "./every-size";
import { expectChosen, MOUSE } from "./hands";

// Written in another way than the demo that other journeys share: this one is changed, and belongs to one journey.
test.use({ opened: "./seed/demo-workshop.json" });

const row = (page: Page, name: string): Locator =>
  page.getByRole("row").filter({ has: page.getByRole("link", { name, exact: true }) });
const refused = (page: Page): Locator => page.getByRole("alert").filter({ hasText: "Not kept yet" });
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

const PAGES = [
  "/book",
  "/book/materials",
  "/book/offers?find=glycerin",
  "/book/lots/new",
  "/book/formulas/f-conditioner",
  "/book/products/p-conditioner",
  "/book/materials/m-glycerin",
  "/book/rates",
  "/book/files",
  "/book/first",
  "/book/formulas/compare?first=f-cream&second=f-conditioner&product=p-conditioner",
] as const;

test("The pages of the book are whole, accessible and walked by keyboard, at every size, light and dark", async ({
  page,
}) => {
  for (const path of PAGES) {
    await page.goto(path);
    // The calendar button within a date field is marked by the browser itself, out of reach of a page's styles.
    const hasDates = (await page.locator("input[type=date]").count()) > 0;
    await expectSoundAtEverySize(page, hasDates ? {} : { stops: 40 });
  }
});

test("A maker reads what the book holds and finds a record by a word of it", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: "Book" }).click();
  await expect(page.getByText("Six products by nine formulas")).toContainText("37 materials of four suppliers");
  await page.getByRole("link", { name: "Offers", exact: true }).click();
  const find = page.getByRole("searchbox", { name: "Find among the offers" });
  await find.fill("glycerin 5 kg");
  await find.press("Enter");
  await expect(row(page, "Glycerin")).toHaveCount(1);
  await expect(row(page, "Glycerin")).toContainText("£30.00");
  await find.fill("<script>");
  await press(page, "Show");
  await expect(page.getByText("None of the offers has “<script>”.")).toBeVisible();
});

test("A maker writes down opening stock by volume and what is on the way, and the shelf counts both", async ({
  page,
}) => {
  await page.goto("/book/lots/new");
  await page.getByLabel("Lot", { exact: true }).fill("GLY-7");
  await MOUSE.choose(page, "Material", "Glycerin");
  await page.getByLabel("Received").fill("2026-11-20");
  await page.getByLabel("Last day of use").fill("2027-02");
  await page.getByLabel("What is left").fill("1 L");
  await page.getByLabel("What it cost").fill("7,60");
  await press(page, "Keep the lot");
  await expect(page.getByRole("row").filter({ hasText: "kept" })).toContainText("28 Feb 2027");

  await page.goto("/book/orders/new");
  await page.getByLabel("Order", { exact: true }).fill("GLY-8");
  await MOUSE.choose(page, "Supplier", "Imagined Ingredients");
  await page.getByLabel("Ordered on").fill("2026-11-24");
  await page.getByLabel("Due", { exact: true }).fill("2026-12-03");
  await MOUSE.choose(page, "Line 1, Material", "Glycerin");
  await page.getByLabel("Line 1, Quantity").fill("500 g");
  await page.getByLabel("Line 1, Cost of the line").fill("4");
  await press(page, "Keep the order");
  await expect(page.getByRole("row").filter({ hasText: "kept" })).toContainText("GLY-8");

  await page.goto("/shelf?open=m-glycerin");
  const glycerin = page.locator("details[open]", { hasText: "Glycerin" });
  // 2,200 g were there; 1 L at 1.2613 g/mL is 1,261.3 g more.
  await expect(glycerin.locator(".shelf-held")).toContainText(/3\.46.kg/);
  await expect(glycerin).toContainText("GLY-7");
  await expect(glycerin).toContainText(/500.g on the way, Thu.3.Dec/);
});

test("A price that is changed changes what the product costs", async ({ page }) => {
  await page.goto("/book/materials/m-btms");
  await page.getByRole("link", { name: "Imagined Ingredients" }).first().click();
  await page.getByLabel("Price of one pack").fill("12,345");
  await press(page, "Keep the offer");
  await expect(refused(page)).toContainText("can be read two ways; write 12345 or 12.345");
  await expect(refused(page)).toBeFocused();
  await refused(page).getByRole("link", { name: "Price of one pack" }).click();
  await expect(page.getByLabel("Price of one pack")).toBeFocused();
  await expect(page.getByLabel("Price of one pack")).toHaveValue("12,345");
  await expectAccessible(page);
  await page.getByLabel("Price of one pack").fill("240");
  await press(page, "Keep the offer");
  await expect(page.getByRole("row").filter({ hasText: "kept" })).toContainText("£240.00");
});

/** What is typed into which field, what is said of it. Nothing typed is lost. */
const WRONG = [
  { where: "/book/materials/new", field: "Name", typed: "", says: "missing" },
  { where: "/book/materials/new", field: "Safety stock", typed: "-5 g", says: "must not be below zero" },
  { where: "/book/materials/new", field: "Safety stock", typed: "5 cups", says: "unknown unit" },
  { where: "/book/materials/new", field: "Safety stock", typed: "5 fl oz", says: "has two sizes" },
  { where: "/book/materials/new", field: "Safety stock", typed: "5 each", says: /weight|mass|piece/ },
  { where: "/book/materials/new", field: "Safety stock", typed: "1,500 g", says: "can be read two ways" },
  { where: "/book/materials/new", field: "Density at 20 °C", typed: "0", says: /above|more than|0/ },
  { where: "/book/materials/new", field: "Use up to", typed: "101", says: /100/ },
  { where: "/book/materials/new", field: "Safety days", typed: "99999999999999999999", says: /large|range/ },
  { where: "/book/materials/new", field: "Name", typed: "x".repeat(201), says: "at most 200 characters" },
  { where: "/book/products/new", field: "Fill of one", typed: "200", says: "has no unit" },
  { where: "/book/products/new", field: "Usual run", typed: "1e3", says: "must be a number" },
  { where: "/book/lots/new", field: "Last day of use", typed: "03/04/2027", says: "can be read two ways" },
  { where: "/book/lots/new", field: "What it cost", typed: "$5", says: "is not the workshop's currency" },
  { where: "/book/rates", field: "Currency", typed: "pounds", says: "three capital letters" },
  { where: "/book/rates", field: "Closed days", typed: "2026-02-30", says: "no such day" },
] as const;

test("What cannot be understood is said at its field, in words, and stays as it was typed", async ({ page }) => {
  for (const { where, field, typed, says } of WRONG) {
    await test.step(`${field}: ${typed.slice(0, 30)}`, async () => {
      await page.goto(where);
      const input = page.getByLabel(new RegExp(`^${field}`)).first();
      await input.fill(typed);
      await page.getByRole("button", { name: /^Keep (the|rates)/ }).click();
      await expect(
        refused(page)
          .or(page.getByRole("alert").filter({ hasText: "Not kept" }))
          .first(),
      ).toBeVisible();
      await expect(input).toHaveValue(typed);
      await expect(input).toHaveAttribute("aria-invalid", "true");
      await expect(input).toHaveAccessibleDescription(typeof says === "string" ? new RegExp(escaped(says), "i") : says);
      // What was refused is kept in the tab, and would come back into the next form.
      await page.evaluate(() => sessionStorage.clear());
    });
  }
});

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

test("A script in a name is a name", async ({ page }) => {
  const name = `<img src=x onerror="alert(1)"> & <script>alert(1)</script>`;
  await page.goto("/book/suppliers/new");
  await page.getByLabel("Name", { exact: true }).fill(name);
  await press(page, "Keep the supplier");
  await expect(row(page, name)).toContainText("kept");
  await row(page, name).getByRole("link").click();
  await expect(page.getByRole("heading", { level: 1, name })).toBeVisible();
});

test("A form that was changed in another tab is not overwritten before somebody has looked", async ({
  page,
  context,
}) => {
  await page.goto("/book/suppliers/s-ingredients");
  const other = await context.newPage();
  await other.goto(page.url());
  await other.getByLabel("Delivery of one order").fill("5.95");
  await press(other, "Keep the supplier");
  await expect(other.getByRole("row").filter({ hasText: "kept" })).toContainText("£5.95");

  await page.getByLabel("Delivery of one order").fill("6.50");
  await page.getByLabel("Lead time", { exact: true }).fill("7");
  await press(page, "Keep the supplier");
  const told = page.getByRole("alert").filter({ hasText: "Changed meanwhile" });
  await expect(told).toContainText("Delivery of one order: kept in the other window: £5.95; yours: £6.50");
  await expect(told).toBeFocused();
  await expect(page.getByLabel("Lead time", { exact: true })).toHaveValue("7");
  await expectAccessible(page);
  await other.reload();
  await expect(other.getByRole("row").filter({ hasText: "Imagined Ingredients" })).toContainText("£5.95");

  await press(page, "Keep the supplier");
  await expect(page.getByRole("row").filter({ hasText: "kept" })).toContainText(/7.working.days.*£6\.50/);
  await other.close();
});

test("A form that is sent twice, or again after going back, makes one record", async ({ page }) => {
  await page.goto("/book/suppliers/new");
  await page.getByLabel("Name", { exact: true }).fill("Sent twice");
  await page.getByRole("button", { name: "Keep the supplier" }).dblclick();
  await expect(row(page, "Sent twice")).toHaveCount(1);
  await page.goBack();
  await expect(page.getByRole("heading", { level: 1, name: "Add a supplier" })).toBeVisible();
  await page.goto("/book/suppliers");
  await expect(row(page, "Sent twice")).toHaveCount(1);
});

test("Who adds another at once finds an empty form", async ({ page }) => {
  await page.goto("/book/suppliers");
  for (const name of ["Heath Barn (invented)", "Moor Barn (invented)"]) {
    await page.getByRole("link", { name: "Add a supplier" }).click();
    await expect(page.getByLabel("Name", { exact: true })).toHaveValue("");
    await page.getByLabel("Name", { exact: true }).fill(name);
    await page.waitForFunction(
      (typed) => Object.values(sessionStorage).some((kept) => String(kept).includes(typed)),
      name,
    );
    await press(page, "Keep the supplier");
    await expect(page.getByRole("row", { name: new RegExp(name.slice(0, 5)) })).toContainText("kept");
  }
});

test("A reload in the middle loses nothing that was typed, rows that were added included", async ({ page }) => {
  await page.goto("/book/formulas/new");
  await page.getByLabel("Name", { exact: true }).fill("Half written");
  await press(page, "Add a line");
  await expect(page.getByLabel("Line 2, Material or premix")).toBeFocused();
  await page.getByLabel("Line 2, Percent by weight, %").fill("12.5");
  await expect(page.getByText("12.5 % so far")).toBeVisible();
  // At once: what was typed last is kept as the page is left.
  await page.getByLabel("Line 2, Phase").fill("C");
  await page.reload();
  await expect(page.getByText("What you had typed here before is back.")).toBeVisible();
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Half written");
  await expect(page.getByLabel("Line 2, Percent by weight, %")).toHaveValue("12.5");
  await expect(page.getByLabel("Line 2, Phase")).toHaveValue("C");
  await press(page, "Clear what I typed");
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("");
});

test("A maker moves rows, takes them out, and keeps a formula that does not add up as a draft", async ({ page }) => {
  await page.goto("/book/formulas/f-conditioner");
  const percents = () =>
    page.getByLabel(/^Line \d+, Percent/).evaluateAll((inputs) => inputs.map((one) => (one as HTMLInputElement).value));
  expect((await percents()).slice(0, 4)).toEqual(["qs", "5", "0.5", "6"]);
  await press(page, "Move line 4 up");
  await expect(page.getByRole("button", { name: "Move line 3 up" })).toBeFocused();
  expect((await percents()).slice(0, 4)).toEqual(["qs", "5", "6", "0.5"]);
  await press(page, "Take out line 1");
  await expect(page.getByText("19 % so far; 81 % is still missing")).toBeVisible();
  await press(page, "Keep the formula");
  await expect(refused(page)).toContainText("the percents add up to 19 %; without a qs line they must add up to 100 %");
  await page.getByLabel("Name", { exact: true }).fill("Conditioner, to be thought over");
  await press(page, "Keep it as a draft beside this one");
  const draft = page.locator("li:not(.found)").filter({ hasText: "Conditioner, to be thought over" });
  await expect(draft).toContainText("19 % so far; 81 % is still missing");
  await expect(row(page, "Rinse-off conditioner")).toHaveCount(1);

  await draft.getByRole("link").click();
  await press(page, "Make it a formula");
  await expect(refused(page)).toContainText("add up to 19 %");
  await MOUSE.choose(page, "Line 10, Material or premix", "Water, deionised");
  await page.getByLabel("Line 10, Percent by weight, %").fill("qs");
  await press(page, "Make it a formula");
  await expect(row(page, "Conditioner, to be thought over")).toContainText("kept");
  await expect(page.getByRole("heading", { name: /^Drafts/ })).toHaveCount(0);
});

test("A formula that is pasted as lines is matched to what the book knows, and what is unsure is asked", async ({
  page,
}) => {
  await page.goto("/book/formulas/new");
  await page.getByText("Paste it as lines of text").click();
  await page
    .getByLabel("One line for each material")
    .fill("A\nwater, deionised\tqs\nGLYCERIN 5 %\nB\nOat protein 3\nMoon dust 2,5 %\nCetyl alcohol 1,500 %\n");
  await press(page, "Put the lines into the formula");
  const chosen = (line: number) => page.getByLabel(`Line ${String(line)}, Material or premix`);
  await expectChosen(chosen(1), "Water, deionised");
  await expectChosen(chosen(2), "Glycerin");
  await expect(chosen(3)).toHaveValue("");
  await expect(page.getByText("Is “Oat protein” one of these?")).toBeVisible();
  await expect(page.getByText("Nothing in the Book is called “Moon dust”.")).toBeVisible();
  await expect(page.getByText("can be read two ways; write 1500 or 1.5")).toBeVisible();
  await expectAccessible(page);
  await press(page, "Hydrolysed oat protein");
  await expectChosen(chosen(3), "Hydrolysed oat protein");
  await expect(page.getByLabel("Line 3, Phase")).toHaveValue("B");
  await press(page, "Take out line 4");
  await page.getByLabel("Line 4, Percent by weight, %").fill("1.5");
  await page.getByLabel("Name", { exact: true }).fill("From a note");
  await press(page, "Keep the formula");
  await expect(row(page, "From a note")).toContainText("kept");
});

test("Ten thousand pasted lines are answered in a sentence, and the text stays", async ({ page, context }) => {
  const text = Array.from({ length: 10_000 }, (_, at) => `Material ${String(at)} 0.01 %`).join("\n");
  await page.goto("/book/formulas/new");
  await page.getByLabel("Name", { exact: true }).fill("Far too long");
  await page.getByText("Paste it as lines of text").click();
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.evaluate((pasted) => navigator.clipboard.writeText(pasted), text);
  await page.getByLabel("One line for each material").focus();
  await page.keyboard.press("ControlOrMeta+V");
  await press(page, "Put the lines into the formula");
  await expect(page.getByText("The first 500 lines were read; 9500 more were left out.")).toBeVisible();
  await expect(page.getByLabel("Line 500, Percent by weight, %")).toHaveValue("0.01");
  await press(page, "Keep the formula");
  await expect(refused(page)).toContainText("material or formula is missing");
  await expect(page.getByLabel("One line for each material")).toHaveValue(text);
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Far too long");
});

test("A published density is offered with its source and used only when asked", async ({ page }) => {
  await page.goto("/book/materials/new");
  await page.getByLabel("Name", { exact: true }).fill("Glycerin, vegetable");
  const density = page.getByLabel(/^Density at 20 °C/);
  await expect(page.getByText("CRC Handbook of Chemistry and Physics").first()).toBeVisible();
  await expect(density).toHaveValue("");
  await press(page, "Use 1.2613 g/mL");
  await expect(density).toHaveValue("1.2613");
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Glycerin, vegetable");
});

test("What is typed before the scripts are there is followed, and kept, once they are", async ({ page }) => {
  let release = (): void => undefined;
  const held = new Promise<void>((end) => (release = end));
  await page.route(/\/_next\/static\/.*\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  const ready = page.goto("/book/materials/new");
  await page.getByLabel("Name", { exact: true }).fill("Glycerin, vegetable");
  release();
  await ready;
  await expect(page.getByText("CRC Handbook of Chemistry and Physics").first()).toBeVisible();
  await page.waitForFunction(() => Object.values(sessionStorage).some((kept) => String(kept).includes("vegetable")));
  await page.reload();
  await expect(page.getByText("What you had typed here before is back.")).toBeVisible();
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Glycerin, vegetable");
});

test("What is in use stays and says by what; what is retired is hidden from new work alone", async ({ page }) => {
  await page.goto("/book/materials/m-glycerin");
  await expect(page.getByText("It is used by two offers, two lots and three formulas")).toBeVisible();
  await expect(page.getByRole("button", { name: "Remove the material" })).toHaveCount(0);
  const cost = async () => (await page.request.get("/cost/p-conditioner")).text();
  expect(await cost()).toContain("Glycerin");
  await press(page, "Retire it");
  await expect(page.getByText("Retired: it is not offered for new work.")).toBeVisible();
  expect(await cost()).toContain("Glycerin");
  await page.goto("/book/formulas/new");
  await page.getByLabel("Line 1, Material or premix").focus();
  await page.keyboard.type("glycerin");
  await expect(page.getByText("Nothing in the list is called “glycerin”.")).toBeVisible();
  await page.goto("/book/formulas/f-conditioner");
  await expectChosen(page.getByLabel("Line 2, Material or premix"), "Glycerin");
  await page.goto("/book/materials");
  await expect(row(page, "Glycerin")).toHaveCount(0);
  await page.getByRole("link", { name: "Show what is retired too" }).click();
  await row(page, "Glycerin").getByRole("link").click();
  await press(page, "Bring it back");
  await expect(page.getByRole("button", { name: "Retire it" })).toBeVisible();
});

test("A record that came into use meanwhile is not removed; one that nothing uses is", async ({ page, context }) => {
  await page.goto("/book/suppliers/new");
  await page.getByLabel("Name", { exact: true }).fill("For a while");
  await press(page, "Keep the supplier");
  await row(page, "For a while").getByRole("link").click();
  await expect(page.getByRole("button", { name: "Remove the supplier" })).toBeVisible();
  const other = await context.newPage();
  await other.goto("/book/offers/new?material=m-water");
  await MOUSE.choose(other, "Supplier", "For a while");
  await other.getByLabel("Pack", { exact: true }).fill("1 kg");
  await other.getByLabel("Price of one pack").fill("2");
  await press(other, "Keep the offer");
  await expect(other.getByRole("row").filter({ hasText: "kept" })).toContainText("For a while");
  await press(page, "Remove the supplier");
  await expect(page.getByText("It is used by one offer")).toBeVisible();

  await other.getByRole("row").filter({ hasText: "kept" }).getByRole("link").first().click();
  await press(other, "Remove the offer");
  await expect(other.getByText("Removed.")).toBeVisible();
  await page.reload();
  await press(page, "Remove the supplier");
  await expect(page.getByText("Removed.")).toBeVisible();
  await expect(row(page, "For a while")).toHaveCount(0);
  await other.close();
});

test("An emulsifier at 6 % beside one at 7 %: a maker compares two formulas in percent and in cost", async ({
  page,
}) => {
  // Advised at 5 to 6 %, and very thick at 7 %: common practice, no source.
  await page.goto("/book/formulas/f-conditioner");
  await page.getByRole("link", { name: "Copy it" }).click();
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Rinse-off conditioner, copy");
  await page.getByLabel("Name", { exact: true }).fill("Conditioner, thick");
  await page.getByLabel("Line 4, Percent by weight, %").fill("7");
  await press(page, "Keep the formula");
  await expect(row(page, "Conditioner, thick")).toContainText("kept");
  await page.getByRole("link", { name: "Compare two" }).click();
  await MOUSE.choose(page, "The first", "Rinse-off conditioner");
  await MOUSE.choose(page, "The second", "Conditioner, thick");
  await MOUSE.choose(page, "In one of", "Conditioner, 200 g jar");
  await press(page, "Compare");
  // 1 % of (24 × 202 + 12) ÷ 0.96 ÷ 24 g is 2.109375 g; at 24.00 a kg, less as much water at 4.00 for 4,991 g.
  await expect(page.getByText("With Conditioner, thick, one Conditioner, 200 g jar costs")).toContainText("£0.05 more");
  const emulsifier = page.getByRole("row", { name: /^Cationic emulsifier flakes/ });
  await expect(emulsifier).toContainText(/6\.00.%.*7\.00.%/);
  await expect(page.getByRole("row", { name: /^One unit/ })).toContainText("+£0.05");
  await expectAccessible(page);
});

test("A workshop file is looked into before it takes the place of the open one", async ({ page }) => {
  const saved = await (await page.request.get("/workshop-file")).text();
  const changed = JSON.parse(saved) as { workshop: { name: string }; lots: unknown[] };
  changed.workshop.name = "Another bench";
  changed.lots = [];
  await page.goto("/book/files");
  await page.getByLabel("Workshop file").setInputFiles({
    name: "another.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(changed)),
  });
  await press(page, "Look into it");
  await expect(
    page.getByRole("heading", { name: "Another bench, in the place of Demonstration (invented)" }),
  ).toBeVisible();
  await expect(page.getByRole("row", { name: /^Lots/ })).toContainText("410");
  expect(await (await page.request.get("/workshop-file")).text()).toBe(saved);
  await expectAccessible(page);
  await press(page, "Open Another bench");
  await expect(page.getByText("The workshop is open. The one before it was kept as")).toBeVisible();
  expect(await (await page.request.get("/workshop-file")).text()).toContain("Another bench");
});

test("A day that is set can be seen in the book, and the rates can be kept", async ({ page }) => {
  await page.goto("/book");
  await expect(page.getByText("It is set to Wed\u00a025\u00a0Nov\u00a02026")).toBeVisible();
  await page.getByRole("link", { name: "Rates and calendar" }).click();
  await page.getByLabel("An hour of labour").fill("16,50");
  await press(page, "Keep rates and calendar");
  await expect(page.getByText("Rates and calendar are kept.")).toBeVisible();
  await page.goto("/book/rates");
  await expect(page.getByText("An hour at the bench costs £19.50")).toBeVisible();
});

/** A browser that is told to run no scripts says of one that was to be fetched ahead that the policy stopped it. */
const STOPPED_SCRIPT = /^request failed: .*\/_next\/static\/chunks\/[^/]+\.js: csp$/;

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("a maker is told what is wrong, adds rows, pastes lines, and keeps a record", async ({ page, expectFault }) => {
    expectFault(STOPPED_SCRIPT);
    await page.goto("/book/suppliers/new");
    await page.getByLabel("Lead time", { exact: true }).fill("soon");
    await press(page, "Keep the supplier");
    await expect(refused(page)).toContainText("Name is missing");
    await expect(page.getByLabel("Lead time", { exact: true })).toHaveValue("soon");
    await expect(page.getByLabel("Lead time", { exact: true })).toHaveAccessibleDescription(/must be a number/i);
    await page.getByLabel("Name", { exact: true }).fill("Without scripts");
    await page.getByLabel("Lead time", { exact: true }).fill("4");
    await press(page, "Keep the supplier");
    await expect(row(page, "Without scripts")).toContainText("kept");

    await page.goto("/book/formulas/new");
    await page.getByLabel("Name", { exact: true }).fill("By hand");
    await expect(page.getByLabel(/^Line \d+, Percent/)).toHaveCount(3);
    await press(page, "Add a line");
    await expect(page.getByLabel(/^Line \d+, Percent/)).toHaveCount(4);
    await expect(page.getByLabel("Name", { exact: true })).toHaveValue("By hand");
    await page.getByText("Paste it as lines of text").click();
    await page.getByLabel("One line for each material").fill("Beeswax 40\nCastor oil 57,5 %");
    await press(page, "Put the lines into the formula");
    await expect(page.getByText("97.5 % so far; 2.5 % is still missing")).toBeVisible();
    await page.getByLabel("Line 3, Material or premix").selectOption({ label: "Tocopherol" });
    await page.getByLabel("Line 3, Percent by weight, %").fill("2.5");
    await press(page, "Keep the formula");
    await expect(row(page, "By hand")).toContainText("kept");
    await row(page, "By hand").getByRole("link").click();
    await press(page, "Retire it");
    await expect(page.getByText("Retired: it is not offered for new work.")).toBeVisible();
    await press(page, "Remove the formula");
    await expect(page.getByText("Removed.")).toBeVisible();
  });

  test("a maker looks into a file and opens it", async ({ page, expectFault }) => {
    expectFault(STOPPED_SCRIPT);
    const saved = await (await page.request.get("/workshop-file")).text();
    await page.goto("/book/files");
    await page.getByLabel("Workshop file").setInputFiles({
      name: "same.json",
      mimeType: "application/json",
      buffer: Buffer.from(saved.replace('"name": "Demonstration (invented)"', '"name": "Read again"')),
    });
    await press(page, "Look into it");
    await press(page, "Open Read again");
    await expect(page.getByText("The workshop is open.")).toBeVisible();
    expect(await (await page.request.get("/workshop-file")).text()).toContain('"name": "Read again"');
  });
});
