import { describe, expect, test } from "vitest";
import { codeContent } from "@/lib/domain/label/gs1";
import { labelDraft, type LabelSubject } from "@/lib/domain/label/label-draft";
import { readLabelAsked } from "@/lib/edge/forms/label-asked";
import { codeDrawing } from "@/lib/edge/label/code-drawing";
import { type LabelLayout, labelLayout, MILLIMETRES_A_POINT } from "@/lib/edge/label/label-layout";
import { labelParts } from "@/lib/domain/label/label-words";
import { widthOf } from "@/lib/edge/label/letter-widths";
import { day, grams, label, paper, percent } from "@/tests/helpers/notation";

const SIZE = { width: 63.5, height: 38.1 };
const subject = (given: Partial<LabelSubject["label"]> = {}): LabelSubject => ({
  label: label("l", "p", {
    title: "Hand balm",
    function: "Hand cream",
    responsible: "An invented maker",
    address: "1 Lane, Town",
    ...given,
  }),
  product: { name: "Balm", fill: grams("50") },
  formula: { use: "leave-on", phFrom: null, phTo: null, keepsDays: 365 },
  added: [
    {
      id: "w",
      name: "Water",
      composition: [{ inci: "Aqua", share: percent("100") }],
      fraction: { over: 1n, under: 1n },
    },
  ],
  batch: { code: "B-1", madeOn: day("2026-11-28"), bestBefore: null, ph: null },
  today: day("2026-11-28"),
});
const parts = (given: Partial<LabelSubject["label"]> = {}) => labelParts(labelDraft(subject(given)));
const QR = codeDrawing("QR", codeContent("B-1", null, null));

/** Right end of each line, foot of the last. */
const ends = ({ lines }: LabelLayout) => lines.map((line) => line.left + widthOf(line.text, line.size, line.isBold));

describe("words", () => {
  test("[LABEL-4, LABEL-5] what stands on a label, in its order", () => {
    const all = { showsMade: true, monthsOpen: 12, contact: "hello@maker.example", madeIn: "Nowhere" };
    expect(parts(all).map(({ text }) => text.replaceAll("\u00a0", " "))).toEqual([
      "Hand balm",
      "Hand cream",
      "50 g",
      "Ingredients: Aqua.",
      "Best used before the end of 28 Nov 2027. 12M after opening",
      "Batch B-1",
      "Made 2026-11-28",
      "An invented maker, 1 Lane, Town, hello@maker.example, Made in Nowhere",
    ]);
  });

  // Regulation (EC) 1223/2009, Article 19(1)(c), as read in a summary.
  test.each([
    ["EU", "Best used before the end of 28 Nov 2027"],
    ["GB", "Best used before the end of 28 Nov 2027"],
    ["US", "Best before 28 Nov 2027"],
  ] as const)("[LABEL-5] before the day, in %s: %s", (market, words) => {
    const printed = parts({ market }).find(({ called }) => called === "how long it keeps");
    expect(printed?.text.replaceAll("\u00a0", " ")).toBe(words);
  });

  test("[LABEL-4] in the United States customary units first, ingredients in capitals", () => {
    const text = parts({ market: "US" }).map((part) => part.text.replaceAll("\u00a0", " "));
    expect(text).toContain("Net Wt 1.76 oz, 50 g");
    expect(text).toContain("Ingredients: AQUA.");
  });
});

describe("layout", () => {
  test("[LABEL-10] every line is on the label, and beside the code where there is one", () => {
    const layout = labelLayout(parts({ cautions: "Keep out of eyes. ".repeat(4) }), QR, SIZE, "EU");
    expect(layout.left).toEqual([]);
    expect(layout.code).not.toBeNull();
    const { code } = layout;
    layout.lines.forEach((line, at) => {
      const end = ends(layout)[at] ?? Infinity;
      expect(end).toBeLessThanOrEqual(SIZE.width - 1.5);
      expect(line.base).toBeLessThanOrEqual(SIZE.height - 1.5);
      if (code && line.base > code.top) expect(end).toBeLessThanOrEqual(code.left);
    });
  });

  test("[LABEL-10] a short label has large letters, a long one small ones, none under six points", () => {
    const sizes = [1, 6, 60].map(
      (times) => labelLayout(parts({ cautions: "Take care. ".repeat(times) }), QR, SIZE, "EU").points,
    );
    expect(sizes[0]).toBeGreaterThan(sizes[1] ?? 0);
    expect(sizes[2]).toBe(6);
  });

  test("[LABEL-10] in the United States none under seven points, whose capitals are 1/16 inch high", () => {
    const layout = labelLayout(parts({ market: "US", cautions: "Take care. ".repeat(60) }), QR, SIZE, "US");
    expect(layout.points).toBe(7);
    // Capitals of Source Sans 3 are 0.66 of its size.
    expect(7 * MILLIMETRES_A_POINT * 0.66).toBeGreaterThan(25.4 / 16);
  });

  test("[LABEL-10] what there is no room for is named, and what comes before it stands", () => {
    const { left, lines } = labelLayout(parts({ cautions: "Take care. ".repeat(60) }), QR, SIZE, "EU");
    expect(left).toEqual(["the cautions", "how long it keeps", "the batch", "who is responsible"]);
    expect(lines.at(-1)?.text).toBe("Ingredients: Aqua.");
  });

  test("[LABEL-10] a code that is larger than the label is named", () => {
    const bars = codeDrawing("Code 128", codeContent("A-BATCH-WITH-A-LONG-NAME", null, null));
    expect(labelLayout(parts(), bars, { width: 30, height: 40 }, "EU").left).toContain("the drawn code");
  });

  test("[LABEL-10] a word that is wider than the label is broken in it", () => {
    const title = "x".repeat(120);
    const { lines } = labelLayout(parts({ title }), null, SIZE, "EU");
    expect(
      lines
        .filter(({ text }) => /^x+$/.test(text))
        .map(({ text }) => text)
        .join(""),
    ).toBe(title);
  });
});

describe("the drawn code", () => {
  test("[LABEL-7] a QR code of version 1 has 21 modules and four quiet ones on each side", () => {
    expect([QR?.width, QR?.height]).toEqual([29, 29]);
  });

  test("[LABEL-7] Code 128 has ten quiet modules on each side, a start, a check and a stop", () => {
    // ISO/IEC 15417, from memory: eleven modules a sign, thirteen for the stop. B-1 is three signs.
    expect(codeDrawing("Code 128", codeContent("B-1", null, null))?.width).toBe(10 + 11 * (1 + 3 + 1) + 13 + 10);
  });

  test.each(["QR", "Code 128"] as const)("[LABEL-7] %s carries number, day and batch", (kind) => {
    const content = codeContent("B-1", day("2027-11-30"), "6291041500213");
    const alone = codeDrawing(kind, codeContent("B-1", null, null));
    expect(codeDrawing(kind, content)?.width).toBeGreaterThan(alone?.width ?? Infinity);
  });

  test("[LABEL-7] a batch that Code 128 has no signs for is not drawn", () => {
    expect(codeDrawing("Code 128", codeContent("θ", null, null))).toBeNull();
  });
});

describe("what is asked", () => {
  const SHEET = paper("a");

  test.each<readonly [string, string, number, number]>([
    ["", "", 1, 21],
    ["20", "", 20, 2],
    ["20", "5", 20, 5],
    ["1", "420", 1, 420],
  ])("[LABEL-9] from %j, %j of them", (from, count, startAt, many) => {
    expect(readLabelAsked(from, count, SHEET)).toEqual({ startAt, count: many, faults: { from: null, count: null } });
  });

  test.each(["0", "22", "1.5", "many", "-1"])("[LABEL-9] there is no label %j of 21", (from) => {
    const { startAt, faults } = readLabelAsked(from, "", SHEET);
    expect(startAt).toBe(1);
    expect(faults.from).toEqual(expect.any(String));
  });

  test.each(["0", "421"])("[LABEL-9] %j labels are refused", (count) => {
    expect(readLabelAsked("", count, SHEET).faults.count).toContain("20 sheets");
  });
});

test("[LABEL-10] the widths are those of the font: three letters", () => {
  // hmtx of Source Sans 3, weight 400: A 544, i 246, space 200 of 1000; the browser gives whole thousandths.
  expect(widthOf("A", 1000, false)).toBeCloseTo(543, -1);
  expect(widthOf(" ", 1000, false)).toBe(200);
  expect(widthOf("AA", 10, false)).toBe(2 * widthOf("A", 10, false));
});
