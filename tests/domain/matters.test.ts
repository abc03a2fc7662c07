/** What asks for a hand, worked by hand from TODAY-1 and TODAY-2; everything here is invented. */
import { describe, expect, test } from "vitest";
import type { Batch } from "@/lib/domain/bench/batch";
import { emptyDesk } from "@/lib/domain/desk";
import type { CountDue } from "@/lib/domain/ledger/counts-due";
import { mattersOf } from "@/lib/domain/matters";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import type { Order, Run } from "@/lib/domain/workshop";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import { day, formula, g, lot, material, money, offer, order, product, run } from "@/tests/helpers/notation";

/** A Wednesday; next week ends on Sunday 6 December. A unit of pX is 100 g of X. */
const today = day("2026-11-25");
const bench: Parts = {
  materials: ["A", "B", "C"].map((id) => material(id)),
  formulas: [formula("a", { A: "100" }), formula("b", { B: "100" }), formula("c", { C: "100" })],
  products: [product("pA", "a"), product("pB", "b"), product("pC", "c")],
  offers: [offer("oA", "A", "1000", "10"), offer("oB", "B", "1000", "10")],
};

const closed = (units: bigint, held: boolean): Batch["notes"][number] => ({
  kind: "closed",
  key: "close",
  at: "2026-11-24T10:00:00Z" as Batch["notes"][number]["at"],
  who: "Invented",
  units: quantity(units),
  leftOver: null,
  bestBefore: null,
  held,
  why: null,
  whyNotWeighed: null,
  whyMoreFilled: null,
  whyOutOfDate: null,
  whyNotChecked: null,
});
const batch = (of: Run, startedOn: string, notes: Batch["notes"] = []): Batch =>
  ({ run: of, code: of.id, startedOn: day(startedOn), startedBy: "Invented", notes, lines: [] }) as unknown as Batch;

interface Case {
  readonly says: string;
  readonly parts?: Parts;
  readonly batches?: readonly Batch[];
  readonly due?: readonly CountDue[];
  readonly is: string;
}

function inShort({ parts = {}, batches = [], due = [] }: Case): string {
  const workshop = workshopOf({ ...bench, ...parts });
  const found = mattersOf({ workshop, desk: { ...emptyDesk, batches } }, plan(workshop, today), due);
  const materials = (list: typeof found.orderNow) => list.map((outlook) => outlook.material.id);
  const runs = (list: typeof found.notMakeable) => list.map((outlook) => outlook.run.id);
  const lists = {
    order: materials(found.orderNow),
    "cannot be made": runs(found.notMakeable),
    "not offered": materials(found.notOffered),
    open: found.leftOpen.map(({ code }) => code),
    judge: found.toJudge.map(({ code }) => code),
    "not closed": runs(found.notClosed),
    due: found.dueIn.map(({ id }: Order) => id),
    "out of date": materials(found.goingOut),
    count: found.toCount.map(({ outlook }) => outlook.material.id),
    soon: materials(found.orderSoon),
  };
  return Object.entries(lists)
    .filter(([, list]) => list.length > 0)
    .map(([name, list]) => `${name} ${list.join(" ")}`)
    .join("; ");
}

const line = { material: "A", quantity: g("1000"), cost: money("10"), expires: null };
const first = run("r1", "pA", "2026-11-24", 1);

const CASES: readonly Case[] = [
  { says: "nothing in an empty workshop", is: "" },
  {
    says: "what cannot be here in time is late, and its run cannot be made",
    parts: { runs: [run("r", "pA", "2026-11-25", 1)] },
    is: "order A; cannot be made r",
  },
  {
    says: "ordered on the day before by the last working day: today for tomorrow",
    parts: { runs: [run("r", "pA", "2026-11-26", 1)] },
    is: "order A; cannot be made r",
  },
  {
    says: "the end of next week is still soon",
    parts: { runs: [run("r", "pA", "2026-12-05", 1)] },
    is: "cannot be made r; soon A",
  },
  {
    says: "the week after that can wait",
    parts: { runs: [run("r", "pA", "2026-12-09", 1)] },
    is: "cannot be made r",
  },
  {
    says: "the most pressing first",
    parts: { runs: [run("r2", "pB", "2026-12-01", 1), run("r1", "pA", "2026-12-03", 1)] },
    is: "cannot be made r2 r1; soon B A",
  },
  {
    says: "lacking, and offered by nobody",
    parts: { runs: [run("r", "pC", "2026-12-01", 1)] },
    is: "cannot be made r; not offered C",
  },
  {
    says: "a run of a day that has passed is not closed, whether it can be made or not",
    parts: { lots: [lot("L", "A", "500", "5")], runs: [first, run("r2", "pC", "2026-11-23", 1)] },
    is: "not offered C; not closed r2 r1",
  },
  {
    says: "a run at the bench is left open there, and no run that is not closed",
    parts: { lots: [lot("L", "A", "500", "5")], runs: [first] },
    batches: [batch(first, "2026-11-24")],
    is: "open r1",
  },
  {
    says: "a batch started today is at work, not left open",
    parts: { lots: [lot("L", "A", "500", "5")], runs: [{ ...first, date: today }] },
    batches: [batch({ ...first, date: today }, "2026-11-25")],
    is: "",
  },
  {
    says: "a closed batch that is held waits for a second look; one that is not held does not",
    batches: [
      batch(first, "2026-11-20", [closed(1n, true)]),
      batch({ ...first, id: "r9" }, "2026-11-20", [closed(1n, false)]),
    ],
    is: "judge r1",
  },
  {
    says: "orders due by today of which something is to come, the longest due first",
    parts: {
      orders: [
        order("now", "2026-11-25", [line]),
        order("past", "2026-11-20", [line]),
        order("later", "2026-11-26", [line]),
        order("draft", "2026-11-20", [line], { state: "drafted" }),
        order("here", "2026-11-20", [{ ...line, received: g("1000") }]),
      ],
    },
    is: "due past now",
  },
  {
    says: "the lot that goes out of date first comes first",
    parts: {
      lots: [
        lot("L1", "A", "5", "1", { expires: day("2026-12-09") }),
        lot("L2", "B", "5", "1", { expires: day("2026-12-01") }),
      ],
    },
    is: "out of date B A",
  },
  {
    says: "counts that are due, in the order in which they come",
    due: [
      { rhythm: { material: "B", rhythm: null }, isDue: true } as unknown as CountDue,
      { rhythm: { material: "A", rhythm: null }, isDue: false } as unknown as CountDue,
    ],
    is: "count B",
  },
];

describe("what asks for a hand today", () => {
  test.each(CASES)("[TODAY-1] [TODAY-2] $says", (each) => {
    expect(inShort(each)).toBe(each.is);
  });
});
