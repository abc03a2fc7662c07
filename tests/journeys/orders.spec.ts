/**
 * An order from a short run to a run that can be made. The workshop is that of buying.spec.ts, invented: 1,500 g of oil
 * and 20 jars are to be bought, 42.00 at Larch: oil 2 × 12.00, jars 2 × 9.00, delivery free from 40.00.
 */
import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";

test.use({ opened: "tests/journeys/buying-workshop.json" });

const cannotBeMade = (page: Page) => page.getByText("It cannot be made.").first();

test("From a short run to a draft, an order, received packs and a run that can be made", async ({ page }) => {
  await page.goto("/week?of=2026-12-07");
  await expect(cannotBeMade(page)).toBeVisible();
  await page.goto("/buying");
  await page.getByRole("button", { name: "Draft Larch Wholesale’s order, £42.00" }).click();
  await expect(page.getByRole("heading", { name: "Order from Larch Wholesale", level: 1 })).toBeVisible();
  await expect(page.getByText("not ordered yet, so the plan does not expect it")).toBeVisible();
  await expectAccessible(page);

  // Fewer packs cost what the offer asks for so many, and delivery is paid below 40.00.
  const oil = page.getByLabel(/^Packs of Oat kernel oil/);
  await oil.fill("1");
  await page.getByRole("button", { name: "Keep these packs" }).click();
  await expect(page.getByRole("row", { name: /^Oat kernel oil 1 × 1 kg/ })).toBeVisible();
  await oil.fill("2");
  await page.getByRole("button", { name: "Keep these packs" }).click();
  await expect(page.getByRole("row", { name: /^This order £42.00/ })).toBeVisible();
  await page.getByLabel("It is due on").fill("2026-11-20");
  await page.getByRole("button", { name: "I have ordered it" }).click();
  await expect(page.getByText("Must not be before today, on which you order it")).toBeVisible();
  await page.getByLabel("It is due on").fill("2026-11-27");
  await page.getByRole("button", { name: "I have ordered it" }).click();
  await expect(page.getByText(/^Ordered\. The plan counts it as on the way/)).toBeVisible();

  // The oil comes first, dearer than its offer says; the jars are still to come.
  await page.getByRole("link", { name: "Receive it" }).click();
  await expect(page.getByLabel("Line 2, Paid for the line")).toHaveValue("24.00");
  await page.getByRole("button", { name: "Take out line 1" }).click();
  await expect(page.getByLabel("Line 1, Paid for the line")).toHaveValue("24.00");
  await page.getByLabel("Line 1, Lot number").fill("Came-1");
  await page.getByLabel("Line 1, Paid for the line").fill("26.00");
  await page.getByRole("button", { name: "Receive it" }).click();
  await expect(page.getByRole("heading", { name: /^Received/, level: 1 })).toBeVisible();

  await page.goto("/buying/orders");
  await expect(page.getByRole("row", { name: /^Larch Wholesale Partly received/ })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("link", { name: "Larch Wholesale" }).click();
  await expect(page.getByText("the offer says")).toBeVisible();
  await page.getByRole("button", { name: "Take it into the offer, lot Came-1" }).click();
  await expect(page.getByText(/^The offer asks from now on what was paid/)).toBeVisible();
  await expect(page.getByText("as the offer says")).toBeVisible();
  await expectAccessible(page);

  await page.getByRole("link", { name: "Receive the rest" }).click();
  await page.getByLabel("Line 1, Lot number").fill("Came-2");
  await page.getByRole("button", { name: "Receive it" }).click();
  await expect(page.getByRole("heading", { name: /^Received/, level: 1 })).toBeVisible();
  await page.goto("/week?of=2026-12-07");
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expect(cannotBeMade(page)).toHaveCount(0);
});

test("What is given up is expected no more, and another tab is told", async ({ page, context }) => {
  await page.goto("/buying");
  await page.getByRole("button", { name: "I have ordered it, £42.00, from Larch Wholesale" }).click();
  await expect(page.getByText(/^Ordered: two lines from Larch Wholesale/)).toBeVisible();
  await page.getByRole("region", { name: "On the way" }).getByRole("link", { name: "Larch Wholesale" }).click();
  await page.waitForURL(/\/buying\/orders\//);
  await expect(page.getByRole("heading", { name: "Order from Larch Wholesale", level: 1 })).toBeVisible();
  const other = await context.newPage();
  await other.goto(page.url());
  await page.getByRole("button", { name: "Give it up" }).click();
  await expect(page.getByText(/^The rest is given up/)).toBeVisible();
  await page.getByRole("button", { name: "It is to come after all" }).click();
  await expect(page.getByRole("link", { name: "Receive it" })).toBeVisible();
  await page.getByRole("button", { name: "Give it up" }).click();
  await expect(page.getByText(/^The rest is given up/)).toBeVisible();
  await other.getByRole("link", { name: "Receive it" }).click();
  await expect(other.getByText("Nothing is on order; write down what came.")).toBeVisible();
  await page.goto("/buying");
  await expect(page.getByText("Nothing is on order.")).toBeVisible();

  await page.goto("/buying/suggested/~oil");
  await expect(page.getByRole("table", { name: /^Suggestions for/ })).toBeVisible();
  // On a desk the suggestions stand beside what they are worked out from.
  const [from, to] = [page.getByRole("form", { name: "Worked out from" }), page.getByRole("table")];
  const [given, found] = [await from.boundingBox(), await to.boundingBox()];
  expect(given?.x).toBeGreaterThan((found?.x ?? Infinity) + (found?.width ?? Infinity));
  await expect(from.getByText("How the use of a day comes about")).toBeVisible();
  await page.getByLabel("Orders that should not run short, %").fill("100");
  await page.getByRole("button", { name: "Work it out again" }).click();
  await expect(page.getByText(/^Must be above 0 and below 100/)).toBeVisible();
  await expectAccessible(page);
});
