import { expect, test } from "vitest";
import type { Fraction } from "@/lib/domain/fraction";
import { fitsPage, labelsOnASheet, placeOf, sheetsOf } from "@/lib/domain/label/paper";
import { decimal, paper } from "@/tests/helpers/notation";

const number = ({ over, under }: Fraction): number => Number(over) / Number(under);
const place = (at: number) => {
  const { left, top } = placeOf(paper("a"), at);
  return [number(left), number(top)];
};

test("[LABEL-9] labels lie row by row, from the edge and with their gaps", () => {
  expect(labelsOnASheet(paper("a"))).toBe(21);
  expect([1, 2, 3, 4, 21].map(place)).toEqual([
    [7.25, 15.15],
    [73.25, 15.15],
    [139.25, 15.15],
    [7.25, 53.25],
    [139.25, 243.75],
  ]);
});

test("[LABEL-9] exactly to the edge is on the page, a hundredth more is not", () => {
  expect(fitsPage(paper("a", { left: decimal("14.5") }))).toBe(true);
  expect(fitsPage(paper("a", { left: decimal("14.51") }))).toBe(false);
  expect(fitsPage(paper("a", { top: decimal("30.3") }))).toBe(true);
  expect(fitsPage(paper("a", { top: decimal("30.31") }))).toBe(false);
});

test("[LABEL-9] printing starts at any label and goes on over as many sheets as it needs", () => {
  expect(sheetsOf(paper("a"), 20, 4)).toEqual([
    [20, 21],
    [1, 2],
  ]);
  expect(sheetsOf(paper("a"), 1, 0)).toEqual([]);
  expect(sheetsOf(paper("a"), 1, 42).map((sheet) => sheet.length)).toEqual([21, 21]);
});
