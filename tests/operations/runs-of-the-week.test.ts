import { beforeEach, describe, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import { grouped } from "@/lib/domain/index-by-id";
import { quantity, type Units } from "@/lib/domain/quantity";
import { deleteRun } from "@/lib/operations/delete-run";
import { moveRun } from "@/lib/operations/move-run";
import { planRun } from "@/lib/operations/plan-run";
import { resizeRun } from "@/lib/operations/resize-run";
import { readBooks } from "@/lib/store/books";
import { isoDate } from "@/lib/domain/calendar";
import { day, formula, lot, material, product, run } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";
import { bareWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();
auditAfterEachTest(file);

const units = (count: number): Units => quantity(BigInt(count));

/** Monday has a, b and c, all with the sequence 0; Tuesday d (5) and e (6); f was made. */
const week = (): Books =>
  booksOf(
    bareWorkshop("Week", {
      materials: [material("m")],
      lots: [lot("L", "m", "100", "1")],
      formulas: [formula("f", { m: "100" })],
      products: [product("p", "f"), product("q", "f")],
      runs: [
        run("c", "p", "2026-11-30", 3),
        run("a", "p", "2026-11-30", 1),
        run("b", "q", "2026-11-30", 2),
        run("e", "p", "2026-12-01", 5, { sequence: 6 }),
        run("d", "p", "2026-12-01", 4, { sequence: 5 }),
      ],
    }),
    {
      closedRuns: [
        { run: run("f", "p", "2026-11-20", 6), madeOn: day("2026-11-21"), unitsMade: units(5), versions: [] },
      ],
    },
  );

beforeEach(() => openBooks(week()));

const books = async (): Promise<Books> => (await readBooks()) ?? week();

/** The plan in short, day by day in the order in which the runs draw: `Mon a b c · Tue d e`. */
async function plan(): Promise<string> {
  const { runs } = (await books()).workshop;
  const inOrder = runs.toSorted((a, b) => a.date - b.date || a.sequence - b.sequence || (a.id < b.id ? -1 : 1));
  const days = grouped(inOrder, ({ date }) => DAYS.get(isoDate(date)) ?? isoDate(date));
  return [...days].map(([name, ofDay]) => `${name} ${ofDay.map(({ id }) => id).join(" ")}`).join(" · ");
}
const DAYS = new Map([
  ["2026-11-30", "Mon"],
  ["2026-12-01", "Tue"],
  ["2026-12-02", "Wed"],
]);
const dates = { Mon: day("2026-11-30"), Tue: day("2026-12-01"), Wed: day("2026-12-02") };
type DayName = keyof typeof dates;

describe("moving a run", () => {
  const move = (id: string, from: DayName, to: DayName, before: string | null) =>
    moveRun({ run: id, from: dates[from], to: { date: dates[to], before } });

  test.each<{ says: string; move: Parameters<typeof move>; kind?: string; plan: string }>([
    { says: "to an empty day", move: ["a", "Mon", "Wed", null], plan: "Mon b c · Tue d e · Wed a" },
    { says: "to the end of another day", move: ["a", "Mon", "Tue", null], plan: "Mon b c · Tue d e a" },
    {
      says: "before another run, where there is a sequence left",
      move: ["a", "Mon", "Tue", "d"],
      plan: "Mon b c · Tue a d e",
    },
    { says: "between two, where there is none left", move: ["c", "Mon", "Tue", "e"], plan: "Mon a b · Tue d c e" },
    { says: "forward in its own day", move: ["c", "Mon", "Mon", "a"], plan: "Mon c a b · Tue d e" },
    { says: "back in its own day", move: ["a", "Mon", "Mon", "c"], plan: "Mon b a c · Tue d e" },
    { says: "to the end of its own day", move: ["a", "Mon", "Mon", null], plan: "Mon b c a · Tue d e" },
    { says: "to where it is", move: ["a", "Mon", "Mon", "b"], kind: "already there", plan: "Mon a b c · Tue d e" },
    {
      says: "before a run of another day",
      move: ["a", "Mon", "Wed", "d"],
      kind: "no such place",
      plan: "Mon a b c · Tue d e",
    },
    {
      says: "that somebody has moved meanwhile",
      move: ["a", "Wed", "Tue", null],
      kind: "stale",
      plan: "Mon a b c · Tue d e",
    },
    {
      says: "that was made meanwhile",
      move: ["f", "Mon", "Tue", null],
      kind: "already made",
      plan: "Mon a b c · Tue d e",
    },
    { says: "that was deleted", move: ["z", "Mon", "Tue", null], kind: "no such run", plan: "Mon a b c · Tue d e" },
  ])("[PLAN-4] $says", async ({ move: asked, kind = "moved", plan: expected }) => {
    const before = bytesOf(file());
    const result = await move(...asked);
    expect(result.kind).toBe(kind);
    expect(await plan()).toBe(expected);
    if (kind !== "moved") expect(bytesOf(file())).toEqual(before);
    expect(result).not.toHaveProperty("books");
  });

  test("every run keeps its product and its units, and the other day its sequences", async () => {
    await move("a", "Mon", "Tue", null);
    const { workshop } = await books();
    expect(workshop.runs).toStrictEqual([
      ...week().workshop.runs.slice(0, 1),
      { ...run("a", "p", "2026-12-01", 1), sequence: 6 + 1 },
      ...week().workshop.runs.slice(2),
    ]);
  });

  test("sent twice it is one move, and what was moved can be taken back", async () => {
    const moved = await move("b", "Mon", "Tue", "e");
    expect(moved).toMatchObject({ kind: "moved", was: { date: dates.Mon, before: "c" } });
    expect(await move("b", "Mon", "Tue", "e")).toMatchObject({ kind: "already there" });
    if (moved.kind !== "moved") throw new Error("it was not moved");
    expect(await moveRun({ run: "b", from: dates.Tue, to: moved.was })).toMatchObject({ kind: "moved" });
    expect(await plan()).toBe("Mon a b c · Tue d e");
  });

  test("two tabs that move the same run: the second is told where it is now", async () => {
    await move("a", "Mon", "Wed", null);
    expect(await move("a", "Mon", "Tue", null)).toMatchObject({ kind: "stale", now: { id: "a", date: dates.Wed } });
    expect(await plan()).toBe("Mon b c · Tue d e · Wed a");
  });

  test("a day whose sequences are used up is numbered anew", async () => {
    await moveRun({ run: "d", from: dates.Tue, to: { date: dates.Wed, before: null } });
    const full = await books();
    await openBooks(
      booksOf({
        ...full.workshop,
        runs: full.workshop.runs.map((each) => (each.id === "d" ? { ...each, sequence: 1_000_000 } : each)),
      }),
    );
    await move("e", "Tue", "Wed", null);
    await move("c", "Mon", "Wed", "e");
    expect(await plan()).toBe("Mon a b · Wed d c e");
    const { runs } = (await books()).workshop;
    expect(Math.max(...runs.map(({ sequence }) => sequence))).toBeLessThanOrEqual(1_000_000);
  });
});

describe("resizing a run", () => {
  test.each([
    { says: "to what is wanted", id: "c", from: 3, to: 9, kind: "resized", holds: 9 },
    { says: "to what it is", id: "c", from: 3, to: 3, kind: "already so", holds: 3 },
    { says: "a second time", id: "c", from: 8, to: 3, kind: "already so", holds: 3 },
    { says: "that somebody has resized meanwhile", id: "c", from: 8, to: 9, kind: "stale", holds: 3 },
    { says: "that was made meanwhile", id: "f", from: 6, to: 9, kind: "already made", holds: 3 },
    { says: "that was deleted", id: "z", from: 6, to: 9, kind: "no such run", holds: 3 },
  ])("$says", async ({ id, from, to, kind, holds }) => {
    const before = bytesOf(file());
    expect(await resizeRun({ run: id, from: units(from), to: units(to) })).toMatchObject({ kind });
    expect((await books()).workshop.runs[0]).toStrictEqual(run("c", "p", "2026-11-30", holds));
    if (kind !== "resized") expect(bytesOf(file())).toEqual(before);
  });

  test("what it was is told, to take it back", async () => {
    expect(await resizeRun({ run: "c", from: units(3), to: units(9) })).toStrictEqual({
      kind: "resized",
      run: run("c", "p", "2026-11-30", 9),
      was: 3n,
    });
  });
});

describe("planning a run", () => {
  const asked = (id: string, count = 7) => ({ id, product: "q", date: dates.Tue, units: units(count) });

  test.each([
    { says: "last in its day", run: asked("n"), before: null, kind: "planned", plan: "Mon a b c · Tue d e n" },
    { says: "before another", run: asked("n"), before: "d", kind: "planned", plan: "Mon a b c · Tue n d e" },
    {
      says: "before one of another day",
      run: asked("n"),
      before: "a",
      kind: "no such place",
      plan: "Mon a b c · Tue d e",
    },
    {
      says: "of no product",
      run: { ...asked("n"), product: "z" },
      before: null,
      kind: "no such product",
      plan: "Mon a b c · Tue d e",
    },
    {
      says: "under the id of one that was made",
      run: asked("f"),
      before: null,
      kind: "already made",
      plan: "Mon a b c · Tue d e",
    },
    {
      says: "under the id of another",
      run: asked("a"),
      before: null,
      kind: "planned otherwise",
      plan: "Mon a b c · Tue d e",
    },
  ])("$says", async ({ run: given, before, kind, plan: expected }) => {
    const bytes = bytesOf(file());
    expect(await planRun({ run: given, before })).toMatchObject({ kind });
    expect(await plan()).toBe(expected);
    if (kind !== "planned") expect(bytesOf(file())).toEqual(bytes);
  });

  test("sent twice it is one run; sent again with something else in it, it says what is there", async () => {
    expect(await planRun({ run: asked("n"), before: null })).toMatchObject({ kind: "planned", run: { units: 7n } });
    expect(await planRun({ run: asked("n"), before: null })).toMatchObject({ kind: "already planned" });
    expect(await planRun({ run: asked("n", 8), before: null })).toMatchObject({
      kind: "planned otherwise",
      now: { id: "n", units: 7n },
    });
    expect(await plan()).toBe("Mon a b c · Tue d e n");
  });

  test("twenty forms at once plan twenty runs", async () => {
    const ids = Array.from({ length: 20 }, (_, at) => `n${String(at)}`);
    await Promise.all([...ids, ...ids].map((id) => planRun({ run: asked(id), before: null })));
    expect(new Set((await books()).workshop.runs.map(({ id }) => id))).toEqual(
      new Set([...ids, "a", "b", "c", "d", "e"]),
    );
  });

  test("a run is kept as it was asked for, and nothing else that came with it", async () => {
    await planRun({
      run: { ...asked("n"), more: "of what a form may carry" } as ReturnType<typeof asked>,
      before: null,
    });
    expect((await books()).workshop.runs.at(-1)).toStrictEqual(run("n", "q", "2026-12-01", 7, { sequence: 7 }));
  });
});

describe("deleting a run", () => {
  const seen = (id: string, date: DayName, count: number) => ({
    id,
    product: "p",
    date: dates[date],
    units: units(count),
  });

  test.each([
    { says: "that is as it was seen", seen: seen("a", "Mon", 1), kind: "deleted", plan: "Mon b c · Tue d e" },
    { says: "that was resized meanwhile", seen: seen("a", "Mon", 2), kind: "stale", plan: "Mon a b c · Tue d e" },
    { says: "that was moved meanwhile", seen: seen("a", "Tue", 1), kind: "stale", plan: "Mon a b c · Tue d e" },
    { says: "that was made meanwhile", seen: seen("f", "Mon", 6), kind: "already made", plan: "Mon a b c · Tue d e" },
    { says: "a second time", seen: seen("z", "Mon", 6), kind: "no such run", plan: "Mon a b c · Tue d e" },
  ])("$says", async ({ seen: given, kind, plan: expected }) => {
    const bytes = bytesOf(file());
    expect(await deleteRun(given)).toMatchObject({ kind });
    expect(await plan()).toBe(expected);
    if (kind !== "deleted") expect(bytesOf(file())).toEqual(bytes);
  });

  test("what was deleted is told, so that it can be planned again in its place", async () => {
    const deleted = await deleteRun(seen("a", "Mon", 1));
    expect(deleted).toStrictEqual({ kind: "deleted", run: run("a", "p", "2026-11-30", 1), before: "b" });
    if (deleted.kind !== "deleted") throw new Error("it was not deleted");
    expect(await planRun({ run: deleted.run, before: deleted.before })).toMatchObject({ kind: "planned" });
    expect(await plan()).toBe("Mon a b c · Tue d e");
  });
});
