/** Versions of formulas and trials as the rows of the store, and the rows as them. */
import type { Desk } from "@/lib/domain/desk";
import type { Trial, TrialLine } from "@/lib/domain/formula-book/trials";
import type { FormulaVersion } from "@/lib/domain/formula-book/version-record";
import { ingredientCells, lineCells, placed, within } from "./rows-of-workshop";
import type { DeskRows, Row } from "./tables";
import { checkOf, formulaLineOf, ingredientOf, inner, phaseOf, stepOf, withoutPosition } from "./workshop-of-rows";

type Versions = Desk["versions"];

/** The content of the version that stands is the formula itself. */
const NO_CONTENT = {
  name: null,
  density: null,
  market: null,
  use: null,
  phFrom: null,
  phTo: null,
  keepsDays: null,
  lines: [],
  phases: [],
  steps: [],
  checks: [],
};

const contentOf = ({ content }: FormulaVersion) => content ?? NO_CONTENT;

export const rowsOfVersions = (versions: Versions) => ({
  versions: versions.map((version) => ({ ...contentOf(version), ...version })),
  versionLines: within(
    versions,
    (version) => contentOf(version).lines,
    ({ formula, number }, line, position) => ({ formula, number, ...lineCells(line, position) }),
  ),
  versionPhases: within(
    versions,
    (version) => contentOf(version).phases,
    ({ formula, number }, phase, position) => ({ ...phase, formula, number, position }),
  ),
  versionSteps: within(
    versions,
    (version) => contentOf(version).steps,
    ({ formula, number }, step, position) => ({ ...step, formula, number, position }),
  ),
  versionChecks: within(
    versions,
    (version) => contentOf(version).checks,
    ({ formula, number }, check, position) => ({ ...check, formula, number, position }),
  ),
  acceptedWarnings: within(
    versions,
    ({ accepted }) => accepted,
    ({ formula, number }, warning, position) => ({ ...warning, formula, number, position }),
  ),
});

export const rowsOfTrials = (trials: Desk["trials"]) => ({
  trials: placed(trials),
  trialLines: within(
    trials,
    ({ lines }: Trial) => lines,
    ({ id }, { of, weighed, phase }, position) => ({ trial: id, position, ...ingredientCells(of), weighed, phase }),
  ),
  trialReadings: within(
    trials,
    ({ readings }: Trial) => readings,
    ({ id }, reading, position) => ({ ...reading, trial: id, position }),
  ),
});

/** One text for each version: a number first, so that no id can look like another's. */
const versionKey = ({ formula, number }: { readonly formula: string; readonly number: number }): string =>
  `${String(number)} ${formula}`;

type VersionRows = Pick<
  DeskRows,
  "versions" | "versionLines" | "versionPhases" | "versionSteps" | "versionChecks" | "acceptedWarnings"
>;

export function versionsOfRows(rows: VersionRows): Versions {
  const linesOf = inner(rows.versionLines, versionKey);
  const phasesOf = inner(rows.versionPhases, versionKey);
  const stepsOf = inner(rows.versionSteps, versionKey);
  const checksOf = inner(rows.versionChecks, versionKey);
  const acceptedOf = inner(rows.acceptedWarnings, versionKey);
  return rows.versions.map(({ formula, number, since, why, name, ...facts }) => {
    const key = versionKey({ formula, number });
    return {
      formula,
      number,
      since,
      why,
      accepted: acceptedOf(key).map(({ key: found, says, reason, on }) => ({ key: found, says, reason, on })),
      content:
        name === null
          ? null
          : {
              name,
              ...facts,
              lines: linesOf(key).map(formulaLineOf),
              phases: phasesOf(key).map(phaseOf),
              steps: stepsOf(key).map(stepOf),
              checks: checksOf(key).map(checkOf),
            },
    };
  });
}

export function trialsOfRows(rows: Pick<DeskRows, "trials" | "trialLines" | "trialReadings">): Desk["trials"] {
  const linesOf = inner(rows.trialLines, ({ trial }) => trial);
  const readingsOf = inner(rows.trialReadings, ({ trial }) => trial);
  return rows.trials.map((row) => ({
    ...withoutPosition(row),
    lines: linesOf(row.id).map(trialLineOf),
    readings: readingsOf(row.id).map(({ trial: _trial, ...reading }) => withoutPosition(reading)),
  }));
}

const trialLineOf = ({ material, premix, weighed, phase }: Row<"trialLines">): TrialLine => ({
  of: ingredientOf(material, premix),
  weighed,
  phase,
});
