import { axeFindings, expect, test } from "./fixtures";
import { measured } from "./layout";

/** Shows of each thing that the other journeys watch for that it is seen when it happens. */

/** What is put into a page before its scripts have taken it over is taken out again by them. */
const SETTLED = { waitUntil: "networkidle" } as const;

test.describe("what the journeys watch for is seen", () => {
  test("a console error and a warning", async ({ page, expectFault }) => {
    expectFault(/^console error: it is broken$/);
    expectFault(/^console warning: it may break$/);
    await page.goto("/");
    await page.evaluate(() => {
      console.error("it is broken");
      console.warn("it may break");
    });
  });

  test("a page error", async ({ page, expectFault }) => {
    expectFault(/^page error: thrown$/);
    await page.goto("/");
    const seen = page.waitForEvent("pageerror");
    await page.evaluate(() => {
      setTimeout(() => {
        throw new Error("thrown");
      });
    });
    await seen;
  });

  test("a place that there is not", async ({ page, expectFault }) => {
    expectFault(/^answer 404: .*\/no-such-place$/);
    expectFault(/^console error: Failed to load resource/);
    await page.goto("/no-such-place");
    await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
  });

  test("a request to another host, which the content policy stops as well", async ({ page, expectFault }) => {
    expectFault(/Content Security Policy/);
    await page.goto("/");
    const asked = await page.evaluate(() =>
      fetch("http://192.0.2.1/").then(
        () => "answered",
        () => "refused",
      ),
    );
    expect(asked).toBe("refused");
  });

  test("text that is cut off, and a page that is too wide", async ({ page }) => {
    await page.goto("/", SETTLED);
    await page.evaluate(() => {
      const wide = document.createElement("pre");
      wide.textContent = "a long line that does not break ".repeat(40);
      document.querySelector("main")?.append(wide);
    });
    const { cut, pageWidth, windowWidth } = await measured(page);
    expect(cut.some((text) => text.startsWith("pre: a long line")) || pageWidth > windowWidth).toBe(true);
  });

  test("controls without a name, on a page that was looked at before as well", async ({ page }) => {
    await page.goto("/", SETTLED);
    expect(await axeFindings(page)).toEqual([]);
    await page.evaluate(() => {
      document.querySelector("main")?.append(document.createElement("button"), document.createElement("select"));
    });
    const found = (await axeFindings(page)).map((line) => line.split(":")[0]);
    expect(found).toEqual(expect.arrayContaining(["button-name", "select-name"]));
  });
});
