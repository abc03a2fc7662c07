import { describe, expect, test } from "vitest";
import { changedFile, faultsOf } from "../bad-files/bench-workshop";

/** A formula of equal parts of these premixes, or of oil where there is none. */
function formula(id: string, premixes: readonly string[]) {
  if (premixes.length === 0) return { id, name: id, lines: [{ material: "oil", percent: "100" }] };
  const lines = premixes.map((premix) => ({ formula: premix, percent: String(Math.floor(60 / premixes.length)) }));
  return { id, name: id, lines: [...lines, { material: "oil", percent: "qs" }] };
}

/** The bench with these formulas beside its own; no product uses them. */
const withFormulas = (premixesById: Readonly<Record<string, readonly string[]>>): readonly string[] =>
  faultsOf(
    changedFile(
      Object.fromEntries(
        Object.entries(premixesById).map(([id, premixes], at) => [
          `formulas[${String(at + 2)}]`,
          formula(id, premixes),
        ]),
      ),
    ),
  );

const chain = (length: number): Record<string, readonly string[]> =>
  Object.fromEntries(
    Array.from({ length }, (_, at) => [`f${String(at)}`, at + 1 < length ? [`f${String(at + 1)}`] : []]),
  );

describe("[FORMULA-2] chains", () => {
  test("eight premixes below a formula", () => {
    expect(withFormulas(chain(9))).toEqual([]);
  });

  test("nine, though no product uses it", () => {
    expect(withFormulas(chain(10))).toEqual([
      'formulas[2]: 9 premixes below formula "f0" (f0); at most 8 may be: f0 > f1 > f2 > f3 > f4 > f5 > f6 > f7 > f8 > f9',
    ]);
  });

  test("only the top of a chain is told", () => {
    expect(withFormulas(chain(13))).toHaveLength(1);
  });

  test("the longest way down counts, whatever the order of the lines", () => {
    const faults = withFormulas({ ...chain(9), top: ["f8", "f0", "f5"] });
    expect(faults).toEqual([expect.stringContaining("formulas[11]: 9 premixes below")]);
  });

  test("two tops of one chain are two faults", () => {
    expect(withFormulas({ ...chain(9), one: ["f0"], two: ["f0"] })).toHaveLength(2);
  });

  test("the same premix twice in a formula", () => {
    expect(withFormulas({ one: ["two", "two"], two: [] })).toEqual([]);
  });
});

describe("[FORMULA-2] cycles", () => {
  test("of three, with the way round it", () => {
    expect(withFormulas({ a: ["b"], b: ["c"], c: ["a"] })).toEqual([
      "formulas[2]: cycle: a > b > c > a; take one of these premixes out",
    ]);
  });

  test("a formula above a cycle is not told as well", () => {
    expect(withFormulas({ top: ["a"], a: ["b"], b: ["a"] })).toEqual([
      "formulas[3]: cycle: a > b > a; take one of these premixes out",
    ]);
  });

  test("two cycles through one formula", () => {
    expect(withFormulas({ a: ["b", "c"], b: ["a"], c: ["a"] })).toEqual([
      "formulas[2]: cycle: a > b > a; take one of these premixes out",
      "formulas[2]: cycle: a > c > a; take one of these premixes out",
    ]);
  });

  test("a cycle and, elsewhere, a chain that is too deep", () => {
    expect(withFormulas({ ...chain(10), a: ["a"] })).toHaveLength(2);
  });

  test("the way round a very long one is shortened", () => {
    const [line, ...more] = withFormulas({ ...chain(1000), f999: ["f0"] });
    expect(more).toEqual([]);
    expect(line).toContain("f9 > … 981 more … > f991");
  });
});

describe("[FORMULA-2] many formulas", () => {
  test("a hundred thousand in one chain", () => {
    expect(withFormulas(chain(100_000))).toEqual([expect.stringMatching(/^formulas\[2\]: 99999 premixes below/)]);
  });

  test("in a ladder with two ways down from each of 5000 rungs, 2^5000 in all", () => {
    const RUNGS = 5000;
    const rungs = Object.fromEntries(
      Array.from({ length: RUNGS }, (_, at) => at).flatMap((at) => {
        const below = at + 1 < RUNGS ? [`a${String(at + 1)}`, `b${String(at + 1)}`] : [];
        return [
          [`a${String(at)}`, below],
          [`b${String(at)}`, below],
        ] as const;
      }),
    );
    // Both formulas at the top are too deep; whatever lies between is part of their chains.
    expect(withFormulas(rungs)).toHaveLength(2);
  });
});
