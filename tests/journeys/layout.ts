/** What can be measured of a page as it stands: does it scroll sideways, is anything cut off, where is the focus. */
import { expect, type Page } from "@playwright/test";

/** A drawing is made anew for another width a moment after the window has it. */
const SETTLED_WITHIN_MS = 5_000;

/** Expects the page to be no wider than its window, and no text to be cut by its own box or the window's edge. */
export async function expectWhole(page: Page): Promise<void> {
  const found = async (): Promise<readonly string[]> => {
    const { pageWidth, windowWidth, cut } = await measured(page);
    return pageWidth > windowWidth ? [...cut, `${String(pageWidth)} px in ${String(windowWidth)}`] : cut;
  };
  const softly = expect.configure({ soft: true });
  await softly
    .poll(found, { message: "text that is cut off, or sideways scroll", timeout: SETTLED_WITHIN_MS })
    .toEqual([]);
}

export const measured = (page: Page) =>
  page.evaluate(() => {
    const root = document.documentElement;
    const hiddenOnPurpose = (element: Element): boolean => {
      const { width, height } = element.getBoundingClientRect();
      return width <= 1 || height <= 1 || !element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    };
    const hasOwnText = (element: Element): boolean =>
      [...element.childNodes].some(
        (node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? "").trim() !== "",
      );
    // A name may be as long as two hundred letters: it may end in an ellipsis where its title says the whole of it.
    const saidInFull = (element: Element): boolean =>
      getComputedStyle(element).textOverflow === "ellipsis" && element.getAttribute("title") === element.textContent;
    const overItsBox = (element: Element): boolean =>
      getComputedStyle(element).overflowX !== "visible" &&
      element.scrollWidth > element.clientWidth + 1 &&
      !saidInFull(element);
    const overTheEdge = (element: Element): boolean => {
      const { left, right, bottom } = element.getBoundingClientRect();
      // A link that only shows when it has the focus waits wholly outside.
      const waitsOutside = right <= 0 || bottom + scrollY <= 0;
      return !waitsOutside && (left < -1 || right > root.clientWidth + 1);
    };
    // A screen reader's words are drawn in a box of one pixel, and so are what lies in it.
    const forScreenReaders = (element: Element): boolean => {
      for (let box: Element | null = element; box; box = box.parentElement) if (hiddenOnPurpose(box)) return true;
      return false;
    };
    const cutOff = [...document.body.querySelectorAll("*")].filter(
      (element) => hasOwnText(element) && (overItsBox(element) || overTheEdge(element)) && !forScreenReaders(element),
    );
    return {
      pageWidth: root.scrollWidth,
      windowWidth: root.clientWidth,
      cut: cutOff.map((element) => `${element.tagName.toLowerCase()}: ${element.textContent.trim().slice(0, 60)}`),
    };
  });

/** Goes through the page with Tab and expects every stop to be marked by an outline and not to lie under anything. */
export async function expectFocusShown(page: Page, atMost: number): Promise<void> {
  const stops: string[] = [];
  for (let stop = 0; stop < atMost; stop += 1) {
    await page.keyboard.press("Tab");
    const focus = await page.evaluate(() => {
      const element = document.activeElement;
      if (!element || element === document.body) return null;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const { left, top, width, height } = element.getBoundingClientRect();
      const over = document.elementFromPoint(left + Math.min(width, innerWidth) / 2, top + Math.min(height, 40) / 2);
      return {
        name: `${element.tagName.toLowerCase()} ${(element.getAttribute("aria-label") ?? element.textContent).trim().slice(0, 40)}`,
        marked: outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2,
        // A label is drawn for a control that it holds, so either may be the one that is met.
        open: over !== null && (element.contains(over) || over.contains(element)),
      };
    });
    if (focus === null) break;
    expect.soft(focus.marked, `the focus on "${focus.name}" can be seen`).toBe(true);
    expect.soft(focus.open, `"${focus.name}" lies open when it has the focus`).toBe(true);
    stops.push(focus.name);
  }
  expect(stops.length, "stops on the way through the page").toBeGreaterThan(0);
}
