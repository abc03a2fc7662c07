/** A page as it stands, looked at at every size, light and dark: opened once, then resized as a window is. */
import type { Page } from "@playwright/test";
import { axeFindings, expect, test } from "./fixtures";
import { expectFocusShown, expectWhole } from "./layout";
import { ENLARGED, SCHEMES, SIZES } from "./places";

/** Contrast is all that a scheme changes; the rest of what axe looks for is looked for on a light page. */
const CONTRAST = ["color-contrast"];

interface Looking {
  /** How many stops of Tab are looked at, at each size; none where it is not said. */
  readonly stops?: number;
}

/** Expects one title, nothing cut off or wider than the window, nothing that axe finds, and each focus to be seen. */
export async function expectSoundAtEverySize(page: Page, { stops }: Looking = {}): Promise<void> {
  await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
  for (const size of ENLARGED) {
    await test.step(`${page.url()} at ${String(size.width)}, enlarged`, async () => {
      await page.setViewportSize(size);
      await expectWhole(page);
    });
  }
  for (const size of SIZES) {
    for (const scheme of SCHEMES) {
      await test.step(`${page.url()} at ${String(size.width)}, ${scheme}`, async () => {
        await page.setViewportSize(size);
        await page.emulateMedia({ colorScheme: scheme });
        await expectWhole(page);
        // The tablet shows nothing that neither the desk nor the phone shows.
        if (size !== SIZES[1]) {
          const rules = scheme === "light" ? undefined : CONTRAST;
          expect.soft(await axeFindings(page, rules), "what axe found").toEqual([]);
        }
        if (stops !== undefined && scheme === "light") {
          await beginAtTop(page);
          await expectFocusShown(page, stops);
        }
      });
    }
  }
}

/** The next Tab goes to the first stop of the page, as it does in a page that was just loaded. */
const beginAtTop = (page: Page): Promise<void> =>
  page.evaluate(() => {
    scrollTo(0, 0);
    document.body.tabIndex = -1;
    document.body.focus();
    document.body.removeAttribute("tabindex");
  });
