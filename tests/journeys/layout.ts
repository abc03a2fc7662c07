/** What can be measured of a page as it stands: does it scroll sideways, is anything cut off, where is the focus. */
import { expect, type Page } from "@playwright/test";

/** A drawing is made anew for another width a moment after the window has it; a busy machine takes seconds to measure. */
const SETTLED_WITHIN_MS = 20_000;

/** Expects the page to be no wider than its window, and no text to be cut by its own box or the window's edge. */
export async function expectWhole(page: Page): Promise<void> {
  const found = async (): Promise<readonly string[]> => {
    const { pageWidth, windowWidth, cut } = await measured(page);
    const wide = pageWidth > windowWidth ? [`${String(pageWidth)} px in ${String(windowWidth)}`] : [];
    return [...cut, ...wide, ...(await textsOverOneAnother(page)), ...(await figuresOutOfLine(page))];
  };
  const softly = expect.configure({ soft: true });
  await softly
    .poll(found, {
      message: "text cut off or over other text, figures out of line, sideways scroll",
      timeout: SETTLED_WITHIN_MS,
    })
    .toEqual([]);
}

/** Words that lie over other words: what each line of text covers, but for what is fixed over the page on purpose. */
export const textsOverOneAnother = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    // A line's box is higher than its letters.
    const [ACROSS, DOWN] = [3, 6];
    interface Line {
      readonly box: DOMRect;
      readonly of: Element;
    }
    const isLoose = (element: Element): boolean => {
      for (let box: Element | null = element; box; box = box.parentElement) {
        const { position, clipPath } = getComputedStyle(box);
        if (position === "fixed" || position === "sticky" || clipPath.startsWith("inset")) return true;
      }
      return !element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    };
    const lines: Line[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const of = node.parentElement;
      // What is not drawn in a drawing still has lines, but no box.
      if (
        of === null ||
        (node.textContent ?? "").trim() === "" ||
        isLoose(of) ||
        of.getBoundingClientRect().width === 0
      )
        continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) if (box.width > ACROSS && box.height > DOWN) lines.push({ box, of });
    }
    lines.sort((a, b) => a.box.top - b.box.top);
    const said = (element: Element): string => element.textContent.trim().slice(0, 30);
    const found = new Set<string>();
    for (const [at, { box, of }] of lines.entries()) {
      for (const other of lines.slice(at + 1)) {
        if (other.box.top >= box.bottom - DOWN) break;
        const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        if (across > ACROSS && other.of !== of && !of.contains(other.of) && !other.of.contains(of))
          found.add(`"${said(of)}" and "${said(other.of)}" lie over one another`);
      }
    }
    return [...found];
  });

/** Columns of figures whose figures do not end at one line. */
export const figuresOutOfLine = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    /** Of the figure itself, not of what is said under it. */
    const endOf = (cell: Element): number | null => {
      const ends: number[] = [];
      const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        if (node.parentElement?.closest("small, .label, .unseen, .was") !== null) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        ends.push(...[...range.getClientRects()].filter(({ width }) => width > 0).map(({ right }) => right));
      }
      return ends.length === 0 ? null : Math.max(...ends);
    };
    return [...document.querySelectorAll("table")].flatMap((table) => {
      const ends = new Map<number, number[]>();
      for (const row of table.rows) {
        if (row.cells.length !== table.rows[0]?.cells.length) continue;
        for (const [at, cell] of [...row.cells].entries()) {
          const isFigure = cell.tagName === "TD" && cell.classList.contains("number");
          if (!isFigure || getComputedStyle(cell).display !== "table-cell" || !cell.checkVisibility()) continue;
          const end = endOf(cell);
          if (end !== null) ends.set(at, [...(ends.get(at) ?? []), end]);
        }
      }
      return [...ends].flatMap(([at, each]) =>
        Math.max(...each) - Math.min(...each) > 1
          ? [`column ${String(at + 1)} of "${(table.caption?.textContent ?? table.textContent).trim().slice(0, 40)}"`]
          : [],
      );
    });
  });

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
      // Of a link that goes on in the next line, the first: between its lines there is something else.
      const { left, top, width, height } = element.getClientRects()[0] ?? element.getBoundingClientRect();
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
