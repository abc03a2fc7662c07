/**
 * What is drawn on a label reads back as what it should say: the SVG is filled into pixels by rectangles, as a printer
 * would, and read by @zxing/library, which shares nothing with the library that drew it (Apache-2.0; its later versions
 * ask for a newer Node than ours).
 */
import {
  BarcodeFormat,
  BinaryBitmap,
  Code128Reader,
  DecodeHintType,
  HybridBinarizer,
  QRCodeReader,
  RGBLuminanceSource,
} from "@zxing/library";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { LabelDrawing } from "@/app/_ui/label-drawing";
import { codeContent } from "@/lib/domain/label/gs1";
import type { CodeKind } from "@/lib/domain/label/label";
import { keptLayout } from "@/lib/edge/label/kept-layout";
import { day, decimal } from "../helpers/notation";

const SIZE = { width: 63.5, height: 38.1 };
/** A desktop printer of 300 dots to the inch, and one of 600. */
const DOTS_A_MILLIMETRE = [300 / 25.4, 600 / 25.4];

interface Content {
  readonly code: string;
  readonly gtin?: string;
}

function drawn(kind: CodeKind, { code, gtin = "" }: Content): string {
  const content = codeContent(code, day("2027-11-25"), gtin === "" ? null : gtin);
  const kept = {
    market: "EU" as const,
    parts: [{ called: "the name", text: "Hand cream", isBold: true }],
    code: { ...content, kind },
  };
  const layout = keptLayout(kept, { width: decimal("63.5"), height: decimal("38.1") });
  expect(layout.left).toEqual([]);
  return renderToStaticMarkup(createElement(LabelDrawing, { layout, size: SIZE, says: "" }));
}

interface Rectangle {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The dark rectangles of the drawing, mm. */
function rectanglesIn(svg: string): readonly Rectangle[] {
  const [, path = "", x = "", y = "", scale = ""] =
    /<path d="([^"]+)" transform="translate\(([\d.]+) ([\d.]+)\) scale\(([\d.]+)\)"/.exec(svg) ?? [];
  const by = Number(scale);
  return [...path.matchAll(/M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z/g)].map((found) => {
    const [left = 0, top = 0, width = 0, height = 0] = found.slice(1).map(Number);
    return { left: Number(x) + left * by, top: Number(y) + top * by, width: width * by, height: height * by };
  });
}

/** A dot is dark where its middle is in a rectangle. */
function pixelsOf(rectangles: readonly Rectangle[], dots: number) {
  const [across, down] = [Math.round(SIZE.width * dots), Math.round(SIZE.height * dots)];
  const grey = new Uint8ClampedArray(across * down).fill(255);
  for (const { left, top, width, height } of rectangles) {
    for (let y = Math.ceil(top * dots - 0.5); y < (top + height) * dots - 0.5; y += 1)
      for (let x = Math.ceil(left * dots - 0.5); x < (left + width) * dots - 0.5; x += 1) grey[y * across + x] = 0;
  }
  return new RGBLuminanceSource(grey, across, down);
}

function read(kind: CodeKind, svg: string, dots: number) {
  const image = new BinaryBitmap(new HybridBinarizer(pixelsOf(rectanglesIn(svg), dots)));
  const hints = new Map<DecodeHintType, unknown>([[DecodeHintType.TRY_HARDER, true]]);
  const result = kind === "QR" ? new QRCodeReader().decode(image, hints) : new Code128Reader().decode(image, hints);
  return { text: result.getText(), format: result.getBarcodeFormat() };
}

describe.each(DOTS_A_MILLIMETRE)("at %d dots to the millimetre", (dots) => {
  test.each([
    { kind: "QR", code: "NHC-261120" },
    { kind: "QR", code: "PO 261125-01" },
    { kind: "QR", code: "Crème № 7/ß" },
    { kind: "Code 128", code: "NHC-261120" },
    { kind: "Code 128", code: "26329-001" },
    { kind: "Code 128", code: "123456" },
  ] as const)("[LABEL-7] $kind of $code reads back as the batch code", ({ kind, code }) => {
    const { text, format } = read(kind, drawn(kind, { code }), dots);
    expect(text).toBe(code);
    expect(format).toBe(kind === "QR" ? BarcodeFormat.QR_CODE : BarcodeFormat.CODE_128);
  });

  test.each(["QR", "Code 128"] as const)("[LABEL-7] %s with a GTIN reads back as number, day and batch", (kind) => {
    const svg = drawn(kind, { code: "B1", gtin: "6291041500213" });
    // GS1 General Specifications, section 3: AI 01 takes fourteen digits, 15 six, 10 up to twenty characters at the end.
    expect(read(kind, svg, dots).text.replaceAll("\u001d", "")).toBe("01062910415002131527112510B1");
  });
});

test("a drawing of which every other square is missing does not read: the test can fail", () => {
  const half = rectanglesIn(drawn("QR", { code: "NHC-261120" })).filter((_, at) => at % 2 === 0);
  const image = new BinaryBitmap(new HybridBinarizer(pixelsOf(half, 300 / 25.4)));
  expect(() => new QRCodeReader().decode(image)).toThrow();
});
