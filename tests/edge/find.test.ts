/** One search over the demo workshop, which is invented. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { emptyDesk } from "@/lib/domain/desk";
import { find, findables } from "@/lib/edge/find";
import { nearSpelling } from "@/lib/edge/near-spelling";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { day } from "@/tests/helpers/notation";

const today = day("2026-11-25");
const reading = readWorkshopFile(readFileSync("seed/demo-workshop.json"), today);
if (reading.kind !== "read") throw new Error("the demo was refused");
const trial = {
  id: "t1",
  formula: "f-conditioner",
  name: "Thicker at seven",
  day: day("2026-11-20"),
  notes: null,
  lines: [],
  readings: [],
  posting: null,
};
const all = findables({ workshop: reading.workshop, desk: { ...emptyDesk, trials: [trial] } }, today);

const first = (typed: string): string => {
  const [kind] = find(all, typed, 8);
  return kind ? `${kind.kind}: ${kind.found[0]?.name ?? ""}` : "nothing";
};

describe("finding anything by typing", () => {
  test.each([
    ["glycerin", "Materials: Glycerin"],
    ["GLYC", "Materials: Glycerin"],
    ["  cetyl   alc ", "Materials: Cetyl alcohol"],
    ["alcohol cetyl", "Materials: Cetyl alcohol"],
    ["L03", "Lots: Glycerin, lot L03"],
    ["lot l03", "Lots: Glycerin, lot L03"],
    ["order pretend", "Orders: Order from Pretend Packaging, Wed 18 Nov"],
    ["imagined", "Suppliers: Imagined Ingredients"],
    ["receive", "Places: Receive a delivery"],
    ["po-1", "Orders: Order from Fabled Faraway Botanicals, Fri 30 Oct"],
    ["seven thicker", "Trials: Thicker at seven"],
    ["zzz", "nothing"],
    ["", "nothing"],
    ["   ", "nothing"],
    ["%_*.[", "nothing"],
  ])("%s", (typed, found) => {
    expect(first(typed).replaceAll("\u00a0", " ")).toBe(found);
  });

  test("accents and case do not matter, on either side", () => {
    const some = [{ kind: "Materials", name: "Beurre de Karité", says: "ingredient", href: "/" }] as const;
    expect(find(some, "KARITE", 8)).toHaveLength(1);
    expect(find(some, "karité", 8)).toHaveLength(1);
  });

  test("of a kind as many as asked for, and how many there are besides", () => {
    const [kind] = find(
      all.filter((each) => each.kind === "Lots"),
      "lot",
      5,
    );
    expect(kind?.found).toHaveLength(5);
    expect(kind?.further).toBe(reading.workshop.lots.length - 5);
  });

  test("runs of one name stand in the order of their days", () => {
    const runs = find(all, "conditioner", 50).find(({ kind }) => kind === "Runs")?.found ?? [];
    expect(runs.length).toBeGreaterThan(2);
    const days = runs.map(({ on }) => on ?? 0);
    expect(days).toEqual([...days].sort((one, other) => one - other));
  });

  test("each thing stands once, under an address of its own", () => {
    const addresses = all.map(({ kind, href }) => `${kind} ${href}`);
    expect(new Set(addresses).size).toBe(addresses.length);
  });
});

describe("a slip of the finger", () => {
  test.each([
    ["calednula oil", "calendula oil"],
    ["Glycrein", "glycerin"],
    ["cetly alcohol", "cetyl alcohol"],
    ["beewax", "beeswax"],
    ["glycerin", null],
    ["L99", null],
    ["po-91", null],
    ["lot L0x3", null],
    ["zzz", null],
    ["qqqqqqqq", null],
    ["%_*.[", null],
    ["", null],
  ])("%s is taken for %s", (typed, meant) => {
    expect(nearSpelling(all, typed)).toBe(meant);
  });

  test("a code is never guessed at: every lot is found by its own and no other", () => {
    for (const { name } of all.filter(({ kind }) => kind === "Lots")) expect(nearSpelling(all, `${name}x`)).toBeNull();
  });
});
