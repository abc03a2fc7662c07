import { expect, test } from "vitest";
import { readArguments } from "@/lib/commands/arguments";

const TAKES = { flags: ["--json"], values: ["--basis"], file: true, usage: "npm run x" };

test.each([
  { given: [], is: { flags: [], values: [], file: null } },
  { given: ["--json", "a.json"], is: { flags: ["--json"], values: [], file: "a.json" } },
  { given: ["--basis", "shelf"], is: { flags: [], values: [["--basis", "shelf"]], file: null } },
  { given: ["--basis=a=b"], is: { flags: [], values: [["--basis", "a=b"]], file: null } },
  { given: ["--basis", "--json"], is: { flags: [], values: [["--basis", "--json"]], file: null } },
])("$given", ({ given, is }) => {
  const { flags, values, file } = readArguments(given, TAKES);
  expect({ flags: [...flags], values: [...values], file }).toEqual(is);
});

test.each([
  { given: ["--jsn"], why: 'unknown argument "--jsn"' },
  { given: ["--json=yes"], why: 'unknown argument "--json=yes"' },
  { given: ["-j"], why: 'unknown argument "-j"' },
  { given: ["--basis"], why: "--basis needs a value after it" },
  { given: ["--basis="], why: "--basis needs a value after it" },
  { given: ["--json", "--json"], why: "--json is there twice" },
  { given: ["--basis", "a", "--basis=b"], why: "--basis is there twice" },
  { given: ["a", "b"], why: "more than one file is named" },
])("$given is refused: $why", ({ given, why }) => {
  expect(() => readArguments(given, TAKES)).toThrow(`${why}. Write: npm run x`);
});
