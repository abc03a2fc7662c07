/** A maker makes a premix ahead. The workshop is invented; its figures are worked by hand beside each check. */
import { expect, test } from "./fixtures";
import { MOUSE } from "./hands";

test.use({ opened: "tests/journeys/ahead-workshop.json" });

test("A maker has an infused oil made ahead, makes it, and sees the next run draw its lot and open the rest", async ({
  page,
}) => {
  await page.goto("/book/products/bottle");
  await MOUSE.choose(page, "Made ahead into", "Calendula oil");
  await page.getByRole("button", { name: "Keep the product" }).click();
  await expect(page.getByText("kept", { exact: true })).toBeVisible();
  await page.goto("/week/make/~r1");
  await page.getByLabel("Best before").fill("11/2027");
  await page.getByRole("button", { name: "Close it as made, drawing this" }).click();

  // Three bottles take 240 g of oil for 2.40 and 60 g of herb for 0.60; 30 minutes are 6.00 and 3.00.
  await expect(page.locator(".finding")).toContainText(/3.units came out, as planned\. They cost £12\.00, £4\.00 each/);
  await page.getByRole("link", { name: /^Lot .* on the shelf$/ }).click();
  await expect(page.locator(".finding")).toContainText(/300.g on the shelf, worth £12\.00/);
  await expect(page.getByRole("link", { name: "The run that made it" })).toBeVisible();

  // Ten jars hold 500 g of the steep: 300 g from the lot; 200 g are opened into 160 g of oil and 40 g of herb.
  await page.goto("/week?of=2026-11-23&run=r2");
  const draws = page.getByRole("table").filter({ hasText: "It draws" });
  await expect(draws.getByRole("row", { name: /Calendula oil instead of making Calendula steep/ })).toContainText(
    /300.g/,
  );
  await expect(draws.getByRole("row", { name: /Oat kernel oil/ })).toContainText(/160.g/);
  await draws.getByText("Oat kernel oil", { exact: true }).click();
  await expect(page.getByText(/80\.00.% of the 200\.00.g of Calendula steep that are made new/)).toBeVisible();
  await expect(page.getByText("made new on the way", { exact: true })).toBeVisible();
  await page.goto("/week/make/~r2");
  await expect(page.getByText(/300.g of it instead of making Calendula steep/)).toBeVisible();
});
