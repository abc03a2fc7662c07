import { describe, expect, test } from "vitest";
import { filesLike, linesLike, projectFiles, textOf } from "./project-files";

/** The rooms, and what each is for; DEVELOPERS.md says the same at more length. A new room is a decision: it goes here. */
const ROOMS: Readonly<Record<string, readonly string[]>> = {
  "": [".ci", "app", "lib", "prisma", "seed", "tests"],
  lib: ["commands", "domain", "edge", "operations", "solver", "store"],
  tests: [
    "agreement",
    "architecture",
    "bad-files",
    "bench",
    "commands",
    "domain",
    "edge",
    "examples",
    "helpers",
    "journeys",
    "laws",
    "operations",
    "outside",
    "second",
    "solver",
    "store",
    "types",
  ],
};

/** Names that say nothing about what a file holds. `tests/helpers` is the one exception. */
const EMPTY_NAMES = /(^|[/.-])(utils?|helpers?|managers?|services?|common|misc)([/.-]|$)|\/(index|types)\.tsx?$/;

const SOURCE = /^(app|lib|tests)\/.*\.(ts|tsx)$|^[^/]+\.(ts|mjs)$/;
const HOUSE = /^(app|lib)\/.*\.(ts|tsx)$/;

describe("rooms", () => {
  test.each(Object.entries(ROOMS))("the folders of '%s' are the rooms that were agreed", (parent, agreed) => {
    const depth = parent === "" ? 0 : 1;
    const folders = projectFiles
      .map((path) => path.split("/"))
      .filter((steps) => steps.length > depth + 1 && (parent === "" || steps[0] === parent))
      .map((steps) => steps[depth]);
    expect([...new Set(folders)].filter((folder) => !agreed.includes(folder ?? ""))).toEqual([]);
  });

  test("files are named by what they hold", () => {
    const named = filesLike(SOURCE).filter((path) => EMPTY_NAMES.test(path.replace(/^tests\/(helpers|types)\//, "")));
    expect(named).toEqual([]);
    expect(EMPTY_NAMES.test("lib/edge/date-utils.ts") && EMPTY_NAMES.test("lib/edge/index.ts")).toBe(true);
  });

  test("names are lower case with hyphens", () => {
    const odd = filesLike(/^(app|lib|tests|seed)\//).filter(
      (path) => !/^[a-z0-9_./[\]()-]+$/.test(path) && !/\.(md|OFL\.txt)$|^tests\/examples\//.test(path),
    );
    expect(odd).toEqual([]);
  });

  test("a file of the house is read in one sitting: at most 250 lines", () => {
    const long = filesLike(HOUSE).filter((path) => textOf(path).trimEnd().split("\n").length > 250);
    expect(long).toEqual([]);
    expect(filesLike(HOUSE).length).toBeGreaterThan(10);
  });

  test("no file only passes on what others hold", () => {
    const barrels = filesLike(HOUSE).filter((path) => {
      const code = textOf(path)
        .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "")
        .split(";")
        .map((line) => line.trim())
        .filter((line) => line !== "");
      return code.length > 0 && code.every((line) => /^export (type )?(\*|\{)[\s\S]* from /.test(line));
    });
    expect(barrels).toEqual([]);
  });
});

describe("what a file may not say", () => {
  const floats = /parseFloat|\.toFixed\(|\.toPrecision\(|Math\.(round|fround)\(|Number\.EPSILON/;
  const styles = /\bstyle=|\bdangerouslySetInnerHTML\b/;
  const suppressed = /eslint-disable|@ts-(ignore|nocheck|expect-error)|prettier-ignore/;
  const withReason = /(eslint-disable(-next-line|-line)?\s+\S+.*|@ts-expect-error|prettier-ignore)\s*(--|:)\s*\S.{15,}/;
  const skipped = /\b(test|it|describe)\.(skip|only|todo|fixme|fails)\b/;
  const leftOver = /\b(TODO|FIXME|XXX|HACK)\b/;
  const machine = new RegExp(
    ["/work/", "/root/", "/home/[a-z]", "/tmp/[a-z]", "/Users/[a-z]", "[A-Z]:\\\\\\\\Users", "registry\\."].join("|"),
  );
  // This file has to name what it looks for.
  const except = (paths: readonly string[]) => paths.filter((path) => path !== "tests/architecture/house.test.ts");

  test("the domain reckons without floating point", () => {
    expect(linesLike(filesLike(/^lib\/domain\//), floats)).toEqual([]);
    expect(floats.test("amount.toFixed(2)") && floats.test("parseFloat(text)")).toBe(true);
  });

  test("pages carry no style attribute, which the content policy would drop", () => {
    // Rows that stand hundreds of times are markup, which `element` alone makes: it refuses a style, and its test holds
    // that words are escaped. Nobody writes a tag by hand.
    const drawnAsMarkup = [
      "_ui/ribbon",
      "_ui/sign",
      "shelf/_parts/material-row",
      "week/_parts/run-by-run",
      "week/_parts/week-draws",
    ];
    const isMarkup = (line: string): boolean =>
      drawnAsMarkup.some((file) => line.startsWith(`app/${file}.tsx:`)) &&
      /dangerouslySetInnerHTML=\{\{ __html: (ribbonMarkup\(ribbon, weeks\)|SIGN_SHAPES\[sign\]|rowOf\(draw, plan, axis\)|link|line) \}\}/.test(
        line,
      );
    expect(linesLike(filesLike(/^app\/.*\.tsx$/), styles).filter((line) => !isMarkup(line))).toEqual([]);
    expect(
      linesLike(
        filesLike(/^(app|lib\/edge)\/.*\.tsx?$/).filter((path) => path !== "lib/edge/markup.ts"),
        /["'`]<\/?[a-z]/,
      ),
    ).toEqual([]);
    expect(styles.test("<div style={{ width }}>")).toBe(true);
  });

  test("a silenced rule says why on its line", () => {
    const silenced = linesLike(except(filesLike(SOURCE)), suppressed);
    expect(silenced.filter((line) => !withReason.test(line))).toEqual([]);
    expect(withReason.test("// eslint-disable-next-line no-console -- the reader waits for this line")).toBe(true);
    expect(withReason.test("// eslint-disable-next-line no-console")).toBe(false);
    expect(withReason.test("// @ts-ignore")).toBe(false);
  });

  test("no test is skipped or narrowed", () => {
    expect(linesLike(except(filesLike(/^tests\//)), skipped)).toEqual([]);
    expect(skipped.test('test.skip("x")')).toBe(true);
  });

  test("nothing is left over", () => {
    expect(linesLike(except(filesLike(SOURCE)), leftOver)).toEqual([]);
  });

  test("no path or host of one machine", () => {
    const texts = except(projectFiles).filter((path) => !/\.(woff2|png|ico|db)$|^package-lock\.json$/.test(path));
    expect(linesLike(texts, machine)).toEqual([]);
    expect(machine.test('"/home/someone/notes"')).toBe(true);
  });

  test("the lock file names the public registry alone", () => {
    const hosts = [...textOf("package-lock.json").matchAll(/"resolved": "https?:\/\/([^/"]+)/g)].map(
      ([, host]) => host,
    );
    expect([...new Set(hosts)].filter((host) => host !== ["registry", "npmjs.org"].join("."))).toEqual([]);
  });
});
