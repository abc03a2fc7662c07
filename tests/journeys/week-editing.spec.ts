/**
 * A maker plans her week: by mouse, by keyboard alone, without scripts, in two tabs. The workshop is invented; its
 * figures are worked by hand beside each check, by the rules named there.
 */
import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./fixtures";
import { expectSoundAtEverySize } from "./every-size";
import { expectChosen, MOUSE } from "./hands";

const WEEK = "tests/journeys/week-workshop.json";
test.use({ opened: WEEK });

const dayOf = (page: Page, name: string): Locator =>
  page.getByRole("list", { name: "Runs by day" }).getByRole("listitem").filter({ hasText: name });
const slipsOf = (page: Page, name: string): Locator => dayOf(page, name).locator(".run-slip");
const notice = (page: Page): Locator => page.locator(".week-notice");

test("By mouse: a maker plans a run by weight, drags it, resizes it, removes it and takes that back", async ({
  page,
}) => {
  await page.goto("/week");
  await page.getByRole("link", { name: "Plan a run on Sat 28 Nov" }).click();
  await MOUSE.choose(page, "Product", "Plain oil");
  await expect(page.getByLabel("Day", { exact: true })).toHaveValue("2026-11-28");
  await page.getByLabel("How much").fill("3 kg");
  await page.getByRole("button", { name: "Plan it" }).click();
  // NEED-1 backwards: (3000 × 0.96 − 12) / 100 = 28.68
  await expect(notice(page)).toContainText(
    "Planned: Plain oil, 28 units (3 kg in the vessel, rounded down to whole units)",
  );
  await expect(slipsOf(page, "Sat 28 Nov")).toContainText("28 units");

  await slipsOf(page, "Sat 28 Nov").dragTo(dayOf(page, "Mon 23 Nov"));
  await expect(notice(page)).toContainText("Moved: Plain oil, from Sat 28 Nov to Mon 23 Nov");
  await expect(slipsOf(page, "Sat 28 Nov")).toHaveCount(0);
  await expect(slipsOf(page, "Mon 23 Nov")).toContainText("28 units");
  await notice(page).getByRole("button", { name: "Take it back" }).click();
  await expect(slipsOf(page, "Sat 28 Nov")).toContainText("28 units");

  await slipsOf(page, "Sat 28 Nov").getByRole("link", { name: "Plain oil" }).first().click();
  const run = page.locator("details", { hasText: "Sat 28 Nov" }).first();
  await run.getByLabel("Units, or a weight in the vessel").fill("12");
  await run.getByRole("button", { name: "Change the size", exact: true }).click();
  await expect(notice(page)).toContainText("to 12 units; it was 28 units");
  await expect(slipsOf(page, "Sat 28 Nov")).toContainText("was 28 units");
  await run.getByRole("button", { name: /^Remove 12.units: Plain oil of Sat 28 Nov/ }).click();
  await expect(notice(page)).toContainText("Removed: Plain oil of Sat 28 Nov, 12 units.");
  await expect(slipsOf(page, "Sat 28 Nov")).toHaveCount(0);
  await notice(page).getByRole("button", { name: "Take it back" }).click();
  await expect(slipsOf(page, "Sat 28 Nov")).toContainText("12 units");
});

test("What was typed into a form of the week comes back after a reload, and is forgotten once it was kept", async ({
  page,
}) => {
  await page.goto("/week?plan=2026-11-28");
  await MOUSE.choose(page, "Product", "Plain oil");
  await page.getByLabel("How much").pressSequentially("33");
  await page.waitForFunction(() => Object.values(sessionStorage).some((kept) => String(kept).includes('"33"')));
  await page.reload();
  await expect(page.getByLabel("How much")).toHaveValue("33");
  await expectChosen(page.getByRole("combobox", { name: "Product" }), "Plain oil");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(notice(page)).toContainText("Planned: Plain oil, 33 units");
  await page.goto("/week?plan=2026-11-28");
  await expect(page.getByLabel("How much")).toHaveValue("");

  await page.getByLabel("How much").fill("90071993");
  await MOUSE.choose(page, "Product", "Plain oil");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(page.getByLabel("How much")).toHaveAccessibleDescription(/too large/);
});

test("A run dragged onto another goes before it", async ({ page }) => {
  await page.goto("/week");
  await expect(slipsOf(page, "Fri 27 Nov")).toContainText([/15.units/, /, 5.units/]);
  await slipsOf(page, "Fri 27 Nov").nth(1).dragTo(slipsOf(page, "Fri 27 Nov").nth(0));
  await expect(notice(page)).toContainText("to another place in its day");
  await expect(slipsOf(page, "Fri 27 Nov")).toContainText([/, 5.units/, /15.units/]);
  await notice(page).getByRole("button", { name: "Take it back" }).click();
  await expect(slipsOf(page, "Fri 27 Nov").first()).toContainText(/15.units/);
});

test("By keyboard alone: a maker plans, moves, resizes, reorders, removes and takes back", async ({ page }) => {
  await page.goto("/week");
  const reach = async (target: Locator) => {
    await target.focus();
    await expect(target).toBeFocused();
  };
  await reach(page.getByRole("link", { name: "Plan a run", exact: true }));
  await page.keyboard.press("Enter");
  await expect(page.getByRole("combobox", { name: "Product" })).toBeFocused();
  await page.keyboard.type("Oat");
  await page.keyboard.press("Tab");
  await page.getByLabel("Day", { exact: true }).fill("2026-11-29");
  await reach(page.getByLabel("How much"));
  await page.keyboard.type("4");
  await page.keyboard.press("Enter");
  await expect(notice(page)).toContainText("Planned: Oat conditioner, 4 units, on Sun 29 Nov.");

  // Lifted, walked two days to the left and one up, and put down.
  await reach(page.getByRole("link", { name: "Move Oat conditioner of Sun 29 Nov" }));
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Put it here: .* on Mon 23 Nov$/ })).toBeFocused();
  for (let step = 0; step < 4; step += 1) await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("button", { name: /on Fri 27 Nov, before Plain oil/ }).first()).toBeFocused();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await expect(notice(page)).toContainText("Moved: Oat conditioner, from Sun 29 Nov to Fri 27 Nov.");
  await expect(slipsOf(page, "Fri 27 Nov")).toContainText([/15.units/, /4.units/, /5.units/]);
  await expect(page.locator(".run-link").filter({ hasText: /4.units/ })).toBeFocused();
  // Lifted and left where it is.
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.locator(".put-here:focus")).toHaveCount(1);
  await page.keyboard.press("Escape");
  await expect(page.locator(".put-here")).toHaveCount(0);

  const row = page.locator("summary", { hasText: "4 units" });
  await reach(row);
  await page.keyboard.press("ArrowRight");
  const run = page.locator("details[open]");
  await reach(run.getByRole("button", { name: /^Later in the day/ }));
  await page.keyboard.press("Enter");
  await expect(slipsOf(page, "Fri 27 Nov")).toContainText([/15.units/, /5.units/, /4.units/]);
  await reach(run.getByLabel("Units, or a weight in the vessel"));
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("3");
  await page.keyboard.press("Enter");
  await expect(notice(page)).toContainText("to 3 units; it was 4 units");
  await reach(run.getByRole("button", { name: /^Remove 3.units: Oat conditioner/ }));
  await page.keyboard.press("Enter");
  await expect(notice(page)).toContainText("Removed: Oat conditioner of Fri 27 Nov, 3 units.");
  await reach(notice(page).getByRole("button", { name: "Take it back" }));
  await page.keyboard.press("Enter");
  await expect(slipsOf(page, "Fri 27 Nov")).toContainText([/15.units/, /5.units/, /3.units/]);
});

test("A day is suggested for a run that is short, and the page says what moving there changed; the shelf follows", async ({
  page,
}) => {
  await page.goto("/shelf");
  // r2 needs 6000 × 0.02 = 120 g and 36 g are there
  await expect(page.getByRole("img", { name: /^Oat protein: .*short by 84.g on Thu 26 Nov/ })).toBeVisible();
  await page.goto("/week");
  await expect(page.getByText("Four runs,")).toContainText("Moved to Mon 30 Nov it could be made in full.");
  const run = page.locator("details", { hasText: "Thu 26 Nov" }).first();
  await run.locator("summary").first().click();
  await expect(run).toContainText(
    "On Mon 30 Nov it could be made in full, if order PO-1 of Larch Wholesale comes in by Mon 30 Nov.",
  );
  await page
    .getByRole("button", { name: /^Move to Mon 30 Nov/ })
    .first()
    .click();
  await expect(notice(page)).toContainText("Moved: Oat conditioner, from Thu 26 Nov to Mon 30 Nov");
  const changed = notice(page).locator("section", { has: page.getByRole("heading", { name: "What this changed" }) });
  await expect(changed).toContainText("Oat conditioner of Mon 30 Nov can be made");
  await expect(changed).toContainText("was short 84 g of Oat protein");
  // Three working days before Thu 26 Nov (DAY-3)
  await expect(changed).toContainText("Oat protein: no order needed was Mon 23 Nov");
  await page.getByRole("link", { name: "Shelf", exact: true }).click();
  await expect(page.getByRole("img", { name: /^Oat protein: .*covers every planned run/ })).toBeVisible();
  await page.goBack();
  await page.reload();
  await expect(notice(page)).toContainText("was short 84 g of Oat protein");
});

test("A maker says her hours and sees which day asks for more", async ({ page }) => {
  await page.goto("/week");
  await page.getByRole("link", { name: "Say your bench hours" }).click();
  await page.getByLabel("Thursday").fill("2h");
  await page.getByLabel("Friday").fill("five");
  await page.getByRole("button", { name: "Keep these hours" }).click();
  await expect(page.getByText("Must be hours, as 5, 7.5 or 5:30")).toBeVisible();
  await expect(page.getByLabel("Thursday")).toHaveValue("2h");
  await page.getByLabel("Friday").fill("5:30");
  await page.getByRole("button", { name: "Keep these hours" }).click();
  await expect(notice(page)).toContainText("Your hours at the bench are kept.");
  // Thu 60 + 30 × 3 = 150 of 120; Fri 30 + 15 + 30 + 5 = 80 of 330; Tue 40 and no hours
  await expect(dayOf(page, "Thu 26 Nov")).toContainText("30 min over");
  await expect(dayOf(page, "Thu 26 Nov")).toContainText(/2.h.30.min of 2.h/);
  await expect(dayOf(page, "Fri 27 Nov")).toContainText(/1.h.20.min of 5.h.30.min/);
  await expect(dayOf(page, "Sat 28 Nov")).toContainText("No bench hours");
  await expect(page.getByText("Four runs,")).toContainText(
    /4.h.30.min of 7.h.30.min at the bench; Tuesday and Thursday ask for more/,
  );
  await notice(page).getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByText("Your hours at the bench are not said any more.")).toBeVisible();
});

test("What is typed wrong is told at its field and stays; nothing is planned", async ({ page }) => {
  await page.goto("/week?plan=2026-11-28");
  const size = page.getByLabel("How much");
  const told = [
    ["", "Missing: write units, as 24, or a weight, as 6 kg"],
    ["1,500", "write 1500 or 1.5"],
    ["0", "Must be at least 1 unit"],
    ["-3", "Must not be below zero"],
    ["2 L", "2 L is a volume"],
    ["10 g", "Does not fill one unit"],
    ["<b>x</b>", "Must be a number and a unit"],
    ["99999999999999999999", "is too large"],
  ] as const;
  await MOUSE.choose(page, "Product", "Plain oil");
  for (const [typed, words] of told) {
    await size.fill(typed);
    await page.getByRole("button", { name: "Plan it" }).click();
    await expect(page.locator(".field-fault")).toContainText(words);
    await expect(size).toHaveValue(typed);
    await expect(size).toBeFocused();
  }
  await expectChosen(page.getByRole("combobox", { name: "Product" }), "Plain oil");
  await expect(slipsOf(page, "Sat 28 Nov")).toHaveCount(0);
});

test("Two tabs: a form drawn before the run was changed says so and overwrites nothing", async ({ page, context }) => {
  await page.goto("/week?run=r4");
  const other = await context.newPage();
  await other.goto("/week?run=r4");
  const size = (on: Page) => on.locator("details[open]").getByLabel("Units, or a weight in the vessel");
  await size(other).fill("8");
  await size(other).press("Enter");
  await expect(notice(other)).toContainText("to 8 units; it was 5 units");
  await size(page).fill("6");
  await size(page).press("Enter");
  await expect(page.getByRole("alert").filter({ hasText: "Changed meanwhile" })).toContainText(
    /it is on Fri.27.Nov.2026 now, with 8.units\. Nothing was overwritten/,
  );
  await expect(size(page)).toHaveValue("6");
  await expect(slipsOf(page, "Fri 27 Nov").nth(1)).toContainText(/8.units/);
  await size(page).press("Enter");
  await expect(notice(page)).toContainText("to 6 units; it was 8 units");
  // Removed as it was seen here, and it is not so any more.
  await other
    .locator("details[open]")
    .getByRole("button", { name: /^Remove/ })
    .click();
  await expect(notice(other)).toContainText("was changed meanwhile, in another tab");
  await expect(slipsOf(other, "Fri 27 Nov")).toHaveCount(2);
  await other
    .locator("details[open]")
    .getByRole("button", { name: /^Remove/ })
    .click();
  await expect(notice(other)).toContainText("Removed: Plain oil of Fri 27 Nov, 6 units.");
  await page.locator("details[open]").getByLabel("Move to").fill("2026-11-29");
  await page.locator("details[open]").getByRole("button", { name: "Move the run", exact: true }).click();
  await expect(page.getByText("was removed meanwhile, in another tab").first()).toBeVisible();
});

test("Sent twice it is one run; going back and reloading change nothing", async ({ page }) => {
  await page.goto("/week");
  await page.getByRole("link", { name: "Plan a run on Sun 29 Nov" }).click();
  await MOUSE.choose(page, "Product", "Plain oil");
  await page.getByLabel("How much").fill("7");
  await page.getByRole("button", { name: "Plan it" }).dblclick();
  await expect(notice(page)).toContainText("Planned: Plain oil, 7 units");
  await expect(slipsOf(page, "Sun 29 Nov")).toHaveCount(1);
  await page.reload();
  await expect(slipsOf(page, "Sun 29 Nov")).toHaveCount(1);
  await page.goBack();
  await expect(slipsOf(page, "Sun 29 Nov")).toHaveCount(1);
  await page.goForward();
  await expect(slipsOf(page, "Sun 29 Nov")).toHaveCount(1);
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("a maker plans, moves, resizes, reorders, closes, removes and takes back all the same", async ({
    page,
    expectFault,
  }) => {
    // A script that the browser was told not to run is reported as a request that the page's policy stopped.
    expectFault(/^request failed: .*\.js: csp$/);
    await page.goto("/week");
    await page.getByRole("link", { name: "Plan a run on Sat 28 Nov" }).click();
    await page.getByRole("combobox", { name: "Product" }).selectOption("Oat conditioner");
    await page.getByLabel("How much").fill("1,500");
    await page.getByRole("button", { name: "Plan it" }).click();
    await expect(page.locator(".field-fault")).toContainText("write 1500 or 1.5");
    await expect(page.getByLabel("How much")).toHaveValue("1,500");
    await expect(page.getByRole("combobox", { name: "Product" })).toHaveValue("oatcon");
    await page.getByLabel("How much").fill("1.1 kg");
    await page.getByRole("button", { name: "Plan it" }).click();
    await expect(notice(page)).toContainText("Planned: Oat conditioner, 5 units (1.1 kg in the vessel");
    await page.reload();
    await expect(slipsOf(page, "Sat 28 Nov")).toHaveCount(1);

    await page.getByRole("link", { name: "Move Oat conditioner of Sat 28 Nov" }).click();
    await page.getByRole("button", { name: /^Put it here: .* on Wed 25 Nov$/ }).click();
    await expect(notice(page)).toContainText("Moved: Oat conditioner, from Sat 28 Nov to Wed 25 Nov.");
    await notice(page).getByRole("button", { name: "Take it back" }).click();
    await expect(slipsOf(page, "Sat 28 Nov")).toHaveCount(1);

    await page.goto("/week?run=r4");
    const run = page.locator("details[open]");
    await run.getByRole("button", { name: /^Earlier in the day/ }).click();
    await expect(slipsOf(page, "Fri 27 Nov")).toContainText([/, 5.units/, /15.units/]);
    await run.getByLabel("Move to").fill("2026-11-27");
    await run.getByRole("button", { name: "Move the run", exact: true }).click();
    await expect(page.locator(".field-fault")).toContainText("Is the day it is on");
    await page.goto("/week?run=r4");
    await run.getByLabel("Units, or a weight in the vessel").fill("6");
    await run.getByRole("button", { name: "Change the size", exact: true }).click();
    await expect(notice(page)).toContainText("to 6 units; it was 5 units");
    await run.getByRole("button", { name: /^Remove/ }).click();
    await expect(slipsOf(page, "Fri 27 Nov")).toHaveCount(1);
    await notice(page).getByRole("button", { name: "Take it back" }).click();
    await expect(slipsOf(page, "Fri 27 Nov")).toHaveCount(2);

    await page.goto("/week");
    await slipsOf(page, "Tue 24 Nov").getByRole("link", { name: "Made: close Plain oil of Tue 24 Nov" }).click();
    await page.getByRole("button", { name: /^Close it as made/ }).click();
    await expect(notice(page)).toContainText("Made. The run left the plan");
  });
});

test("Every state of the week is whole and accessible at every size, light and dark", async ({ page }) => {
  const states = ["?run=r2", "?lift=r3", "?plan=2026-11-28", "?hours=1", "?did=moved&about=r2&was=2026-11-30"];
  for (const state of states) {
    await page.goto(`/week${state}`);
    await expectSoundAtEverySize(page);
  }
});
