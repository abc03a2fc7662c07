/** What holds of every batch, whatever is weighed. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Batch, type BenchNote, type Instant, type SheetLine, stateOf } from "@/lib/domain/bench/batch";
import { sheetFor } from "@/lib/domain/bench/sheet";
import { drawnByLot, judged, linesWeighed, massIn } from "@/lib/domain/bench/weights";
import { bulkOf, exactFor } from "@/lib/domain/needs";
import { roundedUp, times, ratio } from "@/lib/domain/fraction";
import { type Micrograms, quantity, type Stock } from "@/lib/domain/quantity";
import { TODAY } from "../helpers/ledger-shop";
import { formula, grams, material, product, run } from "../helpers/notation";
import { bareWorkshop } from "../helpers/store-workshop";

const STEPS = [1_000n, 100_000n, 1_000_000n];
const AT = "2026-11-25T09:30:00Z" as Instant;

test("[BENCH-1, WEIGH-1] the targets of a sheet come to the bulk, rounded up to a whole step of the balance", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 98 }),
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 1, max: 400 }),
      fc.constantFrom(...STEPS),
      (percent, units, fill, step) => {
        const workshop = bareWorkshop("Shop", {
          materials: [material("oil"), material("wax")],
          formulas: [formula("f", { oil: String(percent), wax: "qs" })],
          products: [product("p", "f", { fill: grams(String(fill)), heel: grams("7.5") })],
          settings: {
            ...bareWorkshop("").settings,
            balanceStep: { typed: { number: "0.1" as never, unit: "g" }, quantity: quantity<Micrograms>(step) },
          },
        });
        const planned = run("r", "p", "2026-11-26", units);
        const lines = sheetFor(workshop, planned, TODAY);
        const [only] = workshop.products;
        if (only === undefined) throw new Error("the shop has a product");
        const bulk = exactFor(bulkOf(only), planned.units);
        const steps = roundedUp(times(bulk, ratio(1n, step)));
        expect(lines.reduce((sum, { target }) => sum + target, 0n)).toBe(steps * step);
      },
    ),
  );
});

const LINE: SheetLine = {
  key: "1",
  part: "f",
  of: { kind: "material", id: "oil" },
  called: "Oil",
  phase: null,
  target: quantity(100_000_000n),
  tolerance: quantity(1_000_000n),
};

test("[BENCH-3] a weight is within exactly where the line is off by no more than is allowed", () => {
  const stock = fc.bigInt({ min: 0n, max: 200_000_000n }).map((amount) => quantity<Stock>(amount));
  fc.assert(
    fc.property(stock, stock, (already, net) => {
      const { off, total, within } = judged(LINE, already, net);
      expect(total).toBe(already + net);
      expect(within).toBe(total >= 99_000_000n && total <= 101_000_000n);
      expect(LINE.target + off).toBe(total);
    }),
  );
});

/** Weights of two lots, some of them struck. */
const notes = fc
  .array(
    fc.record({ net: fc.bigInt({ min: 1n, max: 1_000_000n }), lot: fc.constantFrom("A", "B"), struck: fc.boolean() }),
    {
      maxLength: 20,
    },
  )
  .map((weights) => {
    const written = weights.map(({ net, lot }, at): BenchNote => ({
      key: `w${String(at)}`,
      at: AT,
      who: "R. Weaver",
      kind: "weighed",
      line: "1",
      lot,
      net: quantity<Stock>(net),
      gross: null,
      tare: null,
      more: true,
      why: null,
    }));
    const strikes = weights.flatMap(({ struck }, at): readonly BenchNote[] =>
      struck
        ? [
            {
              key: `s${String(at)}`,
              at: AT,
              who: "R. Weaver",
              kind: "struck",
              strikes: `w${String(at)}`,
              why: "misread",
            },
          ]
        : [],
    );
    const stands = weights.filter(({ struck }) => !struck).reduce((sum, { net }) => sum + net, 0n);
    return { all: [...written, ...strikes], stands };
  });

test("[BENCH-4] what was struck counts for nothing, and everything else is in the batch, by line and by lot", () => {
  fc.assert(
    fc.property(notes, ({ all, stands }) => {
      const batch: Batch = {
        run: run("r", "p", "2026-11-26", 1),
        code: "B",
        startedOn: TODAY,
        startedAt: AT,
        startedBy: "R. Weaver",
        despite: null,
        as: null,
        versions: [],
        labels: [],
        lines: [LINE],
        notes: all,
      };
      expect(massIn(batch)).toBe(stands);
      expect(linesWeighed(batch)[0]?.total).toBe(stands);
      expect([...drawnByLot(batch).values()].reduce((sum, held) => sum + held, 0n)).toBe(stands);
      expect(stateOf(batch)).toBe("open");
    }),
  );
});
