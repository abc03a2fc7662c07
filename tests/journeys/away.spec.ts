/** The app is stopped under an open page: nothing typed is lost, and what was asked is done when it is started again. */
import type { Page } from "@playwright/test";
import { expect, expectAccessible, test } from "./fixtures";
import { serveToKill } from "./server";

test.use({ opened: "tests/journeys/formula-workshop.json", ownServer: true });

const away = (page: Page) => page.getByText("Stillroom does not answer.");

async function nameTyped(page: Page): Promise<void> {
  await page.goto("/book/suppliers/new");
  await page.getByLabel("Name", { exact: true }).fill("Fernlea Supplies");
}

/** Until it runs again the browser says of each thing that is asked that nobody was there. */
const NOBODY_THERE =
  /net::ERR_(CONNECTION_(REFUSED|RESET|CLOSED)|EMPTY_RESPONSE|INCOMPLETE_CHUNKED_ENCODING|SOCKET_NOT_CONNECTED)/;

test("a form that meets a stopped app keeps what was typed, and is kept once when the app runs again", async ({
  page,
  app,
  expectFault,
}) => {
  expectFault(NOBODY_THERE);
  await nameTyped(page);
  await page.getByLabel("Lead time", { exact: true }).fill("4");
  process.kill(app.pid ?? 0, "SIGKILL");
  const keep = page.getByRole("button", { name: "Keep the supplier" });
  await keep.click();
  await expect(away(page)).toBeVisible();
  // Pressed again meanwhile, though the button says that it is not its turn.
  await keep.click({ force: true });
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Fernlea Supplies");
  await expectAccessible(page);
  const again = await serveToKill(app.store, app.port);
  await expect(page).toHaveURL(/\/book\/suppliers(?!\/new)/, { timeout: 15_000 });
  await expect(away(page)).toBeHidden();
  await expect(page.getByRole("rowheader", { name: "Fernlea Supplies" })).toHaveCount(1);
  await again.stop();
});

test("a link that meets a stopped app leaves the page where it is, and is followed when the app runs again", async ({
  page,
  app,
  expectFault,
}) => {
  expectFault(NOBODY_THERE);
  await nameTyped(page);
  process.kill(app.pid ?? 0, "SIGKILL");
  await page.getByRole("link", { name: "Week", exact: true }).click();
  await expect(away(page)).toBeVisible();
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Fernlea Supplies");
  const again = await serveToKill(app.store, app.port);
  await expect(page).toHaveURL(/\/week$/, { timeout: 15_000 });
  await page.goBack();
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Fernlea Supplies");
  await again.stop();
});
