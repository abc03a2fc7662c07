/** The weeks of the demo workshop. Its figures are worked by hand in seed/WORKED.md, by the rules named there. */
import { expect, test } from "./fixtures";

test("A maker sees this week's runs, that one of Monday is not closed, and the hours at the bench", async ({
  page,
}) => {
  await page.goto("/week");
  await expect(page.getByRole("heading", { level: 1, name: "23 to 29 November" })).toBeVisible();
  // mist 30 + 20 × 1, conditioner 60 + 24 × 1.5, balm 45 + 30 × 1 minutes: 221
  await expect(page.getByText("Three runs,")).toContainText("3 h 41 min at the bench. All can be made.");
  const days = page.getByRole("list", { name: "Runs by day" });
  await expect(days.getByRole("listitem")).toHaveCount(7);
  await expect(days.getByRole("link", { name: /^Linen mist/ })).toContainText("Not closed: draws today");
});

test("A maker goes on to the weeks after and sees which runs cannot be made and why", async ({ page }) => {
  await page.goto("/week");
  await page.getByRole("link", { name: "Week after" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "30 November to 6 December" })).toBeVisible();
  await page.getByRole("link", { name: "Week after" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "7 to 13 December" })).toBeVisible();
  await expect(page.getByText("Five runs,")).toContainText("Three can be made, two cannot.");
  await expect(page.getByText("Five runs,")).toContainText(/are short of Cationic emulsifier/);
  const slip = page.getByRole("list", { name: "Runs by day" }).getByRole("link", { name: /^Conditioner, 200.g jar/ });
  await expect(slip).toContainText("Short 198 g");
  await expect(slip).toContainText("8 units could be made");
  await page.getByRole("link", { name: "This week" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "23 to 29 November" })).toBeVisible();
});

test("A maker follows a slip to the run's draws, its working and the run that took what it lacks", async ({ page }) => {
  await page.goto("/week?of=2026-12-08");
  await page
    .getByRole("list", { name: "Runs by day" })
    .getByRole("link", { name: /^Conditioner, 200.g jar/ })
    .click();
  const run = page.locator("details", { hasText: "Tue 8 Dec" }).first();
  await expect(run).toHaveAttribute("open", "");
  await expect(run).toContainText("At its turn the shelf allows 8 units at most; Cationic emulsifier");
  // r05 is nearer, but 186.3375 g of it are not enough
  await expect(run).toContainText(
    "Conditioner, 200 g jar of Mon 30 Nov took it: without that run this one could be made.",
  );
  const draws = run.getByRole("table");
  await expect(draws.getByRole("row", { name: /^Cationic emulsifier/ })).toContainText("304 g");
  await expect(draws.getByRole("row", { name: /^Cationic emulsifier/ })).toContainText("106 g");
  await expect(draws.getByRole("row", { name: /^Label, large/ })).toContainText("24 pieces at least");
  // (24 × (200 + 2) + 12) / 0.96
  await expect(run.getByText(/^4,848\.00.g$/)).toBeVisible();
  await expect(run.getByText(/^5,062\.50.g$/)).toBeVisible();
});

test("A maker sees what the week draws, and that the rest is covered", async ({ page }) => {
  await page.goto("/week?of=2026-W50");
  await expect(page.getByRole("heading", { level: 1, name: "7 to 13 December" })).toBeVisible();
  const draws = page.getByRole("table", { name: "What the week draws" });
  await expect(draws.getByRole("cell", { name: /^304\s+g\s+short\s+198\s+g$/ })).toBeVisible();
  await expect(draws.getByRole("row", { name: /^Sunflower seed oil/ })).toHaveCount(0);
  await page.getByRole("link", { name: /^Show all / }).click();
  await expect(draws.getByRole("row", { name: /^Sunflower seed oil/ })).toHaveCount(1);
  await draws.getByRole("link", { name: "Beeswax" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "The shelf" })).toBeVisible();
  await expect(page.locator("details", { hasText: "Beeswax" })).toHaveAttribute("open", "");
});

test("A maker sees the most that the shelf allows of each product today", async ({ page }) => {
  await page.goto("/week");
  const most = page.locator("section", { has: page.getByRole("heading", { name: /^Most you can make/ }) });
  // 900 / 0.06 × 0.96 − 12 = 14388, / 202 = 71.2; tins 36; no apricot
  await expect(most.getByRole("listitem").filter({ hasText: "Conditioner, 200 g jar" })).toContainText(/^71/);
  await expect(most.getByRole("listitem").filter({ hasText: "Balm" })).toContainText("stopped by Tin, 50 g, 36 pieces");
  await expect(most.getByRole("listitem").filter({ hasText: "Sugar scrub" })).toContainText(/^0/);
});

test("A maker who asks for a week without runs is told when the next one is", async ({ page }) => {
  await page.goto("/week?of=2026-12-28");
  await expect(page.getByRole("heading", { level: 1, name: "28 December 2026 to 3 January 2027" })).toBeVisible();
  await expect(page.getByText("No runs planned in this week.")).toContainText(
    "The next is Balm, 50 g tin, Tue 5 Jan 2027.",
  );
});

test("An address that names no week shows this one", async ({ page }) => {
  for (const of of ["2026-W54", "yesterday", "2026-02-30"]) {
    await page.goto(`/week?of=${of}`);
    await expect(page.getByRole("heading", { level: 1, name: "23 to 29 November" })).toBeVisible();
  }
});
