/** The same journey by mouse and by keyboard alone: how a maker reaches a field, a button or a link with either. */
import { expect, type Locator, type Page } from "@playwright/test";

export interface Hand {
  readonly name: "mouse" | "keyboard" | "touch";
  /** Presses the button or link of this name. */
  readonly press: (page: Page, name: string) => Promise<void>;
  /** Presses the first button or link whose name is like this. */
  readonly pressLike: (page: Page, name: RegExp) => Promise<void>;
  /** Writes into the field of this label, in the place of what stands there. */
  readonly write: (page: Page, label: string, text: string) => Promise<void>;
  /** Chooses by what the option says. */
  readonly choose: (page: Page, label: string, option: string) => Promise<void>;
}

const control = (page: Page, name: string) =>
  page
    .getByRole("button", { name, exact: true })
    .or(page.getByRole("link", { name, exact: true }))
    .first();
const controlLike = (page: Page, name: RegExp) =>
  page.getByRole("button", { name }).or(page.getByRole("link", { name })).first();
const field = (page: Page, label: string) => page.getByLabel(label, { exact: true }).or(labelled(page, label)).first();
/** A label may go on, as with "optional". */
const labelled = (page: Page, label: string) => page.getByLabel(new RegExp(`^${label}\\s*optional$`));

export const MOUSE: Hand = {
  name: "mouse",
  press: (page, name) => control(page, name).click(),
  pressLike: (page, name) => controlLike(page, name).click(),
  write: async (page, label, text) => {
    await field(page, label).click({ clickCount: 3 });
    await page.keyboard.type(text);
  },
  choose: async (page, label, option) => {
    if (await isShort(page, label)) {
      await field(page, label).selectOption({ label: option });
      return;
    }
    await field(page, label).click();
    await listCome(page, label);
    await listed(page, option).click();
    await expect(field(page, label)).toHaveValue(shownAs(option));
  },
};

/** By taps, where the browser has touch; what is tapped into is written by the keyboard of the screen. */
export const TOUCH: Hand = {
  name: "touch",
  press: (page, name) => control(page, name).tap(),
  pressLike: (page, name) => controlLike(page, name).tap(),
  write: async (page, label, text) => {
    await field(page, label).tap();
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type(text);
  },
  choose: async (page, label, option) => {
    if (await isShort(page, label)) {
      await field(page, label).selectOption({ label: option });
      return;
    }
    await field(page, label).tap();
    await listCome(page, label);
    await listed(page, option).tap();
    await expect(field(page, label)).toHaveValue(shownAs(option));
  },
};

/** Between a figure and its unit stands a space at which no line is broken. */
const shownAs = (text: string): RegExp =>
  new RegExp(`^${text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(" ", "\\s")}$`);

/** Whether it is chosen from a few, by the browser's own; a longer list takes its place when somebody comes to it. */
const isShort = (page: Page, label: string): Promise<boolean> =>
  field(page, label).evaluate((element) => element.matches("select:not(.record-choice)"));

/** What can be chosen in the list that stands open. */
const listed = (page: Page, option: string): Locator =>
  page.getByRole("listbox", { name: "To choose from" }).getByRole("option", { name: option, exact: true });

/** What waits until the list that filters has come. */
const listCome = (page: Page, label: string): Promise<void> =>
  expect(field(page, label).and(page.locator("input"))).toBeFocused();

export const KEYBOARD: Hand = {
  name: "keyboard",
  press: async (page, name) => {
    await tabTo(page, name);
    await page.keyboard.press("Enter");
  },
  pressLike: async (page, name) => {
    await expect(controlLike(page, name)).toBeVisible();
    const isThere = () => controlLike(page, name).evaluate((element) => element === document.activeElement);
    if (!(await tabOn(page, isThere))) throw new Error(`Tab does not lead to ${String(name)}`);
    await page.keyboard.press("Enter");
  },
  write: async (page, label, text) => {
    await tabTo(page, label);
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type(text);
  },
  choose: async (page, label, option) => {
    const short = await isShort(page, label);
    await tabTo(page, label);
    if (short) {
      // A list takes letters together that follow one another within a second, which a busy machine may not manage.
      await expect(async () => {
        await page.keyboard.type(option);
        await expect(page.locator(":focus").locator("option:checked")).toHaveText(option, { timeout: 1_500 });
      }).toPass();
      return;
    }
    await listCome(page, label);
    await page.keyboard.type(option);
    await expect(listed(page, option)).toBeVisible();
    await page.keyboard.press("Enter");
    await expect(page.locator(":focus")).toHaveValue(shownAs(option));
  },
};

const STOPS_AT_MOST = 250;

/** Goes on with Tab until what is called so has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  await expect(field(page, name).or(control(page, name)).first()).toBeVisible();
  if (!(await tabOn(page, async () => (await focusedName(page)) === name)))
    throw new Error(`Tab does not lead to "${name}"`);
}

async function tabOn(page: Page, isThere: () => Promise<boolean>): Promise<boolean> {
  for (let stop = 0; stop < STOPS_AT_MOST; stop += 1) {
    if (await isThere()) return true;
    await page.keyboard.press("Tab");
  }
  return false;
}

const focusedName = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return "";
    const label = "labels" in element ? (element as HTMLInputElement).labels?.[0]?.firstChild?.textContent : undefined;
    return (element.getAttribute("aria-label") ?? label ?? element.textContent).trim();
  });

/** Expects a choice to show a record, whether its list has come or the browser's own still stands there. */
export const expectChosen = (choice: Locator, name: string): Promise<void> =>
  expect
    .poll(() =>
      choice.evaluate((element) =>
        element instanceof HTMLSelectElement
          ? (element.selectedOptions[0]?.text ?? "")
          : (element as HTMLInputElement).value,
      ),
    )
    .toBe(name);
