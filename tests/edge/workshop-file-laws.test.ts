/** What holds for every file: it goes round unchanged, and nothing in it can stop the program. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writeWorkshopFile } from "@/lib/edge/workshop-file";
import { changedFile, dayCalled, faultsOf, read, workshopOf } from "../bad-files/bench-workshop";
import { settings } from "../helpers/notation";
import { richWorkshop } from "../helpers/store-workshop";
import { workshops } from "../helpers/random-workshop";
import type { WorkshopFile } from "../second/file-shape";

const textOf = (file: WorkshopFile): string => JSON.stringify(file);

test("[FILE-4] a workshop that is written and read again is the same, and so are the bytes", () => {
  fc.assert(
    fc.property(workshops("small"), (file) => {
      const workshop = workshopOf(textOf(file));
      const written = writeWorkshopFile(workshop);
      expect(workshopOf(written)).toEqual(workshop);
      expect(writeWorkshopFile(workshopOf(written))).toBe(written);
    }),
    { numRuns: 200 },
  );
});

test("[FILE-4, FILE-5, OFFER-1, OFFER-2] likewise of version 3, and version 1 where it says nothing of that", () => {
  const additions = fc.record({
    shelfLifeDays: fc.option(fc.nat(3660)),
    confirmedOn: fc.option(fc.constantFrom("1900-01-01", "2026-11-20", "2999-12-31").map(dayCalled)),
  });
  fc.assert(
    fc.property(workshops("small"), fc.array(additions, { minLength: 1, maxLength: 3 }), (file, added) => {
      const read = workshopOf(textOf(file));
      const offers = read.offers.map((offer, at) => ({ ...offer, ...added[at % added.length] }));
      const workshop = { ...read, offers };
      const written = writeWorkshopFile(workshop);
      const says = offers.some(({ shelfLifeDays, confirmedOn }) => shelfLifeDays !== null || confirmedOn !== null);
      expect(written).toContain(`"version": ${says ? "3" : "1"},`);
      expect(workshopOf(written)).toEqual(workshop);
      expect(writeWorkshopFile(workshopOf(written))).toBe(written);
    }),
    { numRuns: 100 },
  );
});

const askingNothing = richWorkshop().formulas.map((each) => ({ ...each, checks: [] }));

test.each([
  ["CHECK-1", 4, "all that checks need to know", { labels: [], papers: [], formulas: askingNothing }],
  ["BENCH-11", 5, "what formulas ask to be looked at", { labels: [], papers: [] }],
  ["LABEL-9", 5, "labels and their papers", { formulas: askingNothing }],
])("[FILE-4, FILE-5, %s] likewise of version %d, with %s", (_, version, __, without) => {
  const bare = { lots: [], finished: [], runs: [], sales: [] };
  const workshop = { ...richWorkshop(), settings: settings(), ...bare, ...without };
  const written = writeWorkshopFile(workshop);
  expect(written).toContain(`"version": ${String(version)},`);
  expect(workshopOf(written)).toEqual(workshop);
  expect(writeWorkshopFile(workshopOf(written))).toBe(written);
});

type Nodes = Record<string, unknown>;

/** Every place in a document, as the object or list that holds it and its key there. */
function placesIn(node: unknown): readonly { readonly parent: Nodes; readonly key: string }[] {
  if (typeof node !== "object" || node === null) return [];
  const parent = node as Nodes;
  return Object.keys(parent).flatMap((key) => [{ parent, key }, ...placesIn(parent[key])]);
}

const JUNK: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  1.5,
  2 ** 53,
  "",
  "x",
  "qs",
  "0",
  "1 g",
  "1 each",
  "2026-02-30",
  "2026-11-25",
  "__proto__",
  "\u0000",
  "\ud800",
  [],
  {},
  [null],
  [[]],
  { id: "x" },
  [{}],
  ["2026-11-25"],
];

const LINE = /^(file|[A-Za-z]+(\[\d+\])?(\.\w+(\[\d+\])?)*): \S/;

test("[FILE-2] a file with anything put anywhere is read or refused in lines, never a defect", () => {
  fc.assert(
    fc.property(workshops("tiny"), fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 4 }), (file, edits) => {
      const document: unknown = structuredClone(file);
      for (const [at, junk] of edits) {
        const places = placesIn(document);
        const place = places[at % Math.max(1, places.length)];
        if (place !== undefined) place.parent[place.key] = structuredClone(JUNK[junk % JUNK.length]);
      }
      const text = JSON.stringify(document);
      const reading = read(text);
      if (reading.kind === "refused") {
        expect(reading.faults.length).toBeGreaterThan(0);
        for (const line of reading.faults) expect(line).toMatch(LINE);
      } else {
        expect(workshopOf(writeWorkshopFile(reading.workshop))).toEqual(reading.workshop);
      }
    }),
    { numRuns: 1500 },
  );
});

describe("[FILE-1] a file cut off", () => {
  const bytes = new TextEncoder().encode(changedFile({ "workshop.name": "Bänch 🌿" }));

  test("at every byte is refused, in one line", () => {
    expect(faultsOf(bytes)).toEqual([]);
    for (let length = 0; length < bytes.length; length += 1) {
      expect(faultsOf(bytes.subarray(0, length))).toEqual([expect.stringMatching(/^file: .*(JSON|empty)/)]);
    }
  });

  test("with any one byte changed is read or refused, never a defect", () => {
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.nat(255), (at, byte) => {
        const changed = bytes.slice();
        changed[at] = byte;
        for (const line of faultsOf(changed)) expect(line).toMatch(/: \S/);
      }),
      { numRuns: 1500 },
    );
  });
});
