/** Choosing a record out of many, and what the Shelf marks after a change. */
import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";
import { expectChosen, MOUSE } from "./hands";

/** A choice, whether its list has come or the browser's own still stands there. */
const choice = (page: Page, name: string) => page.getByRole("combobox", { name, exact: true });
/** A choice once its list is there. */
const list = (page: Page, name: string) => page.getByRole("combobox", { name, exact: true }).and(page.locator("input"));
const sentAs = (page: Page, name: string) => page.locator(`input[type=hidden][name="${name}"]`);

test.describe("in the demonstration", () => {
  test("A list filters as one types, anywhere in the name, and what is typed is never taken for another", async ({
    page,
  }) => {
    await page.goto("/book/lots/new");
    const material = list(page, "Material");
    await choice(page, "Material").click();
    await expect(page.getByRole("option", { name: "Beeswax" })).toBeVisible();
    await material.fill("ALCOHOL");
    await expect(page.getByRole("option")).toHaveText(["Cetyl alcohol"]);
    await expectAccessible(page);
    await page.getByRole("option", { name: "Cetyl alcohol" }).click();
    await expect(material).toHaveValue("Cetyl alcohol");
    await expect(sentAs(page, "material")).toHaveValue("m-cetyl");

    await material.fill("oil");
    await material.blur();
    await expect(material).toHaveAccessibleDescription("“oil” can mean several. Choose one from the list.");
    await page.getByLabel("Lot", { exact: true }).fill("X1");
    await page.getByRole("button", { name: "Keep the lot", exact: true }).click();
    await expect(page.getByRole("alert").filter({ hasText: "Not kept yet" })).toContainText(
      "nothing in the list is called “oil”",
    );
    await expect(material).toHaveValue("oil");
  });

  test("What is typed while the list is on its way is in it when it comes, and nothing is lost where it does not", async ({
    page,
    expectFault,
  }) => {
    expectFault(/^request failed: .*\.js: net::ERR_FAILED$/);
    expectFault(/^console error: Failed to load resource: net::ERR_FAILED$/);
    await page.goto("/book/lots/new");
    let letPass = (): void => undefined;
    const passing = new Promise<void>((pass) => (letPass = pass));
    await page.route("**/*.js", async (route) => {
      await passing;
      await route.continue();
    });
    const asked = page.waitForRequest("**/*.js");
    await choice(page, "Material").focus();
    await asked;
    await page.keyboard.type("cety");
    letPass();
    await expect(list(page, "Material")).toHaveValue("cety");
    await page.keyboard.press("Enter");
    await expect(list(page, "Material")).toHaveValue("Cetyl alcohol");

    // Space opens a choice; it is no letter of a name, and takes nothing away.
    await page.reload();
    await expectChosen(choice(page, "Material"), "Cetyl alcohol");
    await choice(page, "Material").focus();
    await page.keyboard.press("Space");
    await expect(page.getByRole("listbox").getByRole("option", { name: "Beeswax", exact: true })).toBeVisible();
    await expect(list(page, "Material")).toHaveValue("Cetyl alcohol");

    // Nor does Enter send the form while a name is being written.
    await page.goto("/book/offers/new");
    await choice(page, "Material").focus();
    await page.keyboard.type("cety");
    await page.keyboard.press("Enter");
    await expectChosen(choice(page, "Material"), "Cetyl alcohol");

    await page.goto("/book/offers/new");
    await page.unroute("**/*.js");
    await page.route("**/*.js", (route) => route.abort());
    const failed = page.waitForEvent("requestfailed");
    await choice(page, "Material").focus();
    await failed;
    await choice(page, "Material").selectOption({ label: "Beeswax" });
    await expectChosen(choice(page, "Material"), "Beeswax");
  });

  test("By keyboard alone: arrows, Enter, Escape, and leaving the field", async ({ page }) => {
    await page.goto("/book/lots/new");
    const material = list(page, "Material");
    await choice(page, "Material").focus();
    await page.keyboard.type("glyc");
    await expect(page.getByRole("option")).toHaveCount(2);
    await page.keyboard.press("ArrowDown");
    await expect(page.getByRole("option", { name: "Glyceryl stearate blend" })).toHaveAttribute("data-highlighted");
    await page.keyboard.press("Enter");
    await expect(material).toHaveValue("Glyceryl stearate blend");
    await expect(page.getByRole("listbox")).toHaveCount(0);

    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("xyz");
    await expect(page.getByText("Nothing in the list is called “xyz”.")).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(material).toHaveValue("Glyceryl stearate blend");

    // What can only mean one is taken on leaving.
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("beesw");
    await page.keyboard.press("Tab");
    await expect(material).toHaveValue("Beeswax");
    await page.waitForFunction(() => Object.values(sessionStorage).some((kept) => String(kept).includes("m-beeswax")));
    await page.reload();
    await expect(page.getByText("What you had typed here before is back.")).toBeVisible();
    await expectChosen(choice(page, "Material"), "Beeswax");
  });
});

test.describe("in a workshop of its own", () => {
  test.use({ opened: "tests/journeys/week-workshop.json" });

  test("Two materials of one name are told apart by what a maker knows of them", async ({ page }) => {
    await page.goto("/book/materials/new");
    await page.getByLabel("Name", { exact: true }).fill("Oat protein");
    await page.getByRole("button", { name: "Keep the material", exact: true }).click();
    await expect(page.getByRole("status").filter({ hasText: "kept" })).toBeVisible();
    await page.goto("/book/offers/new");
    await choice(page, "Material").click();
    await expect(page.getByRole("option", { name: /^Oat protein/ })).toHaveText([
      /entered second/,
      /from Larch Wholesale/,
    ]);
  });

  test("The Shelf marks what the last change did, and can list it alone", async ({ page }) => {
    await page.goto("/week?plan=2026-11-28");
    await MOUSE.choose(page, "Product", "Oat conditioner");
    await page.getByLabel("How much").fill("90");
    await page.getByRole("button", { name: "Plan it" }).click();
    await expect(page.getByRole("status").filter({ hasText: "Planned: Oat conditioner" })).toBeVisible();
    await page.goto("/shelf");
    await page.getByRole("link", { name: /^Changed last, \d+$/ }).click();
    const oat = page.locator(".shelf-row").filter({ hasText: "Oat protein" });
    await expect(oat).toContainText(/buy .*, was /);
    await expectAccessible(page);
  });

  test("What was written of a record that another tab removed is kept as a new one", async ({ page, context }) => {
    await page.goto("/book/suppliers/new");
    await page.getByLabel("Name", { exact: true }).fill("For a while");
    await page.getByRole("button", { name: "Keep the supplier", exact: true }).click();
    await page.getByRole("link", { name: "For a while" }).click();
    await page.getByLabel("Name", { exact: true }).fill("For longer");
    const other = await context.newPage();
    await other.goto(page.url());
    await other.getByRole("button", { name: "Remove the supplier" }).click();
    await expect(other.getByText("Removed.")).toBeVisible();
    await page.getByRole("button", { name: "Keep the supplier", exact: true }).click();
    await expect(page.getByRole("alert").filter({ hasText: "Changed meanwhile" })).toContainText(
      "It was removed there",
    );
    await page.getByRole("button", { name: "Keep it as a new one" }).click();
    await expect(page.getByRole("row").filter({ hasText: "For longer" })).toContainText("kept");
  });
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("the browser's own choice holds the same names and is sent as the same", async ({ page, expectFault }) => {
    expectFault(/^request failed: .*\.js: csp$/);
    await page.goto("/book/lots/new");
    const material = page.getByRole("combobox", { name: "Material", exact: true });
    await material.selectOption({ label: "Cetyl alcohol" });
    await page.getByRole("button", { name: "Keep the lot", exact: true }).click();
    await expect(page.getByText("Not kept yet")).toBeVisible();
    await expect(material).toHaveValue("m-cetyl");
  });
});
