import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { planned } from "@/tests/agreement/agreement";
import { percent } from "@/tests/helpers/notation";
import { workshops } from "@/tests/helpers/random-workshop";

const draft = (...percents: readonly string[]): Pick<Formula, "lines"> => ({
  lines: percents.map((share, at): FormulaLine => ({
    of: { kind: "material", id: `m${String(at)}` },
    percent: share === "qs" ? "qs" : percent(share),
    phase: null,
  })),
});

describe("what the lines of a formula come to", () => {
  test.each([
    { lines: ["60", "40"], written: "100", result: { kind: "whole" } },
    { lines: ["60", "39.9999"], written: "99.9999", result: { kind: "short", by: 1n } },
    { lines: ["60", "40", "1"], written: "101", result: { kind: "over", by: 10_000n } },
    { lines: ["7", "1", "qs", "91"], written: "99", result: { kind: "qs takes the rest", line: 2, rest: 10_000n } },
    { lines: ["qs"], written: "0", result: { kind: "qs takes the rest", line: 0, rest: 1_000_000n } },
    { lines: ["100", "qs"], written: "100", result: { kind: "nothing left for qs", line: 1, over: 0n } },
    { lines: ["qs", "70", "50"], written: "120", result: { kind: "nothing left for qs", line: 0, over: 200_000n } },
    { lines: ["qs", "30", "qs"], written: "30", result: { kind: "several qs", lines: [0, 2] } },
    { lines: [], written: "0", result: { kind: "no lines" } },
  ])("[BOOK-3, FORMULA-1] $lines: $result.kind", ({ lines, written, result }) => {
    expect(formulaTotal(draft(...lines))).toEqual({ written: percent(written), result });
  });

  // Common practice, no source: an emulsifier blend at 7 %, a preservative at 1 % and water at 91 % leave 1 % for scent.
  test("[BOOK-3] water 91, emulsifier 7 and preservative 1 leave 1 % for scent", () => {
    const total = formulaTotal(draft("91", "7", "1", "qs"));
    expect([total.result, addsUp(total)]).toEqual([{ kind: "qs takes the rest", line: 3, rest: percent("1") }, true]);
  });

  test("[BOOK-3, FORMULA-1] every formula of a workshop adds up, and with a line taken out or doubled none without qs does", () => {
    fc.assert(
      fc.property(workshops("small"), fc.nat(), (file, seed) => {
        for (const formula of planned(file).workshop.formulas) {
          expect(addsUp(formulaTotal(formula))).toBe(true);
          const at = seed % formula.lines.length;
          const line = formula.lines[at];
          if (!line || formula.lines.some((each) => each.percent === "qs")) continue;
          const share = quantity<PartsPerMillion>(line.percent === "qs" ? 0n : line.percent);
          const without = { ...formula, lines: formula.lines.toSpliced(at, 1) };
          const doubled = { ...formula, lines: [...formula.lines, line] };
          expect(formulaTotal(without).result).toEqual(
            without.lines.length === 0 ? { kind: "no lines" } : { kind: "short", by: share },
          );
          expect(formulaTotal(doubled).result).toEqual({ kind: "over", by: share });
        }
      }),
      { seed: 64, numRuns: 60 },
    );
  });
});
