/** The sheet as a device has it: what waits on it counts, so that it is true without a network too. @rule BENCH-5 */
import { expect, test } from "vitest";
import { benchAtHand } from "@/app/bench/_parts/line-at-hand";
import type { BenchOnPage, LineOnPage } from "@/app/bench/_parts/bench-view";
import type { QueuedNote } from "@/app/bench/_parts/note-queue";
import { decimal, g } from "../helpers/notation";

const line = (key: string, target: string): LineOnPage => ({
  line: {
    key,
    part: "f",
    of: { kind: "material", id: "oil" },
    called: "Oil",
    phase: "A",
    target: g(target),
    tolerance: g("1"),
  },
  percent: null,
  planned: ["L1"],
  lots: [{ id: "L1", remaining: g("250"), says: "250 g there", isOutOfDate: false }],
});

const VIEW: BenchOnPage = {
  batch: "r",
  code: "B-1",
  product: "Oil",
  startedBy: "R. Weaver",
  sections: [
    {
      key: "1",
      phase: "A",
      title: "Phase A",
      isMain: true,
      celsius: null,
      steps: [],
      lines: [line("1", "100"), line("2", "200")],
    },
  ],
  steps: [],
  phases: ["A"],
  cautions: [],
  expected: "",
  stock: [],
  notes: [],
  checks: [{ what: "pH", from: decimal("5"), to: decimal("6"), unit: null, looks: null }],
  decimals: 1,
  newKeys: [],
};

const queued = (key: string, fields: Readonly<Record<string, string>>): QueuedNote => ({
  key,
  fields: { batch: "r", key, who: "R. Weaver", at: "2026-11-25T09:30:00Z", ...fields },
  isSent: false,
  refused: null,
});
const weight = queued("w1", { kind: "weighed", line: "1", lot: "L1", weight: "102", why: "slipped" });

test("[BENCH-5] an unsent weight closes its line, is out of tolerance, and has left its lot", () => {
  expect(benchAtHand(VIEW, []).open?.line.key).toBe("1");
  const hand = benchAtHand(VIEW, [weight]);
  expect(hand.open?.line.key).toBe("2");
  expect(hand.lines[0]).toMatchObject({ total: g("102"), off: g("2"), isDone: true, isOut: true });
  // 250 g less the 102 g that wait
  expect(hand.lines[1]?.lots[0]?.remaining).toBe(g("148"));
});

test("[BENCH-5] one that is struck while it waits stands no longer, nor has it left its lot", () => {
  const hand = benchAtHand(VIEW, [weight, queued("s1", { kind: "struck", strikes: "w1", why: "misread" })]);
  expect(hand.open?.line.key).toBe("1");
  expect(hand.lines[1]?.lots[0]?.remaining).toBe(g("250"));
});

test("[BENCH-5] too little with more to follow is neither done nor out", () => {
  const part = queued("w1", { kind: "weighed", line: "1", lot: "L1", weight: "60", more: "yes" });
  expect(benchAtHand(VIEW, [part]).lines[0]).toMatchObject({ total: g("60"), isDone: false, isOut: false });
});

test("[BENCH-11] a pH that waits answers its check where it is within", () => {
  expect(benchAtHand(VIEW, []).checks[0]?.isAnswered).toBe(false);
  expect(benchAtHand(VIEW, [queued("a1", { kind: "acidity", ph: "5.5" })]).checks[0]?.isAnswered).toBe(true);
});
