/**
 * Buying, as a maker does it. The workshop is invented; its figures are worked by hand from the rules:
 * 20 × 100 g asks for 2,000 g of oil and 20 jars; 500 g are here, so 1,500 g and 20 jars are to be bought.
 *   Larch: oil 2 × 12.00 = 24.00, jars 2 × 9.00 = 18.00, together 42.00, delivery free from 40.00: 42.00
 *   Alder: oil 26.00, jars 15.00, delivery 4.00: 45.00
 *   by hand, the lowest unit price of each: oil at Larch 24.00 + 6.00, jars at Alder 15.00 + 4.00: 49.00
 */
import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";
import { expectSoundAtEverySize } from "./every-size";

test.use({ opened: "tests/journeys/buying-workshop.json" });

const finding = (page: Page) =>
  page
    .locator("main")
    .getByText(/with delivery|needs to be bought|can be bought/)
    .first();
const larch = (page: Page) => page.getByRole("region", { name: "Larch Wholesale" });
/** What the form stands behind. */
const FRAME = "Buy for how long, and from whom";
const PLACE = "I have ordered it, £42.00, from Larch Wholesale";

test("A maker sees the least-cost basket, what it saves and why, and the frame changes it", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Buying", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Buying", level: 1 })).toBeVisible();
  await expect(finding(page)).toHaveText(
    "One order, £42.00 with delivery. That is £7.00 less than by hand, and proven: no basket costs less.",
  );
  const order = page.getByRole("table", { name: "The order from Larch Wholesale" });
  await expect(order.getByRole("row", { name: /^Oat kernel oil 1.50 kg 2 × 1 kg £12.00 £24.00/ })).toBeVisible();
  await expect(order.getByRole("row", { name: /^Jar, 100 g 20 pieces 2 × 10 pieces £9.00 £18.00/ })).toBeVisible();
  await expect(order.getByRole("row", { name: /^Delivery .*reached\. £0.00/ })).toBeVisible();
  await expect(larch(page).getByText("Ordered today, comes Fri 27 Nov")).toBeVisible();
  await expect(page.getByText("500 g more than needed.")).toBeVisible();
  const needs = page.getByRole("table", { name: /^What is to be bought/ });
  await expect(
    needs.getByRole("row", { name: /^Oat kernel oil 1.50 kg Tue 8 Dec Thu 10 Dec Plain oil, Thu 10 Dec/ }),
  ).toBeVisible();
  await expectAccessible(page);

  // Without Larch's jars all comes from Alder: 45.00. Jars there are 3.00 cheaper, but delivery is 4.00.
  await page.getByText("How it comes about, Jar, 100 g").click();
  await page.getByRole("link", { name: "Why these? Jar, 100 g" }).click();
  await expect(
    page.getByRole("row").filter({ hasText: /1.×.20.pieces in place of 2.×.10.pieces would make it all £3.00 dearer/ }),
  ).toContainText("delivery £4.00 more. Delivery and minimum orders decided it.");
  await page.getByText("How it comes about, Oat kernel oil").click();
  await page.getByRole("link", { name: "Why these? Oat kernel oil" }).click();
  await expect(
    page.getByRole("row").filter({ hasText: /1.×.2.kg in place of 2.×.1.kg would make it all £3.00 dearer/ }),
  ).toContainText("The price of the goods decides.");

  await page.getByText(FRAME).click();
  await page.getByRole("checkbox", { name: "Larch Wholesale", exact: true }).check();
  await page.getByRole("button", { name: "Find the least cost" }).click();
  await expect(finding(page)).toHaveText(
    "One order, £45.00 with delivery. By hand it would be the same, and proven: no basket costs less.",
  );
  await page.getByRole("checkbox", { name: "Alder Supplies", exact: true }).check();
  await page.getByRole("button", { name: "Find the least cost" }).click();
  await expect(finding(page)).toHaveText("Nothing can be bought as you asked. Two materials cannot be bought.");
  await expect(page.getByRole("region", { name: "What cannot be done" })).toContainText(
    "Oat kernel oil: offered only by Larch Wholesale and Alder Supplies, and left out with them.",
  );
  await page.getByRole("link", { name: "As set in the Book" }).click();
  await expect(finding(page)).toContainText("£42.00");
  // Nothing is asked for any more: the form is folded again.
  await expect(page.getByRole("button", { name: "Find the least cost" })).toBeHidden();
  await page.getByText(FRAME).click();
  await expect(page.getByRole("checkbox", { name: "Larch Wholesale", exact: true })).not.toBeChecked();

  // Of twelve days of cover from Fri 27 November the run of 10 December is the fourteenth.
  await page.getByLabel("Cover", { exact: true }).selectOption("The days written here");
  await page.getByLabel("Days to cover").fill("12");
  await page.getByRole("button", { name: "Find the least cost" }).click();
  await expect(finding(page)).toContainText("Nothing needs to be bought");
  await page.getByLabel("Days to cover").fill("900");
  await page.getByRole("button", { name: "Find the least cost" }).click();
  await expect(page.getByText(/^Is more than the 56.days that the plan looks ahead/)).toBeVisible();
  await expect(page.getByLabel("Days to cover")).toHaveValue("900");
});

test("A maker places an order, and the plan counts it until it is taken back", async ({ page }) => {
  await page.goto("/week?of=2026-12-07");
  await expect(page.getByText("It cannot be made.").first()).toBeVisible();
  await page.goto("/buying");
  await page.getByText("The order as text").click();
  await expect(page.getByLabel("The order from Larch Wholesale as text")).toHaveValue(
    [
      "Order of A small purchase (invented), to Larch Wholesale",
      "Wednesday 25 November",
      "",
      "2 × 10 pieces Jar, 100 g, £9.00 each, £18.00",
      "2 × 1 kg Oat kernel oil, £12.00 each, £24.00",
      "",
      "Goods £42.00",
      "Delivery £0.00",
      "In all £42.00",
      "",
    ].join("\n"),
  );
  const saving = page.waitForEvent("download");
  await page.getByRole("link", { name: /^Save as CSV/ }).click();
  expect((await saving).suggestedFilename()).toBe("order.csv");
  const csv = await page.request.get("/buying/order?supplier=s1");
  expect(await csv.text()).toBe(
    [
      "Supplier,Material,Offer,Pack,Packs,Price of a pack,Cost,Currency,Comes on",
      'Larch Wholesale,"Jar, 100 g",j1,10 each,2,9.00,18.00,GBP,2026-11-27',
      "Larch Wholesale,Oat kernel oil,o1,1 kg,2,12.00,24.00,GBP,2026-11-27",
      "Larch Wholesale,Delivery,,,,,0.00,GBP,",
      "",
    ].join("\r\n"),
  );

  await page.getByRole("button", { name: PLACE }).click();
  await expect(page.getByRole("status")).toContainText("Ordered: two lines from Larch Wholesale, due Fri 27 Nov.");
  await expect(finding(page)).toHaveText(/^Nothing needs to be bought/);
  const onTheWay = page.getByRole("region", { name: "On the way" });
  await expect(onTheWay).toContainText("Oat kernel oil, 2.00 kg, £24.00");
  await expect(onTheWay).toContainText("Jar, 100 g, 20 pieces, £18.00");
  await expectAccessible(page);
  await page.goto("/week?of=2026-12-07");
  await expect(page.getByText("It can be made.").first()).toBeVisible();

  await page.goBack();
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByRole("status")).toHaveText("Taken back: the order from Larch Wholesale. It counts no more.");
  await expect(finding(page)).toContainText("£42.00");
  await expect(onTheWay).toContainText("Nothing is on order.");
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("A maker changes the frame, asks why and places the order", async ({ page, expectFault }) => {
    // A script that the browser was told not to run is reported as a request that the page's policy stopped.
    expectFault(/^request failed: .*\.js: csp$/);
    await page.goto("/buying");
    await page.getByText(FRAME).click();
    await page.getByRole("checkbox", { name: "Alder Supplies", exact: true }).check();
    await page.getByRole("button", { name: "Find the least cost" }).click();
    await page.getByText("How it comes about, Jar, 100 g").click();
    await page.getByRole("link", { name: "Why these? Jar, 100 g" }).click();
    await expect(page.getByText("No other offer of Jar, 100 g could serve")).toBeVisible();
    await page.getByRole("button", { name: PLACE }).click();
    await expect(page.getByRole("status")).toContainText("Ordered: two lines from Larch Wholesale");
    await expect(page.getByRole("checkbox", { name: "Alder Supplies", exact: true })).toBeChecked();
  });
});

test("Buying is shown at every width without moving sideways or cutting a word", async ({ page }) => {
  await page.goto("/buying?cover=days&days=900&why=o1");
  await expectSoundAtEverySize(page);
});
