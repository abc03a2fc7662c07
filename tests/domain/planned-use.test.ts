import { expect, test } from "vitest";
import { plannedUse } from "@/lib/domain/buying/planned-use";
import { plan } from "@/lib/domain/plan";
import { day, formula, g, material, product, run, settings } from "../helpers/notation";
import { bareWorkshop } from "../helpers/store-workshop";

/** Four weeks from Wednesday 25 November, today's included: 28 days. Each unit takes 100 g. */
const planned = (...runs: readonly ReturnType<typeof run>[]) =>
  plan(
    bareWorkshop("Use", {
      settings: { ...settings(), horizonDays: 27 },
      materials: [material("A"), material("B")],
      formulas: [formula("f", { A: "100" })],
      products: [product("p", "f")],
      runs,
    }),
    day("2026-11-25"),
  );

test("[BUY-14] the mean is over every day, and the deviation of a day that of a week ÷ √7", () => {
  // 200, 400, 0 and 0 g in the four weeks: 600 g ÷ 28 days; the weeks' sample variance is
  // ((200−150)² + (400−150)² + 2 × 150²) ÷ 3 = 36,666.67 g², of a day 5,238.095 g², deviation 72.3747 g
  const use = plannedUse(planned(run("a", "p", "2026-11-25", 2), run("b", "p", "2026-12-02", 4)), "A");
  expect(use?.byWeek).toEqual([g("200"), g("400"), 0n, 0n]);
  expect([use?.used, use?.days]).toEqual([g("600"), 28]);
  expect(use && Number(use.mean.over) / Number(use.mean.under)).toBeCloseTo(Number(g("600")) / 28, 3);
  expect(Number(use?.deviation) / 1e6).toBeCloseTo(72.3747, 3);
});

test("[BUY-14] what no run within the horizon uses has no use", () => {
  expect(plannedUse(planned(run("a", "p", "2027-11-25", 2)), "A")).toBeNull();
  expect(plannedUse(planned(run("a", "p", "2026-11-25", 2)), "B")).toBeNull();
});

test("[BUY-14] of a single week there is no deviation, and equal weeks deviate by nothing", () => {
  const weekly = ["2026-11-25", "2026-12-02", "2026-12-09", "2026-12-16"].map((on, at) =>
    run(`r${String(at)}`, "p", on, 3),
  );
  expect(plannedUse(planned(...weekly), "A")?.deviation).toBe(0n);
});
