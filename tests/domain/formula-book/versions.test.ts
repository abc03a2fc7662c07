/** Versions of a formula: frozen by a batch, kept as they were, warnings accepted in one. Formulas are invented. */
import { describe, expect, test } from "vitest";
import { type Books, emptyDesk } from "@/lib/domain/desk";
import { acceptWarning, errorsOf, warningsOf } from "@/lib/domain/formula-book/accepted-warnings";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { type Finding, findingKey } from "@/lib/domain/formula-book/findings";
import { versionChanges } from "@/lib/domain/formula-book/version-changes";
import {
  deskAfterChange,
  isFrozen,
  standingVersion,
  versionsOf,
  versionsUsed,
} from "@/lib/domain/formula-book/versions";
import { type Micrograms, quantity, type Units } from "@/lib/domain/quantity";
import type { Formula } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import { day, decimal, formula, material, percent, product, run } from "@/tests/helpers/notation";

const today = day("2026-11-25");
const cream = formula("cream", { water: "qs", oil: "20", "=base": "5" });
const base = formula("base", { oil: "50", wax: "50" });
const thicker: Formula = {
  ...cream,
  lines: cream.lines.map((line) => (line.of.id === "oil" ? { ...line, percent: percent("25") } : line)),
};

const madeBy = (...numbers: readonly (readonly [string, number])[]) => ({
  run: run(`made ${String(numbers[0])}`, "p", "2026-11-20", 5),
  madeOn: day("2026-11-21"),
  unitsMade: quantity<Units>(5n),
  versions: numbers.map(([id, number]) => ({ formula: id, number })),
});

const booksOf = (): Books => ({
  workshop: workshopOf({
    materials: [material("water", { role: "water" }), material("oil"), material("wax")],
    formulas: [cream, base],
    products: [product("p", "cream")],
  }),
  desk: emptyDesk,
});

const told = { today, why: "Thicker.", asNext: false };

describe("versions of a formula", () => {
  test("[VERSION-1] a formula of which nothing is said has its first version, which stands", () => {
    expect(versionsOf(emptyDesk, cream)).toMatchObject([{ number: 1, stands: true, since: null, as: cream }]);
  });

  test("[VERSION-2] one that no batch has used is changed where it stands, and keeps why", () => {
    const desk = deskAfterChange(emptyDesk, cream, thicker, told);
    expect(versionsOf(desk, thicker)).toMatchObject([{ number: 1, why: "Thicker.", since: today, as: thicker }]);
  });

  test("[VERSION-2] what is changed in a frozen one becomes the next, and the frozen one stays as it was", () => {
    const desk = { ...emptyDesk, closedRuns: [madeBy(["cream", 1], ["base", 1])] };
    expect(isFrozen(standingVersion(desk, cream))).toBe(true);
    const after = deskAfterChange(desk, cream, thicker, told);
    expect(versionsOf(after, thicker)).toMatchObject([
      { number: 1, stands: false, as: cream, usedBy: ["made cream,1"] },
      { number: 2, stands: true, as: thicker, since: today, why: "Thicker.", usedBy: [] },
    ]);
    expect(isFrozen(standingVersion(after, thicker))).toBe(false);
    expect(isFrozen(standingVersion(after, base)), "a premix is frozen with it").toBe(true);
  });

  test("[VERSION-2] a run that is taken back freezes nothing any more", () => {
    expect(isFrozen(standingVersion({ ...emptyDesk, closedRuns: [] }, cream))).toBe(false);
  });

  test("[VERSION-2] the maker begins the next one of a version that nobody has used", () => {
    const desk = deskAfterChange(emptyDesk, cream, thicker, { ...told, asNext: true });
    expect(versionsOf(desk, thicker).map(({ number }) => number)).toEqual([1, 2]);
  });

  test("[VERSION-3] another name alone is no other version", () => {
    const desk = { ...emptyDesk, closedRuns: [madeBy(["cream", 1])] };
    expect(versionsOf(deskAfterChange(desk, cream, { ...cream, name: "Cold cream" }, told), cream)).toHaveLength(1);
  });

  test("[VERSION-1] what is otherwise is worked out from both", () => {
    const after: Formula = {
      ...thicker,
      phFrom: decimal("4.5"),
      phases: [{ name: "A", temperature: decimal("70") }],
      lines: [
        ...thicker.lines.filter(({ of }) => of.id !== "base"),
        { of: { kind: "material", id: "wax" }, percent: percent("3"), phase: "A" },
      ],
    };
    expect(versionChanges(cream, after)).toEqual([
      { kind: "taken out", line: cream.lines[2] },
      { kind: "percent", of: { kind: "material", id: "oil" }, before: percent("20"), after: percent("25") },
      { kind: "put in", line: after.lines[2] },
      { kind: "temperature", phase: "A", before: null, after: "70" },
      { kind: "fact", fact: "phFrom", before: null, after: "4.5" },
    ]);
    expect(versionChanges(cream, cream)).toEqual([]);
    expect(versionChanges(cream, { ...cream, lines: cream.lines.toReversed() })).toEqual([{ kind: "order of lines" }]);
  });

  test("[VERSION-2] a batch is made by the version that stands of its formula and of each premix in it", () => {
    const books = booksOf();
    expect(versionsUsed(books, "cream")).toEqual([
      { formula: "cream", number: 1 },
      { formula: "base", number: 1 },
    ]);
  });
});

describe("warnings that are accepted", () => {
  const checkedIn = ({ workshop }: Books) => ({
    ...workshop,
    today,
    step: quantity<Micrograms>(100_000n),
    batch: null,
  });
  const warning = (books: Books) => {
    const [found] = warningsOf(checksOf(cream, checkedIn(books)));
    if (found === undefined) throw new Error("water without a preservative is a warning");
    return findingKey(found);
  };

  test("[VERSION-4] are kept with the version that stands, with their reason, once", () => {
    const books = booksOf();
    const asked = {
      formula: "cream",
      key: warning(books),
      wordsOf: ({ code }: Finding) => code,
      reason: "Used the same day",
    };
    const first = acceptWarning(books, asked, checkedIn(books));
    if (first.kind !== "accepted") throw new Error(first.kind);
    const kept = standingVersion(first.books.desk, cream).accepted;
    expect(kept).toEqual([{ key: asked.key, says: "water and no preservative", reason: asked.reason, on: today }]);
    expect(acceptWarning(first.books, asked, checkedIn(books)).kind).toBe("already accepted");
    const next = deskAfterChange(first.books.desk, cream, thicker, { ...told, asNext: true });
    expect(
      versionsOf(next, thicker).map(({ accepted }) => accepted.length),
      "the next begins with none",
    ).toEqual([1, 0]);
  });

  test("[VERSION-4] [CHECK-8] one that is not found, or not with these figures, is not accepted", () => {
    const books = booksOf();
    const asked = { formula: "cream", wordsOf: () => "-", reason: "-" };
    expect(acceptWarning(books, { ...asked, key: "[]" }, checkedIn(books)).kind).toBe("not found any more");
    expect(acceptWarning(books, { ...asked, formula: "gone", key: warning(books) }, checkedIn(books)).kind).toBe(
      "no such formula",
    );
  });

  test("[VERSION-5] errors are no warnings: they stop a run", () => {
    const hot: Formula = {
      ...cream,
      phases: [{ name: "A", temperature: decimal("80") }],
      lines: cream.lines.map((line) => ({ ...line, phase: "A" })),
    };
    const { workshop } = booksOf();
    const materials = workshop.materials.map((one) => (one.id === "oil" ? { ...one, addBelow: decimal("40") } : one));
    const findings = checksOf(hot, { ...checkedIn({ workshop, desk: emptyDesk }), materials });
    expect(errorsOf(findings).map(({ code }) => code)).toContain("too hot for it");
    expect(warningsOf(findings).map(({ code }) => code)).not.toContain("too hot for it");
  });
});
