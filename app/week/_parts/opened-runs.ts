/** What the runs that stand open on the page are made up of: lots, shares and amounts. */
import { compositions } from "@/lib/domain/formula";
import { formulaPaths } from "@/lib/domain/formula-paths";
import { type LotsOfRun, lotsOfRuns } from "@/lib/domain/lots-drawn";
import { type NeedParts, needParts } from "@/lib/domain/need-parts";
import type { Prepared } from "@/lib/domain/plan";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Material, Run, Workshop } from "@/lib/domain/workshop";
import { pathsTold } from "@/lib/edge/path-words";

export interface OpenedRun {
  readonly lots: LotsOfRun;
  readonly needs: NeedParts;
  /** The ways in which a material comes into the formula, where the share alone does not tell. */
  readonly pathsTo: (material: Material) => readonly string[];
}

const MOST_PATHS = 6;

/** @param opened  those that stand open; nothing is worked out for others */
export function openedRuns(
  opened: readonly RunOutlook[],
  { formulas }: Workshop,
  { runs, stock }: Prepared,
): ReadonlyMap<Run, OpenedRun> {
  const lots = lotsOfRuns(new Set(opened.map(({ run }) => run)), runs, stock);
  const compositionOf = compositions(formulas);
  return new Map(
    opened.flatMap(({ run, product, draws }) => {
      const [toJudge, lotsOfRun] = [runs.find((each) => each.run === run), lots.get(run)];
      if (toJudge === undefined || lotsOfRun === undefined) return [];
      const there = new Map(draws.map((draw) => [draw.material, draw.there]));
      const needs = needParts(toJudge, (material) => there.get(material) ?? quantity<Stock>(0n));
      // What is opened of a premix made ahead is told by its shares.
      const pathsTo = ({ id }: Material): readonly string[] =>
        toJudge.opened === null
          ? pathsTold(formulaPaths(formulas, product.formula, id, compositionOf, MOST_PATHS))
          : [];
      return [[run, { lots: lotsOfRun, needs, pathsTo }] as const];
    }),
  );
}
