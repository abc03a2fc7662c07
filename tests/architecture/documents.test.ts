import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { PROJECT, textOf } from "./project-files";

const { scripts, engines } = JSON.parse(textOf("package.json")) as {
  readonly scripts: Readonly<Record<string, string>>;
  readonly engines: { readonly node: string };
};

/** What a document says in code, inline and in blocks. */
const codeIn = (text: string): readonly string[] =>
  [...text.matchAll(/```[\s\S]*?```|`[^`\n]+`/g)].map(([code]) => code);

describe.each(["README.md", "DEVELOPERS.md"])("%s", (path) => {
  const code = codeIn(textOf(path));

  test("names only commands that there are", () => {
    const named = code.flatMap((piece) =>
      [...piece.matchAll(/npm run (?:--silent )?([a-z][a-z:-]*)/g)].map(([, name]) => name),
    );
    expect(named.length).toBeGreaterThan(2);
    expect(named.filter((name) => name === undefined || !(name in scripts))).toEqual([]);
  });

  test("names only files that there are", () => {
    const named = code.flatMap((piece) =>
      [...piece.matchAll(/(?<![\w/.-])(?:app|lib|prisma|seed|tests|\.ci)\/[\w./-]*/g)].map(([file]) => file),
    );
    expect(named.length).toBeGreaterThan(1);
    // The generated client is written at install, a migration's folder by the command that the line shows.
    const made = /^lib\/store\/generated|^prisma\/migrations\//;
    expect(named.filter((file) => !made.test(file) && !existsSync(join(PROJECT, file)))).toEqual([]);
  });
});

test("README.md names the versions of Node that package.json asks for", () => {
  const versions = [...engines.node.matchAll(/\d+(?:\.\d+)?(?=\.)/g)].map(([version]) => version.replace(/\.0$/, ""));
  expect(versions.length).toBeGreaterThan(2);
  const [, paragraph = ""] = /- \*\*Node\*\*([^\n]*)/.exec(textOf("README.md")) ?? [];
  expect(versions.filter((version) => !paragraph.includes(version))).toEqual([]);
});
