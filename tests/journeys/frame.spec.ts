/**
 * The frame of a purchase. The small workshop is that of buying.spec.ts, worked there by hand, with a shelf life: Larch's
 * oil comes on Fri 27 November and keeps ten days, to Mon 7 December, and the run is on Thu 10 December.
 * The large one is invented by dice, and its search takes longer than a page waits.
 */
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { largeBasket } from "../helpers/large-baskets";
import { expect, expectAccessible, test } from "./fixtures";
import { expectWhole } from "./layout";
import { PROJECT } from "./server";

const folder = mkdtempSync(join(tmpdir(), "stillroom-frame-"));
const written = (name: string, file: object): `${string}.json` => {
  const path = `${join(folder, name)}.json` as const;
  writeFileSync(path, JSON.stringify(file));
  return path;
};

interface SmallFile {
  readonly offers: readonly { readonly id: string }[];
}
const small = JSON.parse(readFileSync(join(PROJECT, "tests/journeys/buying-workshop.json"), "utf8")) as SmallFile;
const SMALL = written("small", {
  ...small,
  version: 3,
  offers: small.offers.map((offer) => (offer.id === "o1" ? { ...offer, shelfLifeDays: 10 } : offer)),
});

/** What the page says of its own scripts where the browser runs none. */
const STOPPED_SCRIPT = /^request failed: .*\.js: csp$/;

const finding = (page: Page) =>
  page
    .locator("main")
    .getByText(/with delivery|needs to be bought|can be bought|must be ordered/)
    .first();
/** What the form stands behind. */
const FRAME = "Buy for how long, and from whom";
const find = (page: Page) => page.getByRole("button", { name: "Find the least cost" }).click();

test.describe("A small purchase", () => {
  test.use({ opened: SMALL });

  test("A maker sets each part of the frame, and the address carries it", async ({ page }) => {
    await page.goto("/buying");
    await expect(finding(page)).toContainText("£42.00");
    await page.getByText(FRAME).click();
    await page.getByText("Order day, spending, leftovers, and whom to buy from").click();
    await page.getByLabel("May be spent, £").fill("40");
    await find(page);
    const cannot = page.getByRole("region", { name: "What cannot be done" });
    await expect(cannot).toHaveText(/The least that it costs is £42.00, £2.00 more than may be spent\./);
    await expect(page).toHaveURL(/\/buying\?cap=40$/);

    // Larch's oil would be out of date: all from Alder, 26.00 + 15.00 + 4.00.
    await page.getByLabel("May be spent, £").fill("");
    await page.getByRole("checkbox", { name: /^Nothing that goes out of date/ }).check();
    await find(page);
    await expect(finding(page)).toContainText("£45.00");
    await expect(page).toHaveURL(/\/buying\?keep=yes$/);
    await page.getByText("How it comes about, Oat kernel oil").click();
    await page.getByRole("link", { name: "Why these? Oat kernel oil" }).click();
    await expect(page.getByText("What would go out of date decided it.")).toBeVisible();
    await page.goBack();
    await page.goBack();
    await expect(cannot).toContainText("more than may be spent");

    // Held to Larch and its oil must keep: nothing of the oil can be bought.
    await page.goto("/buying?only=s1&keep=yes");
    await expect(cannot).toContainText(
      "Oat kernel oil: 1.50 kg of 1.50 kg would be out of date before a run takes it, after Mon 7 Dec.",
    );
    // Larch's oil does not keep to the plan's end; of Alder's 500 g are over, at half of 13.00 a kilogram 3.25.
    await page.goto("/buying?left=50&out=s1");
    await expect(page.getByText("Leftovers count for", { exact: true })).toBeVisible();
    await expect(page.getByText("£3.25", { exact: true })).toBeVisible();
    await expect(page.getByText("£41.75", { exact: true })).toBeVisible();
    await page.goto("/buying?by=2026-12-01");
    await expect(finding(page)).toHaveText("Nothing must be ordered by that day: two materials wait.");
    await expect(page.getByRole("row", { name: /^Oat kernel oil .* May wait\./ })).toBeVisible();
    await page.getByLabel("Oat kernel oil").selectOption("Alder Supplies, 2 kg");
    await page.getByLabel("Only what must be ordered by").fill("");
    await find(page);
    await expect(finding(page)).toContainText("£45.00");
    await expectAccessible(page);
  });

  test.describe("without scripts", () => {
    test.use({ javaScriptEnabled: false });

    test("what was typed stays where it was not understood", async ({ page, expectFault }) => {
      expectFault(STOPPED_SCRIPT);
      await page.goto("/buying");
      await page.getByText(FRAME).click();
      await page.getByText("Order day, spending, leftovers, and whom to buy from").click();
      await page.getByLabel("Useful leftovers count, % of their price").fill("150");
      await page.getByLabel("Only what must be ordered by").fill("soon");
      await find(page);
      await expect(page).toHaveURL(/\/buying\?.*left=150/);
      await expect(page.getByText(/^Must be from 0 to 100 %/)).toBeVisible();
      await expect(page.getByLabel("Only what must be ordered by")).toHaveValue("soon");
      await expect(finding(page)).toContainText("£42.00");
    });
  });
});

/** Every material is below its safety stock and nothing else happens: what is wanted is that stock. */
const dice = largeBasket({ materials: 40, suppliers: 5, offersEach: 5, seed: 3 });
const money = (micros: bigint) => (Number(micros) / 1e6).toFixed(2);
const LARGE = written("large", {
  format: "stillroom-workshop",
  version: 1,
  workshop: {
    name: "A large purchase (invented)",
    currency: "GBP",
    today: "2026-11-25",
    labourPerHour: "15.00",
    overheadPerHour: "3.00",
    balanceStep: "0.1 g",
  },
  suppliers: dice.suppliers.map(({ id, shipping, freeFrom, minimum }) => ({
    id,
    name: `Supplier ${id}`,
    leadDays: 2,
    leadCounts: "working",
    shipping: money(shipping),
    ...(freeFrom === null ? {} : { shippingFreeFrom: money(freeFrom) }),
    ...(minimum === null ? {} : { minimumOrder: money(minimum) }),
  })),
  materials: dice.materials.map(({ id, need }) => ({
    id,
    name: `Material ${id}`,
    kind: "ingredient",
    measure: "mass",
    safetyStock: `${String(need / 1_000_000n)} g`,
  })),
  offers: dice.offers.map(({ id, material, supplier, pack, price, breaks }) => ({
    id,
    material,
    supplier,
    pack: `${String(pack / 1_000_000n)} g`,
    price: money(price),
    breaks: breaks.map((each) => ({ packs: Number(each.packs), price: money(each.price) })),
  })),
  lots: [],
  orders: [],
  formulas: [],
  products: [],
  runs: [],
  finished: [],
  sales: [],
});

test.describe("A large purchase", () => {
  // A search that has ended is not made again for whoever asks next.
  test.use({ opened: LARGE, ownServer: true });

  test("A long search shows the best so far at once, says how far it is, and is stopped", async ({ page }) => {
    await page.goto("/buying");
    await expect(finding(page)).toContainText("the search for a cheaper one goes on");
    await expect(page.getByText(/^Trying packs, \d of 5 suppliers\./)).toBeVisible({ timeout: 15_000 });
    await expectWhole(page);
    await page.getByRole("button", { name: "Stop", exact: true }).click();
    await expect(finding(page)).toContainText("you stopped the search");
    await expect(page.getByText("Stopped. This is the best basket so far.")).toBeVisible();
    await expect(page.getByRole("button", { name: /^I have ordered it, £/ }).first()).toBeVisible();
    await expectAccessible(page);
    await page.getByRole("button", { name: "Search again" }).click();
    await expect(page.getByRole("button", { name: "Stop", exact: true })).toBeVisible();
  });

  test.describe("without scripts", () => {
    test.use({ javaScriptEnabled: false });

    test("a long search can be looked at again, and stopped", async ({ page, expectFault }) => {
      expectFault(STOPPED_SCRIPT);
      await page.goto("/buying?cover=horizon");
      await expect(finding(page)).toContainText("goes on");
      await page.getByRole("link", { name: "Look again" }).click();
      await page.getByRole("button", { name: "Stop", exact: true }).click();
      await expect(finding(page)).toContainText("you stopped the search");
    });
  });
});
