/** A page is typed into once its scripts follow the typing; a maker is rarely quicker, a journey always is. */
import type { Page } from "@playwright/test";

/** Makes every way of loading a document wait until the app has marked it; a page that brings no scripts is not waited for. */
export function waitForScripts(page: Page): Page {
  for (const way of ["goto", "reload", "goBack", "goForward"] as const) {
    const load = page[way].bind(page) as (...asked: unknown[]) => ReturnType<Page["goto"]>;
    page[way] = async (...asked: unknown[]) => {
      const answer = await load(...asked);
      await page.waitForFunction(followsTyping);
      return answer;
    };
  }
  return page;
}

const followsTyping = (): boolean =>
  document.documentElement.dataset.scripts === "ready" || document.querySelector("script[src]") === null;
