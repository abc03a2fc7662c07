/**
 * Workshops with the report that each must give. Those whose names begin with a number were worked on paper before
 * anything was printed; the rest are invented. Both implementations are held to them, so that neither can be
 * right only by agreeing with the other.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { BASES } from "@/lib/domain/plan-figures";
import { REAL_TODAY } from "../helpers/random-workshop";
import type { WorkshopFile } from "../second/file-shape";
import { secondReport } from "../second/second-report";
import { basketIn, comparable, expectGoodBasket, firstReports, type SecondReport } from "./agreement";

const FOLDER = new URL("../examples/", import.meta.url);
const bytesOf = (name: string): Uint8Array => readFileSync(new URL(name, FOLDER));
// A file may begin with a byte order mark, which the decoder takes off.
const parsed = (name: string): unknown => JSON.parse(new TextDecoder().decode(bytesOf(name)));

const EXAMPLES = readdirSync(FOLDER).flatMap((file) => {
  const [, name, basis] = /^(.+)\.(replacement|shelf|average)\.report\.json$/.exec(file) ?? [];
  const known = BASES.find((each) => each === basis);
  return name === undefined || known === undefined ? [] : [{ file, name, basis: known }];
});

test("there are examples on every basis", () => {
  expect(EXAMPLES.length).toBeGreaterThan(70);
  expect(new Set(EXAMPLES.map(({ basis }) => basis)).size).toBe(BASES.length);
});

describe.each(EXAMPLES)("$name on the $basis basis", ({ file, name, basis }) => {
  const workshopFile = parsed(`${name}.json`) as WorkshopFile;
  const second = secondReport(workshopFile, basis, REAL_TODAY);
  const expected = comparable(parsed(file) as SecondReport, second.costs);

  test("[COST-1 to COST-7, PLAN-1 to PLAN-9, MAKE-1 to MAKE-3, REPORT-1] the product's report", () => {
    expect(comparable(firstReports(bytesOf(`${name}.json`))[basis], second.costs)).toEqual(expected);
  });

  test("[BUY-1 to BUY-5, BUY-8] the product's basket: the least that one costs, by the rules", () => {
    const basket = basketIn(firstReports(bytesOf(`${name}.json`))[basis]);
    const { total, optimal, gap, unsourced } = basketIn(parsed(file));
    expect(basket).toMatchObject({ total, optimal, gap, unsourced });
    expectGoodBasket(workshopFile, basket);
  });

  test("the second implementation's report", () => {
    expect(second).toEqual(expected);
  });
});
