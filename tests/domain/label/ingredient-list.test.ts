import { describe, expect, test } from "vitest";
import type { WayOfUse } from "@/lib/domain/formula-book/facts";
import { type AddedMaterial, ingredientList } from "@/lib/domain/label/ingredient-list";
import { percent } from "@/tests/helpers/notation";

const added = (name: string, of: string, parts: Readonly<Record<string, string>> = {}): AddedMaterial => ({
  id: name,
  name,
  composition: Object.entries(parts).map(([inci, share]) => ({ inci, share: percent(share) })),
  fraction: { over: percent(of), under: 1_000_000n },
});
const named = (materials: readonly AddedMaterial[], use: WayOfUse | null = "leave-on") =>
  ingredientList(materials, use).listed.map(({ inci }) => inci);

const WATER = added("Water", "90", { Aqua: "100" });

describe("order", () => {
  test("[LABEL-1] the same name in several materials is one, its masses added", () => {
    const list = ingredientList(
      [added("Blend", "10", { Glycerin: "60", Aqua: "40" }), added("Water", "5", { AQUA: "100" })],
      "leave-on",
    );
    expect(list.listed.map(({ inci, fraction }) => [inci, (fraction.over * 1_000_000n) / fraction.under])).toEqual([
      ["Aqua", 90_000n],
      ["Glycerin", 60_000n],
    ]);
  });

  test("[LABEL-2] descending, those under 1 % last and descending too, ties by name", () => {
    const list = ingredientList(
      [
        added("c", "0.4", { Cera: "100" }),
        WATER,
        added("b", "0.9999", { Betaine: "100" }),
        added("a", "0.4", { Allantoin: "100" }),
        added("d", "1", { Dextrin: "100" }),
      ],
      "leave-on",
    );
    expect(list.listed.map(({ inci, isUnderOne }) => [inci, isUnderOne])).toEqual([
      ["Aqua", false],
      ["Dextrin", false],
      ["Betaine", true],
      ["Allantoin", true],
      ["Cera", true],
    ]);
  });

  test("[LABEL-1] a material of which nobody has said stands by its own name and is told", () => {
    const list = ingredientList([WATER, added("Mystery wax", "10")], "leave-on");
    expect(list.listed.map(({ inci }) => inci)).toEqual(["Aqua", "Mystery wax"]);
    expect(list.unknown).toEqual([{ id: "Mystery wax", name: "Mystery wax" }]);
  });
});

describe("allergens", () => {
  const perfumed = (linalool: string, of = "1") => [
    WATER,
    added("Scent", of, { Parfum: String(100 - Number(linalool)), Linalool: linalool }),
  ];

  test.each<readonly [string, string, WayOfUse | null, readonly string[]]>([
    ["exactly 0.001 % of what stays on", "0.1", "leave-on", ["Aqua", "Parfum"]],
    ["just above it", "0.1001", "leave-on", ["Aqua", "Parfum", "Linalool"]],
    ["exactly 0.01 % of what is rinsed off", "1", "rinse-off", ["Aqua", "Parfum"]],
    ["just above it, rinsed off", "1.0001", "rinse-off", ["Aqua", "Parfum", "Linalool"]],
    ["above 0.001 %, and nobody has said how it is used", "0.1001", null, ["Aqua", "Parfum", "Linalool"]],
  ])("[LABEL-3] %s", (_, linalool, use, expected) => {
    expect(named(perfumed(linalool), use)).toEqual(expected);
  });

  test("[LABEL-3] the perfume counts whole, with what it holds", () => {
    const list = ingredientList([added("Thickener", "0.8", { Xanthan: "100" }), ...perfumed("30")], "leave-on");
    expect(list.listed.map(({ inci, entry }) => [inci, entry])).toEqual([
      ["Aqua", null],
      ["Parfum", null],
      ["Xanthan", null],
      ["Linalool", 84],
    ]);
  });

  test("[LABEL-3] names of one entry count together, under the entry's name", () => {
    const scent = added("Scent", "1", { Parfum: "99.8", Geranial: "0.08", Neral: "0.12" });
    expect(named([WATER, scent])).toEqual(["Aqua", "Parfum", "Citral"]);
  });

  test("[LABEL-3] what several materials hold counts together, an ingredient of its own with it", () => {
    const oil = (of: string) => added(`Oil ${of}`, of, { "Citrus Limon Peel Oil": "99.94", Limonene: "0.06" });
    expect(named([WATER, oil("1")])).toEqual(["Aqua", "Citrus Limon Peel Oil"]);
    expect(named([WATER, oil("1"), oil("0.8")])).toEqual(["Aqua", "Citrus Limon Peel Oil", "Limonene"]);
  });

  test("[LABEL-3] one that is part of no perfume is an ingredient, however little of it there is", () => {
    const preservative = added("Blend", "0.001", { "Benzyl Alcohol": "84", "Dehydroacetic Acid": "16" });
    expect(named([WATER, preservative])).toEqual(["Aqua", "Benzyl Alcohol", "Dehydroacetic Acid"]);
  });

  test("[LABEL-3] too little of it is told all the same", () => {
    const { notNamed } = ingredientList(perfumed("0.05"), "leave-on");
    expect(notNamed.map(({ label }) => label)).toEqual(["Linalool"]);
  });

  test("[LABEL-3] a plant's oil inside a perfume is named by its entry, beside it is itself an ingredient", () => {
    const inside = added("Scent", "1", { Parfum: "90", "Lavandula Angustifolia Oil": "10" });
    expect(named([WATER, inside])).toEqual(["Aqua", "Parfum", "Lavandula Oil/Extract"]);
    const beside = added("Oils", "1", { "Lavandula Angustifolia Oil": "60", "Citrus Limon Peel Oil": "40" });
    expect(named([WATER, beside])).toEqual(["Aqua", "Lavandula Angustifolia Oil", "Citrus Limon Peel Oil"]);
  });
});
