import { beforeEach, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import { quantity, type Units } from "@/lib/domain/quantity";
import { planRunOfSize } from "@/lib/operations/plan-run-of-size";
import { resizeRunToSize } from "@/lib/operations/resize-run-to-size";
import { readBooks } from "@/lib/store/books";
import { day, formula, g, lot, material, product, run } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";
import { bareWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();
auditAfterEachTest(file);

const units = (count: number): Units => quantity(BigInt(count));

/** A unit of p holds 100 g. */
const week = (): Books =>
  booksOf(
    bareWorkshop("Week", {
      materials: [material("m")],
      lots: [lot("L", "m", "100", "1")],
      formulas: [formula("f", { m: "100" })],
      products: [product("p", "f")],
      runs: [run("a", "p", "2026-11-30", 3)],
    }),
  );
beforeEach(() => openBooks(week()));

const runs = async (): Promise<readonly string[]> =>
  ((await readBooks()) ?? week()).workshop.runs.map(({ id, units: count }) => `${id} ${count.toString()}`);

const asked = { run: { id: "new", product: "p", date: day("2026-12-01") }, before: null };

test("[NEED-1] a run planned by what the vessel holds is planned in whole units, and sent twice is one run", async () => {
  const byWeight = { ...asked, size: { kind: "vessel", mass: g("399.9") } as const };
  expect(await planRunOfSize(byWeight)).toMatchObject({ kind: "planned", run: { units: 3n } });
  expect(await planRunOfSize(byWeight)).toMatchObject({ kind: "already planned" });
  expect(await runs()).toEqual(["a 3", "new 3"]);
});

test("[NEED-1] a run is resized by weight or by units, from the size that was seen", async () => {
  const resize = { run: "a", from: units(3) };
  expect(await resizeRunToSize({ ...resize, size: { kind: "vessel", mass: g("1200") } })).toMatchObject({
    kind: "resized",
    was: 3n,
    run: { units: 12n },
  });
  expect(await resizeRunToSize({ ...resize, size: { kind: "units", units: units(5) } })).toMatchObject({
    kind: "stale",
  });
  expect(await runs()).toEqual(["a 12"]);
});

test("[QTY-6] what fills no unit, is more than can be kept, or is of nothing that is there, changes nothing", async () => {
  const before = bytesOf(file());
  const little = { kind: "vessel", mass: g("99.999999") } as const;
  expect(await planRunOfSize({ ...asked, size: little })).toEqual({ kind: "fills none" });
  const many = { kind: "units", units: units(90_071_993) } as const;
  expect(await planRunOfSize({ ...asked, size: many })).toEqual({ kind: "too many" });
  expect(await resizeRunToSize({ run: "a", from: units(3), size: many })).toEqual({ kind: "too many" });
  expect(await planRunOfSize({ run: { ...asked.run, product: "none" }, before: null, size: little })).toEqual({
    kind: "no such product",
  });
  expect(await resizeRunToSize({ run: "a", from: units(3), size: little })).toEqual({ kind: "fills none" });
  expect(await resizeRunToSize({ run: "none", from: units(3), size: little })).toEqual({ kind: "no such run" });
  expect(bytesOf(file())).toEqual(before);
});
