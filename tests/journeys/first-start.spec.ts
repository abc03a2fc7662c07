import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { request as httpRequest } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";

const DEMO_BUTTON = { name: "Open the demo workshop" };

/** A file as the browser sends it. */
const file = (text: string, name = "workshop.json") => ({
  name,
  mimeType: "application/json",
  buffer: Buffer.from(text),
});

/** What differs from one opened workshop to another. */
interface Differs {
  readonly today?: string;
  readonly lots?: readonly object[];
}

/** A workshop with one product for each id, all filled with water. */
const withProducts = (ids: readonly string[], { today, lots = [] }: Differs = {}): string =>
  JSON.stringify({
    format: "stillroom-workshop",
    version: 1,
    workshop: {
      name: "Bench with odd ids",
      currency: "GBP",
      labourPerHour: "12",
      overheadPerHour: "0",
      balanceStep: "0.1 g",
      today,
    },
    suppliers: [],
    materials: [{ id: "water", name: "Water", kind: "ingredient", measure: "mass" }],
    offers: [],
    lots,
    orders: [],
    formulas: [{ id: "water", name: "Water", lines: [{ material: "water", percent: "100" }] }],
    products: ids.map((id) => ({ id, name: `Product ${id}`, formula: "water", fill: "100 g", usualRun: 10 })),
    runs: [],
    finished: [],
    sales: [],
  });

async function send(page: Page, text: string): Promise<void> {
  await page.getByLabel("Workshop file", { exact: true }).setInputFiles(file(text));
  await page.getByRole("button", { name: "Open this file" }).click();
}

test.describe("before any workshop is open", () => {
  test.use({ opened: "nothing" });

  test("A maker is told every fault of a file, then opens the demo, saves it, and opens what was saved", async ({
    page,
  }) => {
    await page.goto("/cost");
    await expect(page.getByRole("heading", { level: 1, name: "Begin" })).toBeVisible();
    await expectAccessible(page);

    const faulty = withProducts(["one"]).replace('"currency":"GBP"', '"currency":"pounds"').replace("100 g", "100 ml");
    await send(page, faulty);
    const told = page.getByRole("alert").filter({ hasText: "Not opened" });
    await expect(told.getByRole("listitem").filter({ hasText: "workshop.currency" })).toBeVisible();
    await expect(told.getByRole("listitem").filter({ hasText: "products[0].fill" })).toContainText("mL");
    await expectAccessible(page);

    await page.getByRole("button", DEMO_BUTTON).click();
    await expect(page.getByRole("heading", { level: 1, name: "Wednesday\u00a025\u00a0November" })).toBeVisible();
    await expect(page.getByText("Set to Wed\u00a025\u00a0Nov\u00a02026")).toBeVisible();
    await expect(page.getByText("13 runs of later weeks cannot be made yet.")).toBeVisible();
    // What is owed on that day, as the ribbon beside it says; by the plan's end it is 1.84 kg.
    await expect(page.getByText(/900.g left; short by 198.g on Tue.8.Dec/)).toBeVisible();
    await expectAccessible(page);

    const download = page.waitForEvent("download");
    await page.getByRole("link", { name: "Save it as a file" }).click();
    const saved = await readFile(await (await download).path(), "utf8");
    await page.getByRole("link", { name: "Open another workshop" }).click();
    await page.getByLabel("Workshop file", { exact: true }).setInputFiles({
      name: "saved.json",
      mimeType: "application/json",
      buffer: Buffer.from(saved),
    });
    await page.getByRole("button", { name: "Look into it" }).click();
    await page.getByRole("button", { name: /^Open Demonstration/ }).click();
    await expect(page.getByRole("status").filter({ hasText: "The one before it was kept as" })).toBeVisible();
    const again = await page.request.get("/workshop-file");
    expect(await again.text()).toBe(saved);
  });

  test("A first page that another tab has overtaken does not replace what was opened there", async ({
    page,
    context,
  }) => {
    await page.goto("/");
    const other = await context.newPage();
    await other.goto("/");
    await other.getByRole("button", DEMO_BUTTON).click();
    await expect(other.getByText("13 runs of later weeks cannot be made yet.")).toBeVisible();
    await page.getByLabel("Name of the workshop").fill("Merrow bench");
    await page.getByRole("button", { name: "Begin with an empty workshop" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "A workshop was opened meanwhile" })).toBeVisible();
    await expect(page.getByLabel("Name of the workshop")).toHaveValue("Merrow bench");
    await other.reload();
    await expect(other.getByText("13 runs of later weeks cannot be made yet.")).toBeVisible();

    // On purpose, from the files of the book, it does; and the copy is named.
    await other.goto("/book/files");
    await other.getByRole("link", { name: "Start another workshop" }).click();
    await other.getByLabel("Name of the workshop").fill("pounds of");
    await other.getByLabel("Currency, three letters").fill("pounds");
    await other.getByRole("button", { name: "Begin with an empty workshop" }).click();
    await expect(other.getByLabel("Currency, three letters")).toHaveAttribute("aria-invalid", "true");
    await other.getByLabel("Currency, three letters").fill("GBP");
    await other.getByRole("button", { name: "Begin with an empty workshop" }).click();
    await expect(other.getByRole("status").filter({ hasText: "The one before it was kept as" })).toBeVisible();
  });

  test("A maker begins with an empty workshop, and what was typed stays where it is wrong", async ({ page }) => {
    await page.goto("/");
    await page.getByLabel("Name of the workshop").fill("Merrow bench");
    await page.getByLabel("Currency, three letters").fill("G1");
    await page.getByRole("button", { name: "Begin with an empty workshop" }).click();
    const currency = page.getByLabel("Currency, three letters");
    await expect(currency).toHaveAttribute("aria-invalid", "true");
    await expect(page.getByLabel("Name of the workshop")).toHaveValue("Merrow bench");
    await expectAccessible(page);

    await currency.fill("KWD");
    await page.getByRole("button", { name: "Begin with an empty workshop" }).click();
    await expect(page.getByText("Nothing is in this workshop yet.")).toBeVisible();
    for (const place of ["Cost", "Week", "Shelf", "Book"]) {
      await page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: place }).click();
      await expect(page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: place })).toHaveAttribute(
        "aria-current",
        "page",
      );
      await expectAccessible(page);
    }
  });

  test("A maker goes back from the day that a file has set to the real date", async ({ page }) => {
    await page.goto("/");
    await send(page, withProducts(["one"], { today: "2020-02-29" }));
    const day = page.getByRole("banner").getByText("Set to Sat\u00a029\u00a0Feb\u00a02020");
    for (const place of ["Cost", "Week", "Shelf", "Book"]) {
      await page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: place }).click();
      await expect(day).toBeVisible();
    }
    await page.getByRole("button", { name: "Back to the real date" }).click();
    await expect(day).toBeHidden();
    await page.reload();
    await expect(page.getByRole("navigation", { name: "Places" })).toBeVisible();
    await expect(day).toBeHidden();
  });

  test("A day stays set where lots on the shelf came after the real date", async ({ page }) => {
    const lot = { id: "L1", material: "water", remaining: "5 kg", received: "2198-01-01", value: "4" };
    await page.goto("/");
    await send(page, withProducts(["one"], { today: "2198-02-01", lots: [lot] }));
    await page.getByRole("button", { name: "Back to the real date" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "The day stays." })).toContainText("lot L1 came after it");
    await expect(page.getByRole("banner").getByText("Set to Thu\u00a01\u00a0Feb\u00a02198")).toBeVisible();
    await expectAccessible(page);
  });

  test("A maker opens a workshop whose ids hold whatever a text can hold", async ({ page }) => {
    const ids = [".", "..", "~", "~~a", "a/b", "50%", "?q#h", "blåbær 🫐", "__proto__", "a\\b", "%2e", "+ &"];
    await page.goto("/");
    await send(page, withProducts(ids));
    await page.getByRole("link", { name: "Cost", exact: true }).click();
    for (const id of ids) {
      await page.getByRole("link", { name: `Product ${id}`, exact: true }).click();
      await expect(page.getByRole("heading", { level: 1, name: `Product ${id}`, exact: true })).toBeVisible();
      await page.reload();
      await expect(page.getByRole("heading", { level: 1, name: `Product ${id}`, exact: true })).toBeVisible();
      await page.getByRole("link", { name: "All products" }).click();
    }
  });

  test.describe("without scripts", () => {
    test.use({ javaScriptEnabled: false });

    test("A maker whose browser runs no scripts is told faults, opens the demo and follows a figure", async ({
      page,
      expectFault,
    }) => {
      expectFault(/request failed: .*\/_next\/static\/chunks\/[^/]*\.js: csp/);
      await page.goto("/");
      await send(page, "{}");
      await expect(page.getByRole("heading", { name: "Not opened" })).toBeVisible();
      await page.getByRole("button", DEMO_BUTTON).click();
      await page.getByRole("link", { name: "Cost", exact: true }).click();
      await page.getByRole("link", { name: "Balm, 50 g tin" }).click();
      await expect(page.getByText("for one gram").first()).toBeHidden();
      await page.locator("summary").filter({ hasText: "Castor oil" }).click();
      await expect(page.getByText("for one gram").filter({ visible: true })).toHaveCount(1);
      await page.getByRole("button", { name: "Dark page" }).click();
      await expect(page.getByRole("button", { name: "Light page" })).toBeVisible();
    });
  });
});

test("A maker turns the page dark, and it stays dark", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("button", { name: "Dark page" }).click();
  await expect(page.getByRole("button", { name: "Light page" })).toBeVisible();
  await page.goto("/cost");
  await expect(page.locator("html")).toHaveAttribute("data-scheme", "dark");
  await expectAccessible(page);
  await page.getByRole("button", { name: "Light page" }).click();
  await expect(page.getByRole("button", { name: "Dark page" })).toBeVisible();
});

test("An address that cannot be read is answered in a sentence", async ({ request }) => {
  for (const path of ["/book/materials/%ff", "/cost/%ff", "/%E0%A4%A"]) {
    const answer = await request.get(path);
    expect([answer.status(), await answer.text()]).toEqual([404, "There is no page at this address.\n"]);
  }
});

test("An address that leads nowhere says so and leads back", async ({ page, expectFault }) => {
  expectFault(/answer 404: .*\/nowhere/);
  expectFault(/console error: .*404/);
  await page.goto("/nowhere");
  await expect(page.getByRole("heading", { level: 1, name: "No such page" })).toBeVisible();
  await page.getByRole("link", { name: "the first page" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Wednesday\u00a025\u00a0November" })).toBeVisible();
});

test("Every answer has its own nonce, no inline style and no other host", async ({ request }) => {
  const nonces = new Set<string>();
  for (const address of ["/", "/cost", "/cost/p-conditioner", "/week", "/shelf"]) {
    const answer = await request.get(address);
    const policy = answer.headers()["content-security-policy"] ?? "";
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? "";
    nonces.add(nonce);
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|https?:/);
    const html = await answer.text();
    expect(html, address).not.toMatch(/<[a-z][^>]* style=/i);
    const scripts = [...html.matchAll(/<script\b([^>]*)>/g)].map(([, attributes]) => attributes ?? "");
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.filter((attributes) => !attributes.includes(`nonce="${nonce}"`))).toEqual([]);
  }
  expect(nonces.size).toBe(5);
});

test("A stranger's host and a stranger's form are refused in a sentence", async ({ app, request }) => {
  const asStranger = await new Promise<number | undefined>((resolve, reject) => {
    httpRequest(`${app.url}/`, { headers: { Host: `stillroom.example:${String(app.port)}` } }, (answer) => {
      answer.resume();
      resolve(answer.statusCode);
    })
      .on("error", reject)
      .end();
  });
  expect(asStranger).toBe(421);

  const sent = await request.post("/", { headers: { Origin: "http://stillroom.example" }, multipart: { a: "b" } });
  expect([sent.status(), await sent.text()]).toEqual([403, expect.stringContaining("only from its own pages")]);
});

test("A file that is too large is refused in a sentence, and the workshop stays open", async ({ request, page }) => {
  const large = { name: "large.json", mimeType: "application/json", buffer: Buffer.alloc(66 * 1024 * 1024, 32) };
  const answer = await request.post("/", { multipart: { file: large } });
  expect([answer.status(), await answer.text()]).toEqual([413, expect.stringContaining("larger than 64 MiB")]);

  // With scripts it is told before anything is sent.
  const folder = await mkdtemp(join(tmpdir(), "stillroom-large-"));
  const path = join(folder, "large.json");
  await writeFile(path, large.buffer);
  await page.goto("/");
  await page.getByRole("link", { name: "Open another workshop" }).click();
  await page.getByLabel("Workshop file", { exact: true }).setInputFiles(path);
  await page.getByRole("button", { name: "Look into it" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "larger than 64 MiB" })).toBeVisible();
  await rm(folder, { recursive: true });
  await expect(page.getByText("Set to Wed\u00a025\u00a0Nov\u00a02026")).toBeVisible();
});
