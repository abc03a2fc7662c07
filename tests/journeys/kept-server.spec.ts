import { expect, test } from "./fixtures";
import { MOUSE } from "./hands";

const WEEK = "tests/journeys/week-workshop.json";
test.use({ opened: WEEK });

test("What a journey has left in the store is gone when the next one begins, in the same workshop or another", async ({
  page,
  app,
  kept,
}) => {
  const saved = async (): Promise<string> => (await fetch(`${app.url}/workshop-file`)).text();
  const planned = page
    .getByRole("list", { name: "Runs by day" })
    .getByRole("listitem")
    .filter({ hasText: "Sat 28 Nov" });
  const asFilled = await saved();

  await page.goto("/week?plan=2026-11-28");
  await MOUSE.choose(page, "Product", "Plain oil");
  await page.getByLabel("How much").fill("28");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(planned).toContainText("28 units");
  expect(await saved()).not.toBe(asFilled);

  await kept.begin("tests/journeys/buying-workshop.json");
  expect(await saved()).toContain("A small purchase (invented)");
  await kept.begin(WEEK);
  expect(await saved()).toBe(asFilled);
  await page.goto("/week");
  await expect(planned).toBeVisible();
  await expect(planned).not.toContainText("28 units");
});
