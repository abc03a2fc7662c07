import { describe, expect, test } from "vitest";
import { compare, type Fraction } from "@/lib/domain/fraction";
import type { ClosedRun } from "@/lib/domain/desk";
import type { Batch, Instant } from "@/lib/domain/bench/batch";
import { materialLot } from "@/lib/domain/ledger/posting";
import { quantity, type Units } from "@/lib/domain/quantity";
import { type BatchYield, fitYield, lineNotBelowZero, type Point } from "@/lib/domain/yield-fit";
import { yieldsOfProduct } from "@/lib/domain/yields-of-product";
import { diceFrom } from "@/tests/helpers/random-dice";
import { day, g, grams, material, product, run } from "@/tests/helpers/notation";

const batch = (bulk: string, filled: string): BatchYield => ({ bulk: g(bulk), filled: g(filled) });
const number = (value: Fraction | null): number | null =>
  value === null ? null : Number(value.over) / Number(value.under);

describe("fit", () => {
  test("[YIELD-1] batches that lose exactly 30 g and 2 % say so, with no error", () => {
    const fit = fitYield(["1000", "2000", "5000"].map((bulk) => batch(bulk, String(Number(bulk) * 0.98 - 30))));
    expect(fit).toMatchObject({ kind: "fitted", batches: 3 });
    if (fit.kind !== "fitted") return;
    expect([number(fit.heel), number(fit.share), number(fit.heelError), number(fit.shareError)]).toEqual([
      30_000_000, 0.02, 0, 0,
    ]);
  });

  test("[YIELD-1] where larger batches lose less, the share is zero and the heel the mean", () => {
    const fit = fitYield([batch("1000", "960"), batch("2000", "1970"), batch("3000", "2980")]);
    expect(fit).toMatchObject({ kind: "fitted", share: { over: 0n }, shareError: null });
    expect(fit.kind === "fitted" && number(fit.heel)).toBe(30_000_000);
  });

  test("[YIELD-1] where small batches lose next to nothing, the heel is zero", () => {
    const fit = fitYield([batch("1000", "1000"), batch("2000", "1980"), batch("3000", "2930")]);
    expect(fit).toMatchObject({ kind: "fitted", heel: { over: 0n }, heelError: null });
    expect(fit.kind === "fitted" && (number(fit.share) ?? 0) > 0).toBe(true);
  });

  test("[YIELD-1] more came out than went in: both are zero", () => {
    const fit = fitYield([batch("1000", "1010"), batch("2000", "2010"), batch("3000", "3030")]);
    expect(fit).toMatchObject({ heel: { over: 0n }, share: { over: 0n }, heelError: null, shareError: null });
  });

  test("[YIELD-1] two batches, or batches of one size, say nothing", () => {
    expect(fitYield([batch("1000", "960"), batch("2000", "1970")])).toEqual({ kind: "too few", batches: 2 });
    expect(fitYield([])).toEqual({ kind: "too few", batches: 0 });
    const same = ["960", "970", "950"].map((filled) => batch("1000", filled));
    expect(fitYield(same)).toEqual({ kind: "one size", batches: 3 });
  });

  test("[YIELD-1] no line that is not below zero is better, on 300 random clouds of points", () => {
    const dice = diceFrom(7);
    for (let at = 0; at < 300; at++) {
      const points: readonly Point[] = Array.from({ length: dice.whole(3, 8) }, (_, place) => ({
        x: { over: BigInt(dice.whole(1, 50) + place * 50), under: 1n },
        y: { over: BigInt(dice.whole(-40, 60)), under: 1n },
      }));
      const best = lineNotBelowZero(points);
      expect(compare(best.at, { over: 0n, under: 1n })).toBeGreaterThanOrEqual(0);
      expect(compare(best.by, { over: 0n, under: 1n })).toBeGreaterThanOrEqual(0);
      const squares = (heel: number, share: number): number =>
        points.reduce((sum, { x, y }) => sum + (Number(y.over) - heel - share * Number(x.over)) ** 2, 0);
      const [heel, share] = [number(best.at) ?? 0, number(best.by) ?? 0];
      const least = squares(heel, share);
      for (const [h, s] of [
        [0.5, 0],
        [-0.5, 0],
        [0, 0.005],
        [0, -0.005],
        [0.5, -0.005],
        [-0.5, 0.005],
      ] as const) {
        if (heel + h < 0 || share + s < 0) continue;
        expect(squares(heel + h, share + s)).toBeGreaterThanOrEqual(least - 1e-9);
      }
    }
  });
});

test("[YIELD-2] a batch took its ingredients, not its jars; what failed does not count", () => {
  const made = (id: string, units: number): ClosedRun => ({
    run: run(id, id === "other" ? "q" : "p", "2026-11-01", 10),
    madeOn: day("2026-11-01"),
    unitsMade: quantity<Units>(BigInt(units)),
    versions: [],
  });
  const use = (of: string, lot: string, taken: bigint) => ({ run: of, lot: materialLot(lot), taken, made: null });
  const materials = new Map([
    ["oil-1", material("oil")],
    ["jar-1", material("jar", { kind: "packaging", measure: "count" })],
    ["wipes-1", material("wipes", { kind: "consumable" })],
  ]);
  const mark = { at: "2026-11-01T10:00:00Z" as Instant, who: "M" };
  const closed = {
    ...mark,
    kind: "closed",
    units: quantity<Units>(18n),
    bestBefore: null,
    held: false,
    why: null,
    whyNotWeighed: null,
    whyMoreFilled: null,
    whyOutOfDate: null,
    whyNotChecked: null,
  } as const;
  const atTheBench: Batch = {
    run: made("r1", 18).run,
    code: "B1",
    startedOn: day("2026-11-01"),
    startedAt: mark.at,
    startedBy: "M",
    despite: null,
    as: null,
    labels: [],
    versions: [],
    lines: [],
    notes: [{ ...closed, key: "c", leftOver: g("12") }],
  };
  const yields = yieldsOfProduct(
    product("p", "f", { fill: grams("50"), overfill: grams("1") }),
    { closedRuns: [made("r1", 18), made("r2", 0), made("r3", 5), made("other", 9)], batches: [atTheBench] },
    [
      use("r1", "oil-1", g("1000")),
      use("r1", "jar-1", 20n),
      use("r1", "wipes-1", g("3")),
      use("r1", "gone", g("7")),
      use("r2", "oil-1", g("1000")),
      use("other", "oil-1", g("1000")),
    ],
    (lot) => materials.get(lot) ?? null,
  );
  // r3 took nothing that the books know of.
  expect(yields).toEqual([{ bulk: g("1000"), filled: g("930") }]);
});
