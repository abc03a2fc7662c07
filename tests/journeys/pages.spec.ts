import { expect, expectAccessible, test } from "./fixtures";
import { expectSoundAtEverySize } from "./every-size";
import { expectWhole } from "./layout";
import { BENCH_PLACES, BENCH_WORKSHOP, PLACES } from "./places";

const STOPS_AT_MOST = 30;

test.describe("every place is whole, accessible and walked by keyboard at every size, light and dark", () => {
  for (const { name, path } of PLACES) {
    test(name, async ({ page }) => {
      await page.goto(path);
      await expectSoundAtEverySize(page, { stops: STOPS_AT_MOST });
    });
  }
});

test.describe("so is every page of the bench, its papers among them", () => {
  test.use({ opened: BENCH_WORKSHOP });

  for (const { name, path } of BENCH_PLACES) {
    test(name, async ({ page }) => {
      await page.goto(path);
      await expectSoundAtEverySize(page, { stops: STOPS_AT_MOST });
    });
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
    await page.goto("/");
    await expectSoundAtEverySize(page, { stops: STOPS_AT_MOST });
  });

  test("every place says that there is no workshop yet and leads to the first page", async ({ page }) => {
    for (const path of ["/cost", "/week", "/shelf"]) {
      await page.goto(path);
      await expect(page.getByRole("heading", { level: 1 })).toHaveCount(1);
      await expectWhole(page);
      await expectAccessible(page);
    }
  });
});
