import { describe, expect, test } from "vitest";
import { whatIsMissing } from "@/lib/domain/label/asked-by-market";
import { durabilityOf, monthsAfter } from "@/lib/domain/label/durability";
import { codeContent, fitsGs1, gs1Date, isGtin } from "@/lib/domain/label/gs1";
import { LABEL_MARKETS, type Label } from "@/lib/domain/label/label";
import { labelDraft, type LabelSubject } from "@/lib/domain/label/label-draft";
import { labelNotes } from "@/lib/domain/label/label-notes";
import { netContent } from "@/lib/domain/label/net-content";
import type { Unit } from "@/lib/domain/quantity";
import { isoDate } from "@/lib/domain/calendar";
import { day, decimal, grams, label, percent } from "@/tests/helpers/notation";

const NOTHING_TYPED = label("l", "p");
const ALL_TYPED: Label = {
  ...NOTHING_TYPED,
  title: "Hand balm",
  function: "Hand cream",
  cautions: "Keep out of eyes.",
  responsible: "An invented maker",
  address: "1 Lane, Town",
  contact: "hello@maker.example",
};

const subject = (given: Partial<LabelSubject> = {}): LabelSubject => ({
  label: ALL_TYPED,
  product: { name: "Balm", fill: grams("50") },
  formula: { use: "leave-on", phFrom: decimal("5"), phTo: decimal("5.5"), keepsDays: 365 },
  added: [
    {
      id: "w",
      name: "Water",
      composition: [{ inci: "Aqua", share: percent("100") }],
      fraction: { over: 1n, under: 1n },
    },
  ],
  batch: { code: "B-1", madeOn: day("2026-11-28"), bestBefore: null, ph: null },
  today: day("2026-11-28"),
  ...given,
});

describe("content", () => {
  test.each<readonly [string, Unit, string, string, string]>([
    ["100", "g", "100 g", "3.52 oz", ""],
    ["50.0", "g", "50.0 g", "1.76 oz", ""],
    ["453.59237", "g", "453.59237 g", "16 oz", "1 lb"],
    ["1", "kg", "1 kg", "35.2 oz", "2.2 lb"],
    ["2", "kg", "2 kg", "4.4 lb", ""],
    ["16", "oz", "453 g", "16 oz", "1 lb"],
    ["48", "oz", "1.36 kg", "48 oz", "3 lb"],
    ["250", "mL", "250 mL", "8.45 fl oz", ""],
    ["8", "floz-us", "236 mL", "8 fl oz", ""],
    ["16", "floz-us", "473 mL", "16 fl oz", "1 pt"],
    ["1", "L", "1 L", "33.8 fl oz", "1.05 qt"],
    ["4", "L", "4 L", "1.05 gal", ""],
    ["0.2", "g", "0.2 g", "0 oz", ""],
  ])("[LABEL-4] %s %s is %s, in the United States %s %s", (number, unit, metric, customary, larger) => {
    const said = (each: { readonly number: string; readonly unit: string } | null) =>
      each === null ? "" : `${each.number} ${each.unit}`;
    const us = netContent({ number: decimal(number), unit }, "US");
    expect([said(us.metric), said(us.customary), said(us.larger)]).toEqual([metric, customary, larger]);
    expect(netContent({ number: decimal(number), unit }, "EU")).toEqual({ ...us, customary: null, larger: null });
  });
});

describe("how long it keeps", () => {
  test.each([
    ["2026-11-28", 30, "2029-05-28"],
    ["2026-08-31", 30, "2029-02-28"],
    ["2025-08-31", 30, "2028-02-29"],
    ["2026-12-31", 0, "2026-12-31"],
    ["2026-12-31", 1, "2027-01-31"],
    ["2026-11-30", 1, "2026-12-30"],
  ])("[LABEL-5] %s and %d months is %s", (from, months, to) => {
    expect(isoDate(monthsAfter(day(from), months))).toBe(to);
  });

  test("[LABEL-5] up to 30 months the day is on the label, a day more and the months after opening are", () => {
    const made = day("2026-11-28");
    expect(durabilityOf(made, day("2029-05-28"), 12)).toEqual({ kind: "best before", day: day("2029-05-28") });
    expect(durabilityOf(made, day("2029-05-29"), 12)).toEqual({ kind: "after opening", months: 12 });
    expect(durabilityOf(made, null, 12)).toEqual({ kind: "not known" });
  });

  test("[LABEL-5] without a batch the formula's days count from today, with one from the day it was made", () => {
    const formula = { ...subject().formula, keepsDays: 10 };
    expect(labelDraft(subject({ formula, batch: null })).bestBefore).toBe(day("2026-12-08"));
    const batch = { code: "B", madeOn: day("2026-11-01"), bestBefore: null, ph: null };
    expect(labelDraft(subject({ formula, batch })).bestBefore).toBe(day("2026-11-11"));
    expect(labelDraft(subject({ formula, batch: { ...batch, bestBefore: day("2027-01-01") } })).bestBefore).toBe(
      day("2027-01-01"),
    );
  });
});

describe("what is missing", () => {
  const sayings = (given: Partial<LabelSubject>): readonly string[] =>
    whatIsMissing(labelDraft(subject(given))).missing.map(({ says }) => says);

  test.each(LABEL_MARKETS)("[LABEL-6] nothing of a label that says it all, in %s", (market) => {
    expect(sayings({ label: { ...ALL_TYPED, market } })).toEqual([]);
  });

  test.each([
    ["EU", 6],
    ["GB", 6],
    ["US", 4],
  ] as const)("[LABEL-6] of one that says nothing, in %s: %d points", (market, points) => {
    const bare = {
      label: { ...NOTHING_TYPED, market },
      formula: { use: null, phFrom: null, phTo: null, keepsDays: null },
      added: [{ id: "w", name: "Water", composition: [], fraction: { over: 1n, under: 1n } }],
      batch: null,
    };
    expect(sayings(bare)).toHaveLength(points);
  });

  test("[LABEL-6] a product that keeps long wants the months after opening instead of the day", () => {
    const formula = { ...subject().formula, keepsDays: 1000 };
    expect(sayings({ formula })).toEqual([expect.stringContaining("months after opening")]);
    expect(sayings({ formula, label: { ...ALL_TYPED, monthsOpen: 12 } })).toEqual([]);
  });

  test.each(LABEL_MARKETS)(
    "[LABEL-6] every point of %s has its source, and something is always left to judge",
    (market) => {
      const { toJudge } = whatIsMissing(labelDraft(subject({ label: { ...NOTHING_TYPED, market } })));
      expect(toJudge.length).toBeGreaterThan(1);
      for (const { source } of toJudge) expect(source.law).toMatch(market === "US" ? /CFR|Act/ : /1223|2013|Annex III/);
    },
  );
});

describe("the code", () => {
  const best = day("2027-11-30");

  test("[LABEL-7] the batch alone, or with the number and the day", () => {
    expect(codeContent("B-1", best, null)).toEqual({ text: "B-1", isGs1: false });
    expect(codeContent("B-1", best, "6291041500213")).toEqual({
      text: "(01)06291041500213(15)271130(10)B-1",
      isGs1: true,
    });
    expect(codeContent("B-1", null, "6291041500213").text).toBe("(01)06291041500213(10)B-1");
  });

  test("[LABEL-7] a batch code that GS1 cannot carry stands alone", () => {
    expect(["B 1", "é", "x".repeat(21), "(1)", ""].map(fitsGs1)).toEqual([false, false, false, false, false]);
    expect(codeContent("B 1", best, "6291041500213")).toEqual({ text: "B 1", isGs1: false });
  });

  test("[LABEL-7] days as YYMMDD", () => {
    expect([gs1Date(best), gs1Date(day("2000-01-02"))]).toEqual(["271130", "000102"]);
  });

  test.each(["6291041500214", "629104150021", "62910415002131", "", "629104150021x", "６２９１０４１５００２１３"])(
    "[LABEL-7] %s is no number of GS1",
    (typed) => {
      expect(isGtin(typed)).toBe(false);
    },
  );
});

describe("what the maker wants besides", () => {
  test("[LABEL-8] pH and day where wanted; what was measured before what was aimed at", () => {
    const wanted = { ...ALL_TYPED, showsPh: true, showsMade: true };
    const draft = labelDraft(subject({ label: wanted }));
    expect([draft.ph, draft.made]).toEqual([{ from: "5", to: "5.5" }, day("2026-11-28")]);
    const batch = { code: "B", madeOn: day("2026-11-28"), bestBefore: null, ph: decimal("5.2") };
    expect(labelDraft(subject({ label: wanted, batch })).ph).toEqual({ from: "5.2", to: "5.2" });
    const unknown = { ...subject().formula, phFrom: null, phTo: null };
    expect(labelDraft(subject({ label: wanted, formula: unknown })).ph).toBeNull();
  });

  test("[LABEL-8] notes for the shower and the pump", () => {
    const thin = { name: "Rinse", fill: { ...grams("250"), typed: { number: decimal("250"), unit: "mL" as const } } };
    const notes = labelNotes(
      labelDraft(subject({ product: thin, formula: { ...subject().formula, use: "rinse-off" } })),
    );
    expect(notes.join(" ")).toMatch(/glass.*pump/s);
    expect(labelNotes(labelDraft(subject())).join(" ")).not.toMatch(/glass|pump|batch code/);
  });

  test.each([
    ["EU", false],
    ["GB", false],
    ["US", true],
  ] as const)("[LABEL-8] a batch code is common practice where the law does not ask for it: %s, %s", (market, told) => {
    const draft = labelDraft(subject({ label: { ...ALL_TYPED, market }, batch: null }));
    expect(labelNotes(draft).join(" ").includes("batch code")).toBe(told);
    expect(whatIsMissing(draft).missing.some(({ says }) => says.includes("batch code"))).toBe(!told);
  });

  test.each([
    ["EU", true],
    ["GB", true],
    ["US", false],
  ] as const)("[LABEL-6] the words before the day are for the maker to judge: %s, %s", (market, told) => {
    const { toJudge } = whatIsMissing(labelDraft(subject({ label: { ...ALL_TYPED, market } })));
    expect(toJudge.some(({ says }) => says.includes("best used before the end of"))).toBe(told);
  });
});
