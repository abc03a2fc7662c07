/** A page as it stands, looked at at every size, light and dark: opened once, then resized as a window is. */
import type { Page } from "@playwright/test";
import { axeFindings, expect, test } from "./fixtures";
import { expectFocusShown, expectWhole } from "./layout";
import { SCHEMES, SIZES } from "./places";

/** Contrast is all that a scheme changes; the rest of what axe looks for is looked for in one scheme of each size. */
const CONTRAST = ["color-contrast"];

interface Looking {
  /** How many stops of Tab are looked at, at each size; none where it is not said. */
  readonly stops?: number;
}

/** Expects one title, nothing cut off or wider than the window, nothing that axe finds, and each focus to be seen. */
export async function expectSoundAtEverySize(page: Page, { stops }: Looking = {}): Promise<void> {
  await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
  for (const size of SIZES) {
    for (const scheme of SCHEMES) {
      await test.step(`${page.url()} at ${String(size.width)}, ${scheme}`, async () => {
        await page.setViewportSize(size);
        await page.emulateMedia({ colorScheme: scheme });
        await expectWhole(page);
        const rules = scheme === "light" ? undefined : CONTRAST;
        expect.soft(await axeFindings(page, rules), "what axe found").toEqual([]);
        if (stops !== undefined && scheme === "light") await expectFocusShown(page, stops);
      });
    }
  }
}
