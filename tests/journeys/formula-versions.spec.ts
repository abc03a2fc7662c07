/**
 * A formula from three trials to a version that a batch is made by. Percents of the emulsifier blend and of the two
 * preservatives are common practice, without a source; everything else is invented.
 */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { day } from "@/tests/helpers/notation";
import { expect, test } from "./fixtures";

test.use({ opened: "./tests/journeys/formula-workshop.json" });

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

/** Weighs a trial of 100 g with so much of the blend, and writes down what it was like a day after. */
async function tryWith(page: Page, percent: number, viscosity: string): Promise<void> {
  await page.goto(`/book/formulas/f/trials/new?line=1&percent=${String(percent)}`);
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue(`Emulsifier blend at ${String(percent)} %`);
  await page.getByLabel("Water, g").fill(String(87 - percent));
  await page.getByLabel("Emulsifier blend, g").fill(`${String(percent)} g`);
  await page.getByLabel("Humectant, g").fill("12");
  await page.getByLabel("First preservative, g").fill("1");
  await page.getByLabel("How long after making").fill("1 day");
  await page.getByLabel("Viscosity, mPa·s").fill(viscosity);
  await press(page, "Keep the trial");
  await expect(page).toHaveURL(/\/book\/formulas\/f\/trials\?written=/);
}

/** The costs that the report of a saved file tells. */
function reported(path: string, bytes: Buffer): readonly { readonly perUnit: string }[] {
  writeFileSync(path, bytes);
  const printed = execFileSync("npm", ["run", "--silent", "report", "--", "--workshop", path, "--json"], {
    encoding: "utf8",
  });
  return (JSON.parse(printed) as { costs: { perUnit: string }[] }).costs;
}

test("From three trials to a promoted version, a swap, an accepted warning and a batch of what is left", async ({
  page,
}, testInfo) => {
  await tryWith(page, 5, "4000");
  await tryWith(page, 6, "9000");
  await tryWith(page, 7, "30000");

  const table = page.getByRole("table", { name: "The trials beside one another" });
  await expect(table.getByRole("row")).toHaveCount(4);
  // Of 100 g: the blend costs 0.03 a gram, water 0.001, so that one percent more makes a jar dearer by 0.029.
  await expect(table.getByRole("row").nth(1)).toContainText(/5.*4,000.*£0\.3880/);
  await expect(table.getByRole("row").nth(3)).toContainText(/7.*30,000.*£0\.4460/);
  await expect(
    page.getByRole("img", { name: /^Viscosity in mPa·s against the percent of Emulsifier blend/ }),
  ).toBeVisible();

  const six = page.getByRole("region", { name: /^Emulsifier blend at 6 %/ });
  await expect(six).toContainText("taken off the shelf");
  await six.getByText("Write down what it is like now").click();
  await six.getByLabel("pH").fill("4.3");
  await six.getByRole("button", { name: "Add it" }).click();
  await expect(six.getByRole("row", { name: /when made 4.3/ })).toBeVisible();
  // What was written of one trial stands in no form any more, its own or another's.
  await page.reload();
  for (const text of await page.getByLabel("pH").all()) await expect(text).toHaveValue("");
  await six.getByText("Make it the next version of Conditioner").click();
  await six.getByLabel("Why this one").fill("Thick enough after a night, and not too thick.");
  await six.getByRole("button", { name: "Make it the next version" }).click();
  // It is what stands already: 6 % of everything as weighed.
  await expect(page).toHaveURL(/\/book\/formulas\/f\/versions$/);
  await expect(page.getByText("It has only had one version so far.")).toBeVisible();

  await page.goto("/book/formulas/f/trials");
  const five = page.getByRole("region", { name: /^Emulsifier blend at 5 %/ });
  await five.getByText("Make it the next version of Conditioner").click();
  await five.getByRole("button", { name: "Make it the next version" }).click();
  await expect(page).toHaveURL(/\/book\/formulas\/f\/versions$/);
  await expect(page.getByText("number 2 stands")).toBeVisible();
  await expect(page.getByText("Emulsifier blend: 5.00 %; it was 6.00 %")).toBeVisible();

  await page.goto("/book/formulas/f/swap?from=first&to=second&percent=&phase=");
  await expect(page.getByRole("region", { name: /^What changes/ })).toContainText("phase");
  await expect(page.getByRole("region", { name: /^What breaks/ })).toContainText("these checks found nothing");
  await page.getByLabel("Why it is swapped").fill("Works cooler.");
  await press(page, "Make it the next version");
  await expect(page.getByText("number 3 stands")).toBeVisible();

  await page.goto("/book/formulas/f");
  const version = page.getByRole("region", { name: /^Version 3/ });
  await expect(version).toContainText("Humectant is above its use range");
  await press(page, "Accept the warning");
  await expect(version.getByText("Missing: say why")).toBeVisible();
  await version.getByLabel("Why you go on with it").fill("Tried over a summer: it draws no water.");
  await press(page, "Accept the warning");
  await expect(version.getByText("Because: Tried over a summer: it draws no water.")).toBeVisible();

  await page.goto("/book/formulas/f/batch?of=blend&left=120+g");
  await expect(page.getByText("One batch of 2,400 g")).toBeVisible();
  await page.getByRole("button", { name: "Plan this batch" }).click();
  await expect(page).toHaveURL(/\/week\?of=/);
  await expect(page.getByRole("link", { name: /Conditioner, 100 g.*24 units/ }).first()).toBeVisible();

  const file = await page.request.get("/workshop-file");
  const read = readWorkshopFile(new Uint8Array(await file.body()), day("2026-11-25"));
  if (read.kind === "refused") throw new Error(read.faults.join("\n"));
  expect(read.past?.versions.map(({ number }) => number)).toEqual([1, 2, 3]);
  expect(read.past?.versions.at(-1)?.accepted.map(({ reason }) => reason)).toEqual([
    "Tried over a summer: it draws no water.",
  ]);
  expect(read.past?.trials).toHaveLength(3);
  const [cost] = reported(testInfo.outputPath("workshop.json"), await file.body());
  // 82 g water, 5 g blend, 12 g humectant and 1 g of the second: 0.082 + 0.15 + 0.096 + 0.09.
  expect(cost?.perUnit).toBe("0.4180");
  await page.goto("/cost/p");
  await expect(page.getByText("£0.4180").first()).toBeVisible();
});
