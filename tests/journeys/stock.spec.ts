/**
 * A maker receives packs, sets a lot aside, writes some of it off, counts and takes back. The workshop is invented; its
 * figures are worked by hand beside each check, by the rules named there.
 */
import type { Page } from "@playwright/test";
import { expect, test } from "./fixtures";
import { expectSoundAtEverySize } from "./every-size";
import { MOUSE } from "./hands";

test.use({ opened: "tests/journeys/week-workshop.json" });

const finding = (page: Page) => page.locator(".finding");

async function fillDelivery(page: Page, choose = MOUSE.choose): Promise<void> {
  await page.getByLabel("Line 1, Lot number").fill("OP-77");
  await page.getByLabel("Line 1, Last day of use").fill("2028-03");
  await choose(page, "Line 2, Offer or material", "Jar, 200 g, 50 pieces, Larch Wholesale");
  await page.getByLabel("Line 2, Packs").fill("1");
  await page.getByLabel("Line 2, Lot number").fill("J-9");
  await page.getByLabel("Line 2, Paid for the line").fill("£30.00");
  await page.getByLabel("Delivery", { exact: false }).first().fill("4.40");
}

test("Packs come in against an order: each line's cost is shown first, posted once, and can be taken back", async ({
  page,
}) => {
  await page.goto("/shelf");
  await page.getByRole("link", { name: "Receive a delivery" }).click();
  await expect(finding(page)).toContainText("One order is open. Choose the one that came");
  await page.getByRole("link", { name: "Larch Wholesale, due Mon 30 Nov" }).click();
  await expect(page.getByLabel("Line 1, In a pack")).toHaveValue("250 g");
  await fillDelivery(page);
  await page.getByLabel("Line 2, Lot number").fill("L4");
  await page.getByRole("button", { name: "Show what each line costs" }).click();
  await expect(page.getByLabel("Line 2, Lot number")).toHaveAccessibleDescription(/there is a lot L4 already/i);
  await expect(page.getByLabel("Line 1, Lot number")).toHaveValue("OP-77");
  await page.getByLabel("Line 2, Lot number").fill("J-9");
  await page.getByRole("button", { name: "Show what each line costs" }).click();
  // LEDGER-6, LEDGER-9: 4.40 over 14.00 and 30.00 is 1.40 and 3.00
  const shown = page.getByRole("status").filter({ hasText: "Nothing is kept yet" });
  await expect(shown.getByRole("row", { name: /Oat protein, lot OP-77/ })).toContainText("£15.40");
  await expect(shown.getByRole("row", { name: /Jar, 200 g, lot J-9/ })).toContainText("£33.00");
  await expect(shown.getByRole("row", { name: /^All/ })).toContainText("£48.40");
  await page.getByRole("button", { name: "Receive it" }).dblclick();

  await expect(page.getByRole("heading", { level: 1, name: /^Received/ })).toBeVisible();
  await expect(finding(page)).toContainText("from Larch Wholesale, order PO-1");
  const received = page.getByRole("row", { name: /Oat protein, lot OP-77 to the shelf/ });
  await expect(received).toContainText("250 g");
  await expect(received).toContainText("£15.40");
  await received.getByRole("link", { name: "Oat protein, lot OP-77" }).click();
  // A month means its last day (LEDGER-9, DAY-1)
  await expect(finding(page)).toContainText(
    "250 g on the shelf, worth £15.40. Came in Wed 25 Nov, last day of use Fri 31 Mar",
  );
  await page.goto("/shelf/receive");
  await expect(finding(page)).toContainText("Nothing is on order");

  await page.goBack();
  await page.getByRole("link", { name: "Received" }).first().click();
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByLabel("Why")).toHaveAccessibleDescription(/say why/i);
  await page.getByLabel("Why").fill("entered twice");
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(finding(page)).toContainText(/It was taken back for Wed.25.Nov.2026: “entered twice”/);
  await expect(page.getByRole("button", { name: "Take it back" })).toHaveCount(0);
});

test("Some of a lot is set aside, released and written off; its page says where all of it has gone", async ({
  page,
}) => {
  await page.goto("/shelf?open=oil");
  await page.getByRole("link", { name: "L1", exact: true }).click();
  await expect(finding(page)).toContainText("600 g on the shelf, worth £7.20.");
  await page.getByRole("link", { name: "Put it on hold" }).click();
  await page.getByLabel("How much").fill("700 g");
  await page.getByLabel("Why").selectOption("Recalled by the supplier");
  await page.getByRole("button", { name: "Put it on hold" }).click();
  await expect(page.getByLabel("How much")).toHaveAccessibleDescription(/asks for 700.g; there is 600.g on the shelf/i);
  await expect(page.getByLabel("How much")).toHaveValue("700 g");
  await page.getByLabel("How much").fill("0.2 kg");
  await page.getByRole("button", { name: "Put it on hold" }).click();
  await expect(finding(page)).toContainText("400 g on the shelf and 200 g on hold, worth £7.20.");
  await expect(page.getByText("On hold: no plan draws on it.")).toBeVisible();
  // LEDGER-14: what is on hold is not on the shelf: 400 g of L1 and 20 kg of L2
  await page.goto("/shelf?open=oil");
  await expect(page.locator("summary", { hasText: "Oat kernel oil" })).toContainText("20.4 kg");
  await page.getByRole("link", { name: "L1", exact: true }).click();
  // The row that was left says "release it or write it off" as well.
  await expect(page.getByRole("heading", { level: 1, name: "Oat kernel oil, lot L1" })).toBeVisible();

  await page.getByRole("link", { name: "Write it off", exact: true }).click();
  await page.getByLabel("Why").selectOption("Recalled");
  await page.getByLabel("From", { exact: true }).selectOption("what is on hold");
  await page.getByLabel("How much").fill("50 g");
  await page.getByRole("button", { name: "Write it off" }).click();
  // LEDGER-7: 50 of 600 g that cost 7.20 take 0.60 along
  await expect(finding(page)).toContainText("400 g on the shelf and 150 g on hold, worth £6.60.");
  await page.getByRole("link", { name: "Release it" }).click();
  await page.getByLabel("Why").fill("the supplier's letter names another lot");
  await page.getByRole("button", { name: "Release it" }).click();
  await expect(finding(page)).toContainText("550 g on the shelf, worth £6.60.");

  const trace = page.getByRole("table", { name: "All that came of it, and where it has gone" });
  await expect(trace.getByRole("row", { name: /On the shelf/ })).toContainText("550 g");
  await expect(trace.getByRole("row", { name: /Lost/ })).toContainText("50 g");
  await expect(trace.getByRole("row", { name: /All that came/ })).toContainText("600 g");
  await expect(page.getByText("All of it is accounted for.")).toBeVisible();

  await page.getByRole("link", { name: "Add a cost that came later" }).click();
  await page.getByLabel("Amount").fill("6.00");
  await page.getByLabel("What it is").fill("freight, bill 12");
  await page.getByRole("button", { name: "Add a cost that came later" }).click();
  // LEDGER-10: 550 and 50 of 600 g share 6.00 as 5.50 and 0.50
  await expect(page.getByRole("row", { name: /lot L1 to the shelf/ })).toContainText("£5.50");
  await expect(page.getByRole("row", { name: /lot L1 to lost/ })).toContainText("£0.50");
  await page
    .getByRole("link", { name: /Oat kernel oil, lot L1/ })
    .first()
    .click();
  await expect(finding(page)).toContainText("worth £12.10.");
});

test("The shelf is counted: gross less tare, the differences and their value first, then one posting", async ({
  page,
}) => {
  await page.goto("/shelf/count");
  await expect(finding(page)).toContainText("Four lots to count today");
  const oil = page.getByRole("row", { name: /Oat kernel oil, lot L1/ });
  await oil.getByRole("textbox", { name: /^Balance shows/ }).fill("850");
  await oil.getByRole("textbox", { name: /^Less the vessel/ }).fill("900");
  await page
    .getByRole("row", { name: /lot L4/ })
    .getByRole("textbox", { name: /^Counted/ })
    .fill("150");
  await page.getByLabel("Why it was counted").fill("month’s end");
  await page.getByRole("button", { name: "Show the differences" }).click();
  await expect(oil.getByRole("textbox", { name: /^Less the vessel/ })).toHaveAccessibleDescription(
    /more than the balance/,
  );
  await expect(oil.getByRole("textbox", { name: /^Balance shows/ })).toHaveValue("850");
  await oil.getByRole("textbox", { name: /^Less the vessel/ }).fill("0.26 kg");
  await page.getByRole("button", { name: "Show the differences" }).click();
  // 850 − 260 = 590 g; LEDGER-13: 10 of 600 g that cost 7.20 are 0.12
  const shown = page.getByRole("status").filter({ hasText: "Nothing is kept yet" });
  await expect(shown.getByRole("row", { name: /lot L1/ })).toContainText("−10 g");
  await expect(shown.getByRole("row", { name: /lot L1/ })).toContainText("−£0.12");
  await expect(shown).toContainText(
    /^One lot differs: Oat kernel oil, lot L1, −10.g, £0\.12 less\. One is as written down\./,
  );
  await expect(shown.getByRole("row", { name: /lot L4/ })).toHaveCount(0);
  await page.getByRole("button", { name: "Keep the count of two lots" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /^Counted/ })).toBeVisible();
  await page.getByRole("link", { name: "Oat kernel oil, lot L1" }).first().click();
  await expect(finding(page)).toContainText("590 g on the shelf, worth £7.08.");
});

test("A count of a lot that moved meanwhile is refused, and what was typed stays", async ({ page, context }) => {
  await page.goto("/shelf/count");
  const oil = page
    .getByRole("row", { name: /Oat kernel oil, lot L1/ })
    .getByRole("textbox", { name: /^Balance shows/ });
  await oil.fill("580");
  await page.getByLabel("Why it was counted").fill("a spill");
  const other = await context.newPage();
  await other.goto("/shelf/lots/L1?do=off");
  await other.getByLabel("Why").selectOption("Spilt");
  await other.getByLabel("How much").fill("20 g");
  await other.getByRole("button", { name: "Write it off" }).click();
  await expect(finding(other)).toContainText("580 g on the shelf");
  await page.getByRole("button", { name: "Keep the count" }).click();
  await expect(oil).toHaveAccessibleDescription(/580.g is written down now/);
  await expect(oil).toHaveValue("580");
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });
  test("a delivery and a count are shown and posted", async ({ page, expectFault }) => {
    expectFault(/request failed: .*: csp$/);
    await page.goto("/shelf/receive?order=PO-1");
    await fillDelivery(page, async (on, label, option) => {
      await on.getByLabel(label).selectOption({ label: option });
    });
    await page.getByRole("button", { name: "Show what each line costs" }).click();
    await expect(page.getByRole("row", { name: /Oat protein, lot OP-77/ })).toContainText("£15.40");
    await page.getByRole("button", { name: "Receive it" }).click();
    await expect(page.getByRole("heading", { level: 1, name: /^Received/ })).toBeVisible();
    await page.goto("/shelf/count");
    await page
      .getByRole("row", { name: /lot L3/ })
      .getByRole("textbox", { name: /^Balance shows/ })
      .fill("30");
    await page.getByLabel("Why it was counted").fill("a check");
    await page.getByRole("button", { name: "Show the differences" }).click();
    await expect(page.getByRole("row", { name: /lot L3/ }).first()).toContainText("−6 g");
    await page.getByRole("button", { name: "Keep the count" }).click();
    await expect(page.getByRole("heading", { level: 1, name: /^Counted/ })).toBeVisible();
  });
});

for (const path of ["/shelf/receive?order=PO-1", "/shelf/lots/L1?do=off"])
  test(`${path} holds at every width, in both schemes, and axe finds nothing`, async ({ page }) => {
    await page.goto(path);
    await expectSoundAtEverySize(page);
  });
