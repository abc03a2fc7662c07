import { readFileSync, truncateSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { connect } from "node:net";
import { networkInterfaces } from "node:os";
import { join } from "node:path";
import { expect, test } from "./fixtures";
import { PROJECT } from "./server";

const MEBIBYTE = 1024 * 1024;

interface Answer {
  readonly status: number;
  readonly text: string;
}

/** Asks as any program on this computer might: a browser would not let these headers be chosen. */
const ask = (port: number, method: string, headers: Readonly<Record<string, string>>, bytes = 0): Promise<Answer> =>
  new Promise((answered, failed) => {
    const asked = request({ host: "127.0.0.1", port, path: "/cost", method, headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on("data", (part: Buffer) => parts.push(part));
      answer.on("end", () => {
        answered({ status: answer.statusCode ?? 0, text: Buffer.concat(parts).toString() });
      });
    });
    asked.once("error", failed);
    asked.end(Buffer.alloc(bytes));
  });

const listensOn = (host: string, port: number): Promise<boolean> =>
  new Promise((answer) => {
    const socket = connect({ host, port, timeout: 2_000 });
    const end = (listens: boolean) => () => {
      socket.destroy();
      answer(listens);
    };
    socket.once("connect", end(true)).once("error", end(false)).once("timeout", end(false));
  });

test.describe("who can reach the app", () => {
  test("its own address is answered", async ({ app }) => {
    const own = `127.0.0.1:${String(app.port)}`;
    expect((await ask(app.port, "GET", { host: own })).status).toBe(200);
    expect((await ask(app.port, "GET", { host: own, origin: `http://${own}` })).status).toBe(200);
  });

  for (const host of ["workshop.example", "127.0.0.1.example:80", "192.0.2.7", "0.0.0.0"]) {
    test(`a page that calls it ${host} is refused`, async ({ app }) => {
      const answer = await ask(app.port, "GET", { host });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
      expect(answer.text).not.toContain("<h1");
    });
  }

  for (const origin of ["https://shop.example", "http://127.0.0.1:1", "null"]) {
    test(`a form that comes from ${origin} is refused`, async ({ app }) => {
      const answer = await ask(app.port, "POST", { host: `127.0.0.1:${String(app.port)}`, origin });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
    });
  }

  test("it listens on 127.0.0.1 and on no other address of this computer", async ({ app }) => {
    const others = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .map(({ address }) => address)
      .filter((address) => address !== "127.0.0.1" && !address.startsWith("fe80"));
    expect(await listensOn("127.0.0.1", app.port)).toBe(true);
    for (const address of new Set(["127.0.0.2", "::1", ...others])) {
      expect(await listensOn(address, app.port), address).toBe(false);
    }
  });
});

test.describe("a workshop file that cannot be taken", () => {
  for (const mebibytes of [65, 100]) {
    test(`one of ${String(mebibytes)} MiB, sent by another program, is refused in a sentence`, async ({ app }) => {
      const own = { host: `127.0.0.1:${String(app.port)}`, origin: app.url };
      const answer = await ask(app.port, "POST", own, mebibytes * MEBIBYTE);
      expect(answer.status).toBe(413);
      expect(answer.text).toContain("64 MiB");
    });
  }

  test("a maker who chooses one of more than 64 MiB is told so", async ({ page }) => {
    const file = test.info().outputPath("large.json");
    writeFileSync(file, "{");
    truncateSync(file, 65 * MEBIBYTE);
    await page.goto("/");
    await page.getByRole("link", { name: "Open another workshop" }).click();
    await page.getByLabel("Workshop file", { exact: true }).setInputFiles(file);
    await page.getByRole("button", { name: "Look into it" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "64 MiB" })).toBeVisible();
  });

  test("[FILE-2] one with faults shows each with its place and leaves the store as it was", async ({ page, app }) => {
    const saved = async () => (await fetch(`${app.url}/workshop-file`)).text();
    const before = await saved();
    expect(before).toContain("stillroom-workshop");
    const workshop = JSON.parse(readFileSync(join(PROJECT, "seed/demo-workshop.json"), "utf8")) as {
      lots: Record<string, unknown>[];
      runs: Record<string, unknown>[];
    };
    Object.assign(workshop.lots[3] ?? {}, { expires: "2026-02-30" });
    Object.assign(workshop.runs[0] ?? {}, { product: "no-such-product" });
    const file = test.info().outputPath("faults.json");
    writeFileSync(file, JSON.stringify(workshop));

    await page.goto("/");
    await page.getByRole("link", { name: "Open another workshop" }).click();
    await page.getByLabel("Workshop file", { exact: true }).setInputFiles(file);
    await page.getByRole("button", { name: "Look into it" }).click();
    const faults = page.getByRole("alert").getByRole("listitem");
    await expect(faults).toHaveCount(2);
    await expect(faults.filter({ hasText: "lots[3].expires" })).toContainText("2026-02-30");
    await expect(faults.filter({ hasText: "runs[0].product" })).toContainText("no-such-product");
    expect(await saved()).toBe(before);
  });
});
