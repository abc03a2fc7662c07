/** What the bench draws from plain data: the sheet by its phases, the runs to be started, and who writes. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { BenchListFinding } from "@/app/bench/_parts/bench-list-finding";
import { ToStart } from "@/app/bench/_parts/to-start";
import type { Notes } from "@/app/bench/_parts/use-notes";
import { WhoWrites } from "@/app/bench/_parts/who-writes";
import { benchOnPage } from "@/app/bench/bench-on-page";
import { paperPhases } from "@/app/bench/paper-sheet";
import type { Batch, Instant } from "@/lib/domain/bench/batch";
import { sheetFor } from "@/lib/domain/bench/sheet";
import { plan, preparedFor } from "@/lib/domain/plan";
import type { Step } from "@/lib/domain/formula-book/facts";
import { TODAY } from "../helpers/ledger-shop";
import { decimal, formula, material, product, run } from "../helpers/notation";
import { booksOf } from "../helpers/store-desk";
import { bareWorkshop } from "../helpers/store-workshop";

const step = (phase: string | null, text: string, celsius: string | null = null): Step => ({
  text,
  phase,
  temperature: celsius === null ? null : decimal(celsius),
  minutes: null,
  caution: null,
});

/** Lines of phase A stand on both sides of one of phase B; phase C has a step and no line. */
function parted(units: number) {
  const plain = formula("f", { oil: "50", wax: "30", scent: "20" });
  const phases = ["A", "B", "A"];
  const workshop = bareWorkshop("Shop", {
    materials: [material("oil"), material("wax"), material("scent")],
    formulas: [
      {
        ...plain,
        phases: [
          { name: "A", temperature: null },
          { name: "B", temperature: decimal("40") },
        ],
        lines: plain.lines.map((line, at) => ({ ...line, phase: phases[at] ?? null })),
        steps: [step("A", "Melt it.", "75"), step("B", "Stir it in."), step("C", "Pour.")],
      },
    ],
    products: [product("p", "f")],
  });
  const planned = run("r", "p", "2026-11-25", units);
  const batch: Batch = {
    run: planned,
    code: "B-1",
    startedOn: TODAY,
    startedAt: "2026-11-25T09:30:00Z" as Instant,
    startedBy: "R. Weaver",
    despite: null,
    as: null,
    versions: [],
    lines: sheetFor(workshop, planned, TODAY),
    notes: [],
    labels: [],
  };
  return { ...booksOf(workshop), today: TODAY, batch };
}

const said = (sections: readonly { readonly title: string; readonly steps: readonly { readonly text: string }[] }[]) =>
  sections.map(({ title, steps }) => [title, ...steps.map(({ text }) => text)].join(": "));

test("[BENCH-1] a phase that lines of another part has its steps once, on the screen and on paper", () => {
  const found = parted(10);
  const once = ["Phase A: Melt it.", "Phase B: Stir it in.", "Phase A"];
  const view = benchOnPage(found);
  expect(said(view.sections)).toEqual(once);
  expect(said(paperPhases(found))).toEqual(once);
  expect(view.sections.map(({ celsius }) => celsius)).toEqual([null, "40", null]);
  expect(paperPhases(found).map(({ isHeated }) => isHeated)).toEqual([true, true, false]);
  expect(view.steps.map(({ text }) => text)).toEqual(["Pour."]);
});

test("one unit is said as one", () => {
  expect(benchOnPage(parted(1)).expected).toMatch(/^1.unit, 100.g of 100.g/);
});

const words = (html: string): string => html.replaceAll(/<[^>]*>/g, "").replaceAll(/[\s\u00a0]+/g, " ");

test("all runs are counted where only the first of them are drawn", () => {
  const workshop = bareWorkshop("Shop", {
    materials: [material("oil")],
    formulas: [formula("f", { oil: "100" })],
    products: [product("p", "f")],
    runs: Array.from({ length: 23 }, (_, at) => run(`r${String(at)}`, "p", "2026-11-24", 10, { sequence: at })),
  });
  const { runs } = plan(workshop, TODAY, preparedFor(workshop, TODAY));
  const list = renderToStaticMarkup(createElement(ToStart, { runs, today: TODAY, isFirst: true }));
  expect(list.match(/<li /g)).toHaveLength(20);
  expect(words(list)).toContain("Three more are planned after these");
  const finding = createElement(BenchListFinding, { toStart: runs, open: [], held: [], today: TODAY });
  expect(words(renderToStaticMarkup(finding))).toContain("23 runs are late");
});

test("where nobody is named, the field stands open with what is wrong under it", () => {
  const drawn = (who: string): string =>
    renderToStaticMarkup(createElement(WhoWrites, { notes: { who, when: "" } as Notes }));
  expect(drawn("")).toMatch(/<details [^>]*open=""/);
  expect(drawn("")).toMatch(/id="bench-who"[^>]*aria-describedby="bench-who-fault"/);
  expect(words(drawn(""))).toContain("Write your name: nothing is written down without it");
  expect(drawn("R. Weaver")).not.toMatch(/open=""|bench-who-fault/);
});
