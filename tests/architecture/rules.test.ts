import { describe, expect, test } from "vitest";
import { filesLike, textOf } from "./project-files";

/**
 * A rule is defined where lib/domain/rules.md says `- **LOT-1** …`, and held where a test quotes it: in a title, in a
 * table's `rule`, or in brackets as titles carry them.
 */
const RULES = "lib/domain/rules.md";

const defined = [...textOf(RULES).matchAll(/^- \*\*([A-Z]+-\d+)\*\*/gm)].map(([, rule]) => rule ?? "");
const familyOf = (rule: string): string => rule.replace(/-\d+$/, "");
const FAMILIES = [...new Set(defined.map(familyOf))];

const quotedIn = (text: string): readonly string[] =>
  [...text.matchAll(new RegExp(`\\b(?:${FAMILIES.join("|")})-\\d+`, "g"))].map(([rule]) => rule);

/** Rule numbers in the strings of a test file, not in its comments. */
const heldBy = (path: string): readonly string[] =>
  [
    ...textOf(path)
      .replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "")
      .matchAll(/"[^"\n]*"|'[^'\n]*'|`[^`]*`/g),
  ].flatMap(([text]) => quotedIn(text));

describe("rules", () => {
  test("each rule has one number", () => {
    expect(defined.length).toBeGreaterThan(40);
    expect(defined.filter((rule, at) => defined.indexOf(rule) !== at)).toEqual([]);
  });

  test("each family is numbered without a gap", () => {
    for (const family of FAMILIES) {
      const numbers = defined.filter((rule) => familyOf(rule) === family).map((rule) => Number(rule.split("-")[1]));
      expect(numbers, family).toEqual(numbers.map((_, at) => at + 1));
    }
  });

  test("every rule is held by a test that quotes its number", () => {
    const own = /^tests\/architecture\//;
    const held = new Set(
      filesLike(/^tests\/.*\.(test|spec)\.tsx?$/)
        .filter((path) => !own.test(path))
        .flatMap(heldBy),
    );
    expect(defined.filter((rule) => !held.has(rule))).toEqual([]);
  });

  test("every number that is quoted anywhere is the number of a rule", () => {
    const files = filesLike(/^(app|lib|tests|seed)\/.*\.(ts|tsx|md)$/).filter((path) => path !== RULES);
    const dangling = files.flatMap((path) =>
      quotedIn(textOf(path))
        .filter((rule) => !defined.includes(rule))
        .map((rule) => `${path}: ${rule}`),
    );
    expect(dangling).toEqual([]);
  });
});
