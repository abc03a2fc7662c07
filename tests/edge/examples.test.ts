/** Files that were made for the format: good ones go round unchanged, bad ones are refused by name. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { writeWorkshopFile } from "@/lib/edge/workshop-file";
import { faultsOf, workshopOf } from "../bad-files/bench-workshop";

const FOLDER = new URL("../examples/", import.meta.url);
const bytesOf = (file: string): Uint8Array => readFileSync(new URL(file, FOLDER));

const GOOD = readdirSync(FOLDER).filter((file) => file.endsWith(".json") && !file.endsWith(".report.json"));

describe("[FILE-4] a workshop file goes round", () => {
  test("there are files to try", () => {
    expect(GOOD.length).toBeGreaterThan(40);
  });

  test.each(GOOD)("%s", (file) => {
    const workshop = workshopOf(bytesOf(file));
    const written = writeWorkshopFile(workshop);
    expect(workshopOf(written)).toEqual(workshop);
    expect(writeWorkshopFile(workshopOf(written))).toBe(written);
  });
});

interface Expected {
  readonly why: string;
  readonly anyOf: readonly string[];
  readonly allOf?: readonly string[];
  /** How many lines there are. */
  readonly faults: number;
}

const EXPECTED = JSON.parse(new TextDecoder().decode(bytesOf("bad/EXPECT.json"))) as Readonly<Record<string, Expected>>;
const BAD = readdirSync(new URL("bad/", FOLDER)).filter((file) => file !== "EXPECT.json");

describe("[FILE-1, FILE-2] a bad file is refused", () => {
  test("every file has its expectation", () => {
    expect(Object.keys(EXPECTED).sort()).toEqual([...BAD].sort());
    expect(BAD.length).toBeGreaterThan(30);
  });

  test.each(Object.entries(EXPECTED))("%s", (file, { anyOf, allOf = [], faults }) => {
    const lines = faultsOf(bytesOf(`bad/${file}`));
    const text = lines.join("\n");
    expect(lines).toHaveLength(faults);
    expect(anyOf.filter((word) => text.includes(word))).not.toEqual([]);
    expect(allOf.filter((word) => !text.includes(word))).toEqual([]);
  });
});
