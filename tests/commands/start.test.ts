import { mkdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer, type Server } from "node:net";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { buildIsOld } from "@/lib/commands/build-age";
import { chosenPort, mustBeFree } from "@/lib/commands/port";
import { isSupportedNode } from "@/lib/commands/supported-node";
import { runChild } from "../helpers/child";
import { folderForEachTest } from "../helpers/store-folder";

const folder = folderForEachTest();

describe("the port", () => {
  test.each([
    { named: undefined, port: 3000 },
    { named: "", port: 3000 },
    { named: "8080", port: 8080 },
    { named: "65535", port: 65_535 },
  ])("PORT $named is $port", ({ named, port }) => {
    expect(chosenPort(named)).toBe(port);
  });

  test.each(["0", "65536", "3000.5", "-1", "http", "0x50", " 80", "08"])(
    "PORT %j is refused in a sentence",
    (named) => {
      expect(() => chosenPort(named)).toThrow(`PORT must be a whole number from 1 to 65535, not "${named}".`);
    },
  );

  test("that is free is taken, and is free again", async () => {
    const server = await listening();
    const { port } = server.address() as AddressInfo;
    await expect(mustBeFree(port)).rejects.toThrow(`Port ${String(port)} is in use`);
    await new Promise((resolve) => server.close(resolve));
    await mustBeFree(port);
    await mustBeFree(port);
  });
});

const listening = (): Promise<Server> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      resolve(server);
    });
  });

test("npm start says that the port is taken before it builds anything", async () => {
  const server = await listening();
  const { port } = server.address() as AddressInfo;
  const environment = { PORT: String(port), STILLROOM_STORE: path.join(folder(), "stillroom.db") };
  const ended = await runChild("lib/commands/start.ts", [], environment);
  server.close();
  expect(ended).toEqual({
    code: 1,
    out: "",
    err: `Port ${String(port)} is in use by another program, or Stillroom is already running there. Choose another port: PORT=${String(port + 1)} npm start\n`,
  });
});

describe("Node", () => {
  const RANGES = "^20.19.0 || ^22.13.0 || >=26.0.0";
  test.each([
    { version: "20.19.0", supported: true },
    { version: "20.20.2", supported: true },
    { version: "20.18.9", supported: false },
    { version: "21.99.0", supported: false },
    { version: "22.13.0", supported: true },
    { version: "23.0.0", supported: false },
    { version: "26.0.0", supported: true },
    { version: "31.1.4", supported: true },
  ])("$version: $supported", ({ version, supported }) => {
    expect(isSupportedNode(version, RANGES)).toBe(supported);
  });
});

describe("the build is old", () => {
  const write = (name: string, at: number) => {
    const file = path.join(folder(), name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, "");
    utimesSync(file, at, at);
  };
  const touchFolders = (at: number) => {
    for (const name of ["app", "lib", "lib/store", "lib/store/generated"])
      utimesSync(path.join(folder(), name), at, at);
  };
  /** Sources of the hour 1000 and a build of the hour 2000. */
  const built = () => {
    write("app/page.tsx", 1000);
    write("lib/store/generated/client.ts", 3000);
    write(".next/BUILD_ID", 2000);
    touchFolders(1000);
  };

  test("where there is none", () => {
    write("app/page.tsx", 1000);
    expect(buildIsOld(folder())).toBe(true);
  });

  test("not where every source is older; the generated client follows from others", () => {
    built();
    expect(buildIsOld(folder())).toBe(false);
  });

  test.each(["app/page.tsx", "package-lock.json", "next.config.mjs", "proxy.ts"])("where %s is newer", (name) => {
    built();
    write(name, 2001);
    utimesSync(path.join(folder(), "app"), 1000, 1000);
    expect(buildIsOld(folder())).toBe(true);
  });

  test("where a source was taken away since", () => {
    built();
    write("app/old.tsx", 1000);
    touchFolders(1000);
    expect(buildIsOld(folder())).toBe(false);
    rmSync(path.join(folder(), "app/old.tsx"));
    expect(buildIsOld(folder())).toBe(true);
  });
});
