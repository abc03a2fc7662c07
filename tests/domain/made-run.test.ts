/** Cases worked by hand from the rules; the property holds closing to what the plan says the same run would draw. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { earlier } from "@/lib/domain/calendar";
import { type Books, emptyDesk } from "@/lib/domain/desk";
import { closeAsMade, drawsFor, type MadeRun, type MadeRunResult } from "@/lib/domain/made-run";
import { plan } from "@/lib/domain/plan";
import { quantity, type Units } from "@/lib/domain/quantity";
import type { Lot, Run, Workshop } from "@/lib/domain/workshop";
import { planned } from "@/tests/agreement/agreement";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import {
  day,
  formula,
  inGrams,
  lot,
  material,
  money,
  percent,
  pieces,
  product,
  run,
  stock,
} from "@/tests/helpers/notation";
import { workshops } from "@/tests/helpers/random-workshop";

const today = day("2026-11-25");
const units = (count: number): Units => quantity<Units>(BigInt(count));

const booksOf = (parts: Parts): Books => ({ workshop: workshopOf(parts), desk: emptyDesk });

const made = (id: string, given: Partial<MadeRun> = {}): MadeRun => ({
  run: id,
  today,
  unitsMade: units(5),
  finishedLot: { id: "batch 1", bestBefore: null },
  ifShort: "refuse",
  ...given,
});

/** One unit is 100 g of A in a jar; one jar in five that is handled breaks. */
const bench: Parts = {
  materials: [material("A"), material("jar", { measure: "count" })],
  formulas: [formula("f", { A: "100" })],
  products: [product("p", "f", { packaging: [{ material: "jar", amount: pieces(1), spoilage: percent("20") }] })],
  runs: [run("r1", "p", "2026-11-20", 5), run("r2", "p", "2026-11-30", 5)],
};
const jars = (count: bigint, value: string): Lot => ({ ...lot("jars", "jar", "0", value), remaining: stock(count) });

const booksAfter = (result: MadeRunResult): Books => {
  if (result.kind !== "made") throw new Error(`not made: ${result.kind}`);
  return result.books;
};
const lotsOf = ({ workshop }: Books): readonly string[] =>
  workshop.lots.map(({ id, material: of, remaining, value }) =>
    [id, of === "jar" ? remaining.toString() : inGrams(remaining), "worth", inGrams(value)].join(" "),
  );

describe("closing a run as made", () => {
  test("[CLOSE-2] for a past day it draws what had come by then before what came later", () => {
    const workshop = workshopOf({
      ...bench,
      lots: [
        lot("new", "A", "900", "9", { received: day("2026-11-24"), expires: day("2026-12-01") }),
        lot("old", "A", "900", "9", { received: day("2026-11-20") }),
        jars(10n, "5"),
      ],
    });
    const [first] = workshop.runs;
    const drawnOn = (on: string) => first && drawsFor(workshop, first, day(on)).map(({ lot: { id } }) => id);
    expect(drawnOn("2026-11-25")).toEqual(["new", "jars"]);
    expect(drawnOn("2026-11-23")).toEqual(["old", "jars"]);
    expect(drawnOn("2026-11-19"), "nothing had come: the ledger says so").toEqual(["new", "jars"]);
  });

  test("[CLOSE-1, CLOSE-4] the run leaves the plan, is kept as closed, and its units stand as a finished lot", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "600", "6"), jars(10n, "5")] });
    const bestBefore = day("2028-11-24");
    const result = closeAsMade(before, made("r1", { unitsMade: units(4), finishedLot: { id: "batch 1", bestBefore } }));
    const { workshop, desk } = booksAfter(result);
    expect(workshop.runs.map(({ id }) => id)).toEqual(["r2"]);
    expect(workshop.finished).toEqual([{ id: "batch 1", product: "p", made: today, bestBefore, units: 4n }]);
    expect(desk.closedRuns).toEqual([{ versions: [], run: before.workshop.runs[0], madeOn: today, unitsMade: 4n }]);
    expect(before).toEqual(booksOf({ ...bench, lots: [lot("a", "A", "600", "6"), jars(10n, "5")] }));
  });

  test("[CLOSE-1, BOOK-1] what is kept beside the workshop is no part of it", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "600", "6"), jars(10n, "5")] });
    const { workshop } = booksAfter(closeAsMade(before, made("r1")));
    expect(Object.keys(workshop)).toEqual(Object.keys(before.workshop));
  });

  test("[CLOSE-4] where nothing came out no finished lot is added", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "600", "6"), jars(10n, "5")] });
    const { workshop, desk } = booksAfter(closeAsMade(before, made("r1", { unitsMade: units(0) })));
    expect([workshop.finished, desk.closedRuns.map(({ unitsMade }) => unitsMade)]).toEqual([[], [0n]]);
  });

  test.each([
    {
      // 5 units: 500 g of A, and 5 ÷ 0.8 = 6.25 jars, so 7
      says: "its need, spoilage with it, whatever came out",
      lots: [lot("a", "A", "600", "6"), jars(10n, "5")],
      after: ["a 100 worth 1", "jars 3 worth 1.5"],
    },
    {
      says: "the earliest expiry first, then one without; one out of date is left",
      lots: [
        lot("later", "A", "900", "9"),
        lot("gone", "A", "900", "9", { expires: day("2026-11-24") }),
        lot("sooner", "A", "300", "6", { expires: today }),
        jars(7n, "5"),
      ],
      after: ["later 700 worth 7", "gone 900 worth 9", "sooner 0 worth 0", "jars 0 worth 0"],
    },
    {
      says: "as many jars as there are where the least is there, and the need is not",
      lots: [lot("a", "A", "500", "1"), jars(5n, "5")],
      after: ["a 0 worth 0", "jars 0 worth 0"],
    },
  ])("[CLOSE-2] draws $says", ({ lots, after }) => {
    expect(lotsOf(booksAfter(closeAsMade(booksOf({ ...bench, lots }), made("r1"))))).toEqual(after);
  });

  test.each([
    // 7 of 14 jars: half of 0.000005 is 2.5 micro-units, to the even 2; half of 0.000007 is 3.5, to the even 4
    { worth: "0.000005", left: "0.000003" },
    { worth: "0.000007", left: "0.000003" },
  ])("[CLOSE-3] half of a lot worth $worth leaves $left", ({ worth, left }) => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "500", "1"), jars(14n, worth)] });
    expect(lotsOf(booksAfter(closeAsMade(before, made("r1"))))).toEqual(["a 0 worth 0", `jars 7 worth ${left}`]);
  });

  test("[CLOSE-3] what was drawn is told lot by lot, with its value", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "600", "6"), jars(10n, "5")] });
    const result = closeAsMade(before, made("r1"));
    expect(result).toMatchObject({
      draws: [
        { lot: { id: "a" }, quantity: stock(500_000_000n), value: money("5") },
        { lot: { id: "jars" }, quantity: stock(7n), value: money("3.5") },
      ],
      value: money("8.5"),
    });
  });

  test("[CLOSE-5] what is not there is named, and nothing is changed", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "420", "6"), jars(4n, "5")] });
    const result = closeAsMade(before, made("r1"));
    expect(result.kind === "short" && result.short.map(({ material: { id }, by }) => [id, by])).toEqual([
      ["A", 80_000_000n],
      ["jar", 1n],
    ]);
  });

  test("[CLOSE-5] made all the same, it draws what is there", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "420", "6"), jars(14n, "5")] });
    const after = booksAfter(closeAsMade(before, made("r1", { ifShort: "draw what is there" })));
    expect(lotsOf(after)).toEqual(["a 0 worth 0", "jars 7 worth 2.5"]);
    expect(after.workshop.finished.map((each) => each.units)).toEqual([5n]);
  });

  test("[CLOSE-1] a run is closed once", () => {
    const before = booksOf({ ...bench, lots: [lot("a", "A", "6000", "6"), jars(100n, "5")] });
    const once = booksAfter(closeAsMade(before, made("r1")));
    expect(closeAsMade(once, made("r1"))).toEqual({ kind: "already made", closed: once.desk.closedRuns[0] });
    expect(closeAsMade(once, made("r2")).kind).toBe("finished lot exists");
    expect(closeAsMade(once, made("r3")).kind).toBe("no such run");
  });
});

/** The workshop with nothing planned but this run, today, and nothing on its way. */
const alone = (workshop: Workshop, only: Run): Workshop => ({
  ...workshop,
  orders: [],
  runs: [{ ...only, date: today }],
});

const sum = (values: readonly bigint[]): bigint => values.reduce((all, each) => all + each, 0n);

test("[CLOSE-2, CLOSE-3, CLOSE-5] closing draws lot by lot what the plan of that run alone uses, and nothing is lost on the way", () => {
  let [closed, refused] = [0, 0];
  fc.assert(
    fc.property(workshops("small"), (file) => {
      const read = planned(file).workshop;
      // The plan takes every lot of a file as here, and a run that is closed for a day only what had come by then.
      const lotsByThen = read.lots.map((each) => ({ ...each, received: earlier(each.received, today) }));
      const workshop = { ...read, lots: lotsByThen };
      for (const { id, ...rest } of workshop.runs) {
        const only = { id, ...rest };
        const expected = plan(alone(workshop, only), today);
        const [outlook] = expected.runs;
        const before: Books = { workshop, desk: emptyDesk };
        const asked = made(id, { finishedLot: { id: "made just now", bestBefore: null } });
        const result = closeAsMade(before, { ...asked, ifShort: "draw what is there" });
        if (result.kind !== "made") throw new Error(result.kind);

        const drawn = new Map(result.draws.map((draw) => [draw.lot.id, draw]));
        const ladder = expected.materials.flatMap((each) => each.ladder);
        expect(workshop.lots.map((each) => drawn.get(each.id)?.quantity ?? 0n)).toEqual(
          workshop.lots.map((each) => ladder.find((rung) => rung.lot === each.id)?.used),
        );
        const { lots } = result.books.workshop;
        for (const [at, each] of workshop.lots.entries()) {
          const draw = drawn.get(each.id);
          const left = lots[at];
          expect([left?.id, left?.remaining, left?.value]).toEqual([
            each.id,
            each.remaining - (draw?.quantity ?? 0n),
            each.value - (draw?.value ?? 0n),
          ]);
          expect(left && left.value >= 0n && (left.remaining > 0n || left.value === 0n)).toBe(true);
        }
        expect(sum(workshop.lots.map(({ value }) => value)) - sum(lots.map(({ value }) => value))).toBe(result.value);

        const strict = closeAsMade(before, asked);
        expect(strict.kind === "short" ? strict.short : []).toEqual(outlook?.short);
        if (strict.kind === "made") {
          expect(strict).toEqual(result);
          closed += 1;
        } else refused += 1;
      }
    }),
    { seed: 63, numRuns: 120 },
  );
  expect([closed > 40, refused > 40]).toEqual([true, true]);
});
