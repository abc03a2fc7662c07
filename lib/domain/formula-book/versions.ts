/**
 * The versions of a formula: the one that stands is the formula itself, earlier ones are kept as they were.
 * @rule VERSION-1 to VERSION-5
 */
import { openBatches } from "@/lib/domain/bench/batch";
import type { Day } from "@/lib/domain/calendar";
import type { Books, Desk } from "@/lib/domain/desk";
import { byId } from "@/lib/domain/index-by-id";
import type { Formula } from "@/lib/domain/workshop";
import type { FormulaContent, FormulaVersion, VersionUsed } from "./version-record";

/** A version with the formula as it is, or was, in it. */
export interface VersionOfFormula extends Omit<FormulaVersion, "content"> {
  readonly as: Formula;
  readonly stands: boolean;
  /** Runs that were made by it, as a formula or in a premix. @rule VERSION-2 */
  readonly usedBy: readonly string[];
}

/** The versions of a formula of the workshop, the first one first and the one that stands last. @rule VERSION-1 */
export function versionsOf(desk: Desk, formula: Formula): readonly VersionOfFormula[] {
  const own = desk.versions.filter((version) => version.formula === formula.id);
  const earlier = own.filter(({ content }) => content !== null).toSorted((a, b) => a.number - b.number);
  const standing = own.find(({ content }) => content === null) ?? firstOf(formula.id, earlier.at(-1)?.number ?? 0);
  return [...earlier, standing].map(({ content, ...version }) => ({
    ...version,
    as: content === null ? formula : { ...content, id: formula.id },
    stands: content === null,
    // A batch is among the runs that are closed once it is; before that it has used its version as well.
    usedBy: [...desk.closedRuns, ...openBatches(desk.batches)]
      .filter(({ versions }) => versions.some((used) => used.formula === formula.id && used.number === version.number))
      .map(({ run }) => run.id),
  }));
}

const firstOf = (formula: string, before: number): FormulaVersion => ({
  formula,
  number: before + 1,
  since: null,
  why: null,
  accepted: [],
  content: null,
});

/** The version that stands: the formula as it is now. */
export function standingVersion(desk: Desk, formula: Formula): VersionOfFormula {
  const version = versionsOf(desk, formula).at(-1);
  if (version === undefined) throw new Error("a formula has a version that stands");
  return version;
}

/** Whether a batch has used it, so that what is changed becomes the next version. @rule VERSION-2 */
export const isFrozen = ({ usedBy }: VersionOfFormula): boolean => usedBy.length > 0;

export interface VersionTold {
  readonly today: Day;
  /** Why it is changed; null where the maker did not say. */
  readonly why: string | null;
  /** Whether to begin the next version also where nobody has used this one. */
  readonly asNext: boolean;
}

/**
 * The desk after a formula was changed: what was frozen is kept as it was, and what stands is the next version.
 * @param before  the formula as it was
 * @param after   the same formula as it is to be
 * @rule VERSION-2, VERSION-3
 */
export function deskAfterChange(desk: Desk, before: Formula, after: Formula, told: VersionTold): Desk {
  const standing = standingVersion(desk, before);
  const isOther = contentKey(before) !== contentKey(after);
  if (isOther && (told.asNext || isFrozen(standing))) {
    const { as, stands: _stands, usedBy: _usedBy, ...mark } = standing;
    const { id, ...content } = as;
    const next = { ...firstOf(id, standing.number), since: told.today, why: told.why };
    return withVersions(desk, id, [{ ...mark, content }, next]);
  }
  if (told.why === null || told.why === standing.why) return desk;
  return withStanding(desk, before, { why: told.why, since: standing.since ?? told.today });
}

/** The desk with something else said of the version that stands. */
export function withStanding(desk: Desk, formula: Formula, said: Partial<FormulaVersion>): Desk {
  const { as: _as, stands: _stands, usedBy: _usedBy, ...mark } = standingVersion(desk, formula);
  return withVersions(desk, formula.id, [{ ...mark, content: null, ...said }]);
}

/** Puts versions in the place of the one that stands, and leaves the earlier ones alone. */
function withVersions(desk: Desk, formula: string, versions: readonly FormulaVersion[]): Desk {
  const others = desk.versions.filter((version) => version.formula !== formula || version.content !== null);
  return { ...desk, versions: [...others, ...versions] };
}

/** What a version is the same by: everything but the name. @rule VERSION-3 */
export const contentKey = (formula: FormulaContent): string =>
  JSON.stringify(
    [
      formula.density,
      formula.market,
      formula.use,
      formula.phFrom,
      formula.phTo,
      formula.keepsDays,
      formula.phases.map(({ name, temperature }) => [name, temperature]),
      formula.steps.map(({ phase, text, temperature, minutes, caution }) => [
        phase,
        text,
        temperature,
        minutes,
        caution,
      ]),
      formula.checks.map(({ what, from, to, unit, looks }) => [what, from, to, unit, looks]),
      formula.lines.map(({ of, percent, phase }) => [of.kind, of.id, percent, phase]),
    ],
    (_key, value: unknown) => (typeof value === "bigint" ? value.toString() : value),
  );

/**
 * The versions that stand of a formula and of every premix in it, by which a batch of it is made.
 * @param without  premixes that the batch does not make, with all that only they hold
 * @rule VERSION-2
 */
export function versionsUsed(
  { workshop, desk }: Books,
  formula: string,
  without: ReadonlySet<string> = new Set(),
): readonly VersionUsed[] {
  const formulaOf = byId("formula", workshop.formulas);
  const used = new Map<string, number>();
  function use(id: string): void {
    if (used.has(id) || without.has(id)) return;
    used.set(id, standingVersion(desk, formulaOf(id)).number);
    for (const { of } of formulaOf(id).lines) if (of.kind === "formula") use(of.id);
  }
  use(formula);
  return [...used].map(([id, number]) => ({ formula: id, number }));
}
