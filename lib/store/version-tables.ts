/** The tables of the versions of formulas and of trials, column by column. */
import type { DecimalText, Density, Micrograms } from "@/lib/domain/quantity";
import { CHECK_COLUMNS, FORMULA_FACT_COLUMNS, LINE_COLUMNS, PHASE_COLUMNS, STEP_COLUMNS } from "./fact-columns";
import { day, orNull, small, table, text, whole } from "./columns";

const id = text<string>();
const label = text<string>();
const position = small;
const decimal = text<DecimalText>();
/** Of which version a row is. */
const version = { formula: id, number: small };
const ORDERED = ["formula", "number", "position"] as const;
const { percent: _percent, ...ingredient } = LINE_COLUMNS;

/** In an order in which each names only those before it. */
export const VERSION_TABLES = {
  closedRunVersions: table("closed_run_versions", { run: id, position, formula: id, number: small }, [
    "run",
    "position",
  ]),
  // Of the version that stands the formula is the content, and the columns of the content are null.
  versions: table(
    "formula_versions",
    {
      ...version,
      since: orNull(day),
      why: orNull(label),
      name: orNull(label),
      density: orNull(whole<Density>()),
      ...FORMULA_FACT_COLUMNS,
    },
    ["formula", "number"],
  ),
  versionLines: table("version_lines", { ...version, ...LINE_COLUMNS }, ORDERED),
  versionPhases: table("version_phases", { ...version, ...PHASE_COLUMNS }, ORDERED),
  versionSteps: table("version_steps", { ...version, ...STEP_COLUMNS }, ORDERED),
  versionChecks: table("version_checks", { ...version, ...CHECK_COLUMNS }, ORDERED),
  acceptedWarnings: table(
    "accepted_warnings",
    { ...version, position, key: label, says: label, reason: label, on: day },
    ORDERED,
  ),
  trials: table("trials", { id, position, formula: id, name: label, day, notes: orNull(label), posting: orNull(id) }, [
    "position",
  ]),
  trialLines: table("trial_lines", { trial: id, ...ingredient, weighed: whole<Micrograms>() }, ["trial", "position"]),
  trialReadings: table(
    "trial_readings",
    {
      trial: id,
      position,
      afterMinutes: small,
      ph: orNull(decimal),
      viscosity: orNull(decimal),
      appearance: orNull(label),
    },
    ["trial", "position"],
  ),
};
