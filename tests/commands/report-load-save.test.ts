import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { type Ended, runChild } from "../helpers/child";
import { folderForEachTest } from "../helpers/store-folder";

const DEMO = path.resolve("seed/demo-workshop.json");

const folder = folderForEachTest();
const at = (name: string) => path.join(folder(), name);
const store = () => at("stillroom.db");
/** A command with a store of its own, and a temporary folder that shows whether anything is left in it. */
const run = (command: "report" | "load" | "save", ...given: readonly string[]): Promise<Ended> =>
  runChild(`lib/commands/${command}.ts`, given, { STILLROOM_STORE: store(), TMPDIR: at("temporary") });

beforeEach(() => {
  mkdirSync(at("temporary"));
});

const refused = (...lines: readonly string[]): Ended => ({
  code: 1,
  out: "",
  err: lines.map((line) => `${line}\n`).join(""),
});
const done = { code: 0, err: "" };

describe("npm run report", () => {
  test("prints one JSON document and nothing else, the same from a file and from the app's own store", async () => {
    const fromFile = await run("report", "--workshop", DEMO, "--json");
    expect(fromFile).toMatchObject(done);
    expect(JSON.parse(fromFile.out)).toMatchObject({ format: "stillroom-report", version: 1 });
    // The temporary store is gone, and the app's own was not made.
    expect(readdirSync(at("temporary")).filter((name) => name.startsWith("stillroom"))).toEqual([]);
    expect(readdirSync(folder())).toEqual(["temporary"]);
    expect(await run("load", DEMO)).toMatchObject(done);
    expect(await run("report", "--json")).toEqual(fromFile);
  });

  test("prints tables without --json, and takes another basis", async () => {
    const [tables, average] = await Promise.all([
      run("report", `--workshop=${DEMO}`),
      run("report", "--workshop", DEMO, "--json", "--basis", "average"),
    ]);
    expect(tables).toMatchObject(done);
    expect(tables.out).not.toMatch(/^\s*\{/);
    expect(average).toMatchObject(done);
    expect(JSON.parse(average.out)).toMatchObject({ costs: [{ basis: "average" }, {}, {}, {}, {}, {}] });
  });

  test("[FILE-2] prints one line for each fault of the file, and nothing to standard output", async () => {
    const faulty = JSON.parse(readFileSync(DEMO, "utf8")) as {
      lots: { expires: string }[];
      runs: { units: unknown }[];
    };
    Object.assign(faulty.lots[0] ?? {}, { expires: "2026-02-30" });
    Object.assign(faulty.runs[0] ?? {}, { units: -3 });
    writeFileSync(at("faulty.json"), JSON.stringify(faulty));
    const { code, out, err } = await run("report", "--workshop", at("faulty.json"), "--json");
    expect({ code, out }).toEqual({ code: 1, out: "" });
    expect(err.trimEnd().split("\n")).toHaveLength(2);
    expect(err).toContain("lots[0].expires: no such day");
    expect(err).toContain("runs[0].units: ");
  });

  test("says in a sentence what it cannot do, and leaves nothing behind", async () => {
    writeFileSync(at("not-json.json"), "what I have in the kitchen");
    const usage = "Write: npm run report -- [--workshop FILE] [--json] [--basis replacement|shelf|average]";
    const [missing, aFolder, unknown, basis, none, text] = await Promise.all([
      run("report", "--workshop", at("nowhere.json")),
      run("report", "--workshop", folder()),
      run("report", "--workshop", DEMO, "--jsno"),
      run("report", "--basis", "cheapest"),
      run("report", "--json"),
      run("report", "--workshop", at("not-json.json")),
    ]);
    expect(missing).toEqual(refused(`${at("nowhere.json")}: there is no such file or folder; check the name`));
    expect(aFolder).toEqual(refused(`${folder()}: this is a folder; name a file in it`));
    expect(unknown).toEqual(refused(`unknown argument "--jsno". ${usage}`));
    expect(basis).toEqual(refused(`--basis must be replacement, shelf, average, not "cheapest". ${usage}`));
    expect(none.err).toContain(`${store()} holds no workshop yet`);
    expect([none.code, none.out]).toEqual([1, ""]);
    expect([text.code, text.out]).toEqual([1, ""]);
    expect(text.err).not.toMatch(/\bat .+:\d+:\d+|node:/);
    expect(readdirSync(folder()).sort()).toEqual(["not-json.json", "temporary"]);
  });

  test("says which store cannot be used, and why", async () => {
    writeFileSync(store(), "not a database at all, but long enough to be taken for one. ".repeat(40));
    const { code, out, err } = await run("report");
    expect({ code, out }).toEqual({ code: 1, out: "" });
    expect(err).toBe(
      `The store ${store()} cannot be opened: file is not a database. STILLROOM_STORE chooses another file.\n`,
    );
  });
});

describe("npm run load and npm run save", () => {
  test("[FILE-4] load, save, load, save: the same bytes, and every store before is kept", async () => {
    expect(await run("load", DEMO)).toMatchObject(done);
    const firstSave = await run("save", at("first.json"));
    expect(firstSave).toMatchObject(done);
    expect(firstSave.out).toMatch(/ is saved in .+first\.json\.\n$/);
    const again = await run("load", at("first.json"));
    expect(again).toMatchObject(done);
    const kept = /kept in (.+)\.\n/.exec(again.out)?.[1] ?? "";
    expect(readdirSync(folder())).toContain(path.basename(kept));
    expect(await run("save", at("second.json"))).toMatchObject(done);
    expect(readFileSync(at("second.json"), "utf8")).toBe(readFileSync(at("first.json"), "utf8"));
    expect((await run("save", at("second.json"))).out).toContain("in place of the file that was there");
    expect(readdirSync(folder()).filter((name) => name.includes("unfinished"))).toEqual([]);
  });

  test("a file that is refused leaves the store as it was, to the byte", async () => {
    expect(await run("load", DEMO)).toMatchObject(done);
    const before = readFileSync(store());
    const shelf = readFileSync(DEMO, "utf8").replace('"version": 4', '"version": 9');
    writeFileSync(at("newer.json"), shelf);
    const { code, out, err } = await run("load", at("newer.json"));
    expect({ code, out }).toEqual({ code: 1, out: "" });
    expect(err).toContain("version");
    expect(readFileSync(store()).equals(before)).toBe(true);
  });

  test("say in a sentence what they cannot do", async () => {
    const [noFile, two, noWorkshop] = await Promise.all([
      run("load"),
      run("load", "a", "b"),
      run("save", at("x.json")),
    ]);
    expect(noFile).toEqual(refused("Name the workshop file to load. Write: npm run load -- FILE"));
    expect(two).toEqual(refused("more than one file is named. Write: npm run load -- FILE"));
    expect(noWorkshop.err).toContain("holds no workshop yet");
    expect(readdirSync(folder())).toEqual(["temporary"]);
    await run("load", DEMO);
    mkdirSync(at("closed"));
    const [aFolder, nowhere] = await Promise.all([run("save", at("closed")), run("save", at("no/where.json"))]);
    expect(aFolder).toEqual(refused(`${at("closed")}: this is a folder; name a file in it`));
    expect(nowhere).toEqual(refused(`${at("no/where.json")}: there is no such file or folder; check the name`));
  });
});
