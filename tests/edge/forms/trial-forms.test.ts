/** How a trial's forms are read: grams and never percents, times with their unit. */
import { describe, expect, test } from "vitest";
import { readTimeAfter, timeAfterShown } from "@/lib/edge/forms/time-after";
import { readAims } from "@/lib/edge/forms/trial-aims";
import { readReading, readTrial } from "@/lib/edge/forms/trial-form";
import { formula, g } from "@/tests/helpers/notation";

const formOf = (fields: Readonly<Record<string, string>>): FormData => {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.append(name, value);
  return form;
};

const GOOD = {
  key: "t1",
  formula: "f",
  name: "6 %",
  day: "2026-11-25",
  "line.0.of": "material water",
  "line.0.weighed": "93.5",
  "line.0.phase": "A",
  "line.1.of": "material blend",
  "line.1.weighed": "0.006 kg",
  "line.1.phase": "",
  "line.2.of": "",
  "line.2.weighed": "",
};

test.each([
  ["", 0, "when made"],
  ["30 min", 30, "30 minutes"],
  ["1h", 60, "1 hour"],
  ["1.5 hours", 90, "90 minutes"],
  ["2 Days", 2880, "2 days"],
  ["1 week", 10_080, "1 week"],
])("%j after making is %i minutes", (typed, minutes, shown) => {
  expect(readTimeAfter(typed)).toEqual({ value: minutes });
  expect(timeAfterShown(minutes).replaceAll("\u00a0", " ")).toBe(shown);
});

test.each(["12", "1 fortnight", "h", "-1 h", "0.001 min", "99999 weeks", "1,5,0 h"])("%j is no time after", (typed) => {
  expect(readTimeAfter(typed)).toHaveProperty("fault");
});

describe("a trial", () => {
  test("is read as it was weighed, and comes off the shelf unless it is said otherwise", () => {
    const read = readTrial(formOf(GOOD));
    if (read === null || "faults" in read) throw new Error("it is good");
    expect(read.asked.fromShelf).toBe(true);
    expect(read.asked.trial.lines).toEqual([
      { of: { kind: "material", id: "water" }, weighed: g("93.5"), phase: "A" },
      { of: { kind: "material", id: "blend" }, weighed: g("6"), phase: null },
    ]);
    const alone = readTrial(formOf({ ...GOOD, shelf: "no" }));
    expect(alone).toMatchObject({ asked: { fromShelf: false } });
  });

  test.each([
    [{ "line.1.weighed": "6 %" }, "line.1.weighed", /percent; write the grams/],
    [{ "line.1.weighed": "1,5,0" }, "line.1.weighed", /./],
    [{ "line.1.weighed": "-3" }, "line.1.weighed", /./],
    [{ "line.2.weighed": "3" }, "line.2.of", /choose what was weighed/],
    [{ "line.0.weighed": "", "line.1.weighed": "0" }, "line.0.weighed", /at least one line/],
    [{ name: " " }, "name", /is needed/],
    [{ day: "30 Feb 2026" }, "day", /./],
    [{ ph: "15" }, "ph", /14/],
    [{ viscosity: "12,000.5" }, "viscosity", /digits in groups/],
    [{ viscosity: "thick" }, "viscosity", /./],
    [{ after: "tomorrow", ph: "5" }, "after", /with its unit/],
  ])("%j is refused at its field", (given, field, says) => {
    const read = readTrial(formOf({ ...GOOD, ...given }));
    if (read === null || !("faults" in read)) throw new Error("it is wrong");
    expect(read.faults[field]).toMatch(says);
  });

  test("that does not say what it is of is not read", () => {
    expect(readTrial(formOf({ ...GOOD, formula: "" }))).toBeNull();
  });

  test("a reading in which nothing is written is none", () => {
    expect(readReading(formOf({ after: "1 day" }))).toEqual({ asked: null });
    expect(readReading(formOf({ after: "1 day", viscosity: "12000.5" }))).toMatchObject({
      asked: { afterMinutes: 1440, viscosity: "12000.5" },
    });
  });
});

describe("what to weigh for a trial", () => {
  const aims = (
    typed: Partial<Parameters<typeof readAims>[1]>,
    of = formula("f", { water: "qs", blend: "6", scent: "1" }),
  ) => {
    const read = readAims(of, { size: "", line: "", percent: "", ...typed });
    return read.kind === "aims" ? read.aims.map(({ over, under }) => over / under) : read.field;
  };

  test("is the formula for 100 g, or what is asked", () => {
    expect(aims({})).toEqual([g("93"), g("6"), g("1")]);
    expect(aims({ size: "50 g" })).toEqual([g("46.5"), g("3"), g("0.5")]);
  });

  test("varied, what takes the rest gives way; without it the others do in proportion", () => {
    expect(aims({ line: "1", percent: "7" })).toEqual([g("92"), g("7"), g("1")]);
    expect(aims({ line: "1", percent: "20" }, formula("f", { oil: "80", wax: "10", scent: "10" }))).toEqual([
      71_111_111n,
      g("20"),
      8_888_888n,
    ]);
  });

  test.each([
    [{ size: "none" }, "size"],
    [{ size: "0" }, "size"],
    [{ line: "1", percent: "99.5" }, "percent"],
    [{ line: "1", percent: "100" }, "percent"],
    [{ line: "1", percent: "0" }, "percent"],
  ])("%j is refused", (typed, field) => {
    expect(aims(typed)).toBe(field);
  });
});
