import { expect, expectAccessible, test } from "./fixtures";
import { expectFocusShown, expectWhole } from "./layout";
import { PLACES, SCHEMES, SIZES } from "./places";

const STOPS_AT_MOST = 30;

test.describe("every place, at every size, on a light and a dark page", () => {
  for (const { name, path } of PLACES) {
    for (const size of SIZES) {
      // The tablet's layout is neither scheme's own: dark is looked at where a page is widest and narrowest.
      for (const scheme of SCHEMES.filter((each) => each === "light" || size !== SIZES[1])) {
        test(`${name} at ${String(size.width)}, ${scheme}`, async ({ page }) => {
          await page.setViewportSize(size);
          await page.emulateMedia({ colorScheme: scheme });
          await page.goto(path);
          await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
          await expectWhole(page);
          await expectAccessible(page);
          if (scheme === "light") await expectFocusShown(page, STOPS_AT_MOST);
        });
      }
    }
  }
});

test.describe("a policy that lets nothing else in", () => {
  // The proxy puts it on every answer alike.
  for (const { name, path } of PLACES.slice(0, 3)) {
    test(`${name} is sent with a content policy whose nonce is new each time`, async ({ page }) => {
      const policies: string[] = [];
      for (let time = 0; time < 2; time += 1) {
        const answer = await page.goto(path);
        policies.push(answer?.headers()["content-security-policy"] ?? "");
      }
      const nonces = policies.map((policy) => /'nonce-([^']+)'/.exec(policy)?.[1]);
      expect(nonces.every((nonce) => nonce !== undefined && nonce.length >= 16)).toBe(true);
      expect(nonces[0]).not.toBe(nonces[1]);
      for (const policy of policies) {
        expect(policy).toContain("default-src");
        expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|https?:|\*/);
      }
    });
  }
});

test.describe("before anything was opened", () => {
  test.use({ opened: "nothing" });

  test("the first page is whole, accessible and can be walked by keyboard", async ({ page }) => {
    for (const size of SIZES) {
      for (const scheme of SCHEMES) {
        await test.step(`${String(size.width)}, ${scheme}`, async () => {
          await page.setViewportSize(size);
          await page.emulateMedia({ colorScheme: scheme });
          await page.goto("/");
          await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
          await expectWhole(page);
          await expectAccessible(page);
          await expectFocusShown(page, STOPS_AT_MOST);
        });
      }
    }
  });

  for (const path of ["/cost", "/week", "/shelf"]) {
    test(`${path} says that there is no workshop yet and leads to the first page`, async ({ page }) => {
      await page.goto(path);
      await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
      await expectWhole(page);
      await expectAccessible(page);
    });
  }
});
