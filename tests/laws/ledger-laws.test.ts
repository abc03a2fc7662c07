/** Random postings against a naive model: refused ones, dated back ones and reversals among them. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { sharedMoney, sharedOut } from "@/lib/domain/ledger/sharing";
import { balanceAt, latest } from "@/lib/domain/ledger/standing";
import { wholeValue } from "@/lib/domain/ledger/posting";
import { stockValueOn } from "@/lib/domain/ledger/valuation";
import { movesOf, standingAfter } from "@/lib/domain/ledger/standing";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { readStockValue } from "@/lib/store/ledger/ledger-answers";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { openStore } from "@/lib/store/open-store";
import { daysAfter } from "@/lib/domain/calendar";
import { shop, TODAY, named } from "../helpers/ledger-shop";
import { ledgerSoak } from "../helpers/ledger-soak";
import { diceFrom } from "../helpers/random-dice";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

const { file } = storeForEachTest();

test("[LEDGER-4] [LEDGER-8] [LEDGER-16] [LEDGER-23] whatever is posted or refused, quantity and value are conserved, day by day", async () => {
  const kinds = new Set<string>();
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: 1_000_000 }), async (seed) => {
      await openBooks(shop());
      const soak = ledgerSoak(diceFrom(seed), "law");
      for (let step = 0; step < 60; step += 1) await soak.step();
      for (const what of soak.counts.keys()) kinds.add(what);
      await holds(soak);
    }),
    { numRuns: 6, seed: 11, endOnFailure: true },
  );
  // A run of the law in which nothing was refused, or nothing taken back, would show little.
  const said = [...kinds].join();
  for (const kind of [
    "made: posted",
    "made: not there",
    "reversed: posted",
    "held: posted",
    "sold: posted",
    "counted: posted",
  ]) {
    expect(said).toContain(kind);
  }
});

async function holds(soak: ReturnType<typeof ledgerSoak>): Promise<void> {
  const { reader } = await openStore(file());
  const postings = await reader.alone(allPostings);
  const standing = standingAfter(movesOf(postings));
  for (const cell of soak.model.cells()) {
    const [, of = "", id = "", place = ""] = /^(\w+) (.+)@(\w+)$/s.exec(cell) ?? [];
    const lot = { of: of as "material", id };
    expect(latest(standing, lot, { kind: place as "shelf" }).quantity, cell).toBe(soak.model.stands(cell));
    for (const back of [1, 7, 20]) {
      const day = daysAfter(TODAY, -back);
      expect(balanceAt(standing, lot, { kind: place as "shelf" }, day).quantity, cell).toBe(
        soak.model.stands(cell, day),
      );
    }
  }
  expect(postings.flatMap(({ entries }) => entries).reduce((sum, { value }) => sum + wholeValue(value), 0n)).toBe(0n);
  for (const back of [0, 3, 15, 40]) {
    const day = daysAfter(TODAY, -back);
    expect(await readStockValue(day)).toEqual(stockValueOn(postings, day));
  }
  expect(await checkLedger(file())).toMatchObject({ disagreements: [], postings: postings.length });
  expect(latest(standing, named("jars"), { kind: "shelf" }).quantity).toBe(48n);
}

const weights = fc
  .array(fc.bigInt({ min: 0n, max: 10n ** 15n }), { minLength: 1, maxLength: 12 })
  .filter((all) => all.some((each) => each > 0n));
const amounts = fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n });

test("[LEDGER-6] shares come to the amount exactly, and none is a whole step away from its part", () => {
  fc.assert(
    fc.property(amounts, weights, (amount, each) => {
      const all = each.reduce((sum, weight) => sum + weight, 0n);
      const shares = sharedOut(amount, each);
      expect(shares.reduce((sum, share) => sum + share, 0n)).toBe(amount);
      shares.forEach((share, at) => {
        const off = share * all - amount * (each[at] ?? 0n);
        expect(off < all && off > -all).toBe(true);
      });
    }),
  );
});

test("[LEDGER-6] whole coins are shared in whole coins", () => {
  fc.assert(
    fc.property(fc.bigInt({ min: 0n, max: 10n ** 9n }), weights, (coins, each) => {
      const shares = sharedMoney(coins * 10_000n, each, 10_000n);
      expect(shares.every((share) => share % 10_000n === 0n)).toBe(true);
      expect(shares.reduce((sum, share) => sum + share, 0n)).toBe(coins * 10_000n);
    }),
  );
});
