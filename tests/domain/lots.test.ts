import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import type { Day } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import { asShelfLot, byDrawOrder, putOnShelf, standingShelf, takeFromShelf, writeOff } from "@/lib/domain/lots";
import { day, g, inGrams, lot, stock } from "@/tests/helpers/notation";

const shelf = [
  lot("none", "A", "5", "0"),
  lot("late", "A", "5", "0", { expires: day("2026-12-31") }),
  lot("b-early", "A", "4", "0", { expires: day("2026-12-01") }),
  lot("a-early-later-received", "A", "3", "0", { expires: day("2026-12-01"), received: day("2026-10-02") }),
  lot("a-early", "A", "2", "0", { expires: day("2026-12-01") }),
  lot("gone", "A", "9", "0", { expires: day("2026-11-24") }),
];

test("[LOT-1] earliest expiry first and none last, then earliest received, then id", () => {
  expect([...shelf].sort(byDrawOrder).map(({ id }) => id)).toEqual([
    "gone",
    "a-early",
    "b-early",
    "a-early-later-received",
    "late",
    "none",
  ]);
});

describe("[LOT-1] a draw", () => {
  const drawn = (wanted: string) => {
    const standing = standingShelf(shelf.map(asShelfLot));
    const lots = [...standing.standing];
    const lost = writeOff(standing, day("2026-11-25"));
    const given = takeFromShelf(standing, g(wanted));
    const used = lots.filter((each) => each.used > 0n).reverse();
    return {
      lost: lost.map((each) => `${each.lot.id} ${inGrams(each.lost)}`).join(", "),
      given: inGrams(given),
      used: used.map((each) => `${each.lot.id} ${inGrams(each.used)}`).join(", "),
      holds: inGrams(standing.holds),
    };
  };
  test.each([
    { wanted: "1", given: "1", used: "a-early 1", holds: "18" },
    { wanted: "6", given: "6", used: "a-early 2, b-early 4", holds: "13" },
    { wanted: "7", given: "7", used: "a-early 2, b-early 4, a-early-later-received 1", holds: "12" },
    { wanted: "20", given: "19", used: "a-early 2, b-early 4, a-early-later-received 3, late 5, none 5", holds: "0" },
  ])("of $wanted g takes $used", ({ wanted, ...after }) => {
    expect(drawn(wanted)).toEqual({ lost: "gone 9", ...after });
  });
});

test("[LOT-1] a lot is usable on its last day, not after", () => {
  const standing = standingShelf([asShelfLot(lot("x", "A", "1", "0", { expires: day("2026-12-01") }))]);
  expect(writeOff(standing, day("2026-12-01"))).toHaveLength(0);
  expect(writeOff(standing, day("2026-12-02"))).toHaveLength(1);
  expect(standing.holds).toBe(0n);
});

test("[LOT-2] ids are ordered by code point, not by UTF-16 unit", () => {
  expect(["🌿", "～", "b", "B", "a", "", "aa"].sort(byCodePoint)).toEqual(["", "B", "a", "aa", "b", "～", "🌿"]);
});

property.prop([fc.string({ unit: "binary" }), fc.string({ unit: "binary" })])(
  "[LOT-2] the order of ids equals the order of their code points",
  (a, b) => {
    const points = (text: string) => [...text].map((point) => point.codePointAt(0) ?? 0);
    const [inA, inB] = [points(a), points(b)];
    const first = inA.findIndex((point, index) => point !== inB[index]);
    const expected =
      first < 0 ? inA.length - inB.length : inB[first] === undefined ? 1 : (inA[first] ?? 0) - inB[first];
    expect(Math.sign(byCodePoint(a, b))).toBe(Math.sign(expected));
  },
);

const anyLot = fc.record({
  id: fc.string(),
  received: fc.integer({ min: 0, max: 5 }).map((at) => at as Day),
  expires: fc.option(fc.integer({ min: 0, max: 9 }).map((at) => at as Day)),
  quantity: fc.bigInt({ min: 0n, max: 20n }).map(stock),
  value: fc.constant(null),
  order: fc.constant(null),
});

property.prop([fc.array(anyLot), fc.array(anyLot), fc.bigInt({ min: 0n, max: 300n }), fc.integer({ min: 0, max: 10 })])(
  "[LOT-1] nothing appears or vanishes, and lots put on later stand where they would have stood",
  (first, later, wanted, on) => {
    const shelfBy = standingShelf(first);
    const standing = [...shelfBy.standing, ...later.map((each) => putOnShelf(shelfBy, each))];
    expect(shelfBy.standing.map(({ lot: each }) => each)).toEqual(
      standingShelf([...first, ...later])
        .standing.map(({ lot: each }) => each)
        .sort((a, b) => byDrawOrder(b, a)),
    );
    const held = standing.reduce((sum, each) => sum + each.left, 0n);
    expect(shelfBy.holds).toBe(held);
    writeOff(shelfBy, on as Day);
    const given = takeFromShelf(shelfBy, stock(wanted));
    const [left, used, lost] = (["left", "used", "lost"] as const).map((key) =>
      standing.reduce((sum, each) => sum + each[key], 0n),
    );
    expect(used).toBe(given);
    expect(left).toBe(shelfBy.holds);
    expect((left ?? 0n) + (used ?? 0n) + (lost ?? 0n)).toBe(held);
    expect(standing.every((each) => each.left >= 0n)).toBe(true);
  },
);
