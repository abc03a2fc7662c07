/**
 * The projection of materials made of a premix: before any other, since what is drawn of them decides how much of the
 * premix is opened. @rule AHEAD-5
 */
import { asksOfOpening, giveNext, nextPremixNeed, type Opening, openingOf, ownNeed } from "./ahead-needs";
import type { RunToJudge } from "./feasibility";
import { roundedUp, whole } from "./fraction";
import { grouped } from "./index-by-id";
import type { MadeAhead } from "./made-ahead";
import type { Draw, Projection } from "./projection";
import { quantity, type Stock } from "./quantity";
import type { Run } from "./workshop";

export interface AheadProjections {
  /** Of each material made of a premix, by its id. */
  readonly projections: ReadonlyMap<string, Projection>;
  /** On every other material, by its id, in the order of the runs. */
  readonly draws: ReadonlyMap<string, readonly Draw[]>;
}

/**
 * Draws runs on the materials made of premixes, outermost first, and tells what they then need of the others.
 * @param runs       those up to the plan's last day, in the order in which they draw
 * @param projectOf  the projection of a material, by its id
 */
export function projectAhead(
  runs: readonly RunToJudge[],
  premixes: readonly MadeAhead[],
  projectOf: (material: string, draws: readonly Draw[]) => Projection,
): AheadProjections {
  const openings = new Map(
    runs.flatMap(({ run, opened }) => (opened === null ? [] : [[run, openingOf(opened, run.units)]])),
  );
  const projections = new Map<string, Projection>();
  for (const { material } of premixes) {
    const draws = runs.flatMap((each) => drawsOn(material.id, each, openings.get(each.run)));
    const projection = projectOf(material.id, draws);
    projections.set(material.id, projection);
    const neededBy = new Map(draws.map(({ run, need }) => [run, need]));
    const givenTo = new Map<Run, bigint>();
    for (const event of projection.events) {
      if (event.kind === "drawn") givenTo.set(event.run, event.need - (neededBy.get(event.run) ?? event.need));
    }
    for (const [run, opening] of openings) {
      const next = opening.opened.premixes[opening.given.length];
      if (next?.material === material) giveNext(opening, whole(givenTo.get(run) ?? 0n));
    }
  }
  const rest = runs.flatMap(({ run, day, asks }) => {
    const opening = openings.get(run);
    const needs =
      opening === undefined ? asks.map(({ use, need }) => ({ material: use.material, need })) : asksOfOpening(opening);
    return needs
      .filter(({ material }) => !projections.has(material.id))
      .map(({ material, need }) => ({ material: material.id, day, run, need }));
  });
  return { projections, draws: grouped(rest, ({ material }) => material) };
}

/** What a run needs of a material made of a premix, and what it takes of it instead of the premix where it is there. */
function drawsOn(id: string, { run, day, asks }: RunToJudge, opening: Opening | undefined): readonly Draw[] {
  if (opening === undefined) {
    return asks.filter(({ use }) => use.material.id === id).map(({ need }) => ({ day, run, need }));
  }
  const material = opening.opened.materials.find((each) => each.material.id === id);
  if (!material) return [];
  const isNext = opening.opened.premixes[opening.given.length]?.drawn.material === material.material;
  const need = quantity<Stock>(roundedUp(ownNeed(opening, material)));
  const instead = quantity<Stock>(isNext ? roundedUp(nextPremixNeed(opening)) : 0n);
  return need === 0n && instead === 0n ? [] : [{ day, run, need, instead }];
}
