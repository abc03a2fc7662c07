/** Versions of formulas and trials, as the past in the file holds them. @rule FILE-5, VERSION-1, TRIAL-1 */
import type { Trial, TrialLine, TrialReading } from "@/lib/domain/formula-book/trials";
import type { AcceptedWarning, FormulaVersion, VersionUsed } from "@/lib/domain/formula-book/version-record";
import { LARGEST_FIGURE, type Micrograms, quantity } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, id, name, note, orElse, phase, reference, wholeNumber } from "@/lib/edge/fields";
import { ph, viscosity } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import {
  complete,
  type Entry,
  indexById,
  readEntries,
  readEntry,
  records,
  referredTo,
} from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import { FORMULA_CONTENT, type FormulaIndex, OF_LINE, readComponent, readContent } from "./formulas";
import type { MaterialIndex } from "./materials";

const LARGEST = Number(LARGEST_FIGURE);
const REASON = note(1000);
const versionNumber = wholeNumber(1, 1_000_000);
/** Ten years after a trial was made, in minutes. */
const LONGEST = 3660 * 24 * 60;

const USED = { formula: reference("formula"), number: versionNumber };
const MARK = {
  ...USED,
  since: orElse(day, null),
  why: orElse(REASON, null),
  accepted: orElse(records, []),
};
const WARNING = { key: note(10_000), says: note(2000), reason: REASON, on: day };

const TRIAL = {
  id,
  formula: reference("formula"),
  name,
  day,
  notes: orElse(note(5000), null),
  posting: orElse(note(300), null),
  lines: records,
  readings: orElse(records, []),
};
const TRIAL_LINE = { ...OF_LINE, weighed: wholeNumber(1, LARGEST), phase: orElse(phase, null) };
const READING = {
  afterMinutes: wholeNumber(0, LONGEST),
  ph: orElse(ph, null),
  viscosity: orElse(viscosity, null),
  appearance: orElse(REASON, null),
};

/** The lists of the file that hold what was referred to. */
export interface BookIndexes {
  readonly materials: MaterialIndex;
  readonly formulas: FormulaIndex;
}

/** Which versions a run was made by. */
export const readVersionsUsed = (
  list: readonly Json[] | undefined,
  path: string,
  { formulas }: BookIndexes,
  faults: FaultList,
): readonly VersionUsed[] =>
  readEntries(list, USED, path, faults).flatMap(({ path: at, fields }): readonly VersionUsed[] => {
    referredTo(formulas, "formula", fields.formula, `${at}.formula`, faults);
    const used = complete(fields);
    return used ? [used] : [];
  });

/** The versions: one without lines is the one that stands, and is the last of its formula. */
export function readVersions(
  list: readonly Json[] | undefined,
  indexes: BookIndexes,
  faults: FaultList,
): readonly FormulaVersion[] {
  const versions = (list ?? []).flatMap((value, at) => readVersion(value, at, indexes, faults));
  const last = new Map<string, FormulaVersion>();
  versions.forEach((version, at) => {
    const before = last.get(version.formula);
    const path = `formulaVersions[${String(at)}]`;
    if (before !== undefined && before.number >= version.number)
      faults.tell(`${path}.number`, `must be above ${String(before.number)}, that of the version before it`);
    if (before?.content === null)
      faults.tell(path, `stands after the version of ${quoted(version.formula)} that has no lines, which is the last`);
    last.set(version.formula, version);
  });
  return versions;
}

function readVersion(value: Json, at: number, indexes: BookIndexes, faults: FaultList): readonly FormulaVersion[] {
  const path = `formulaVersions[${String(at)}]`;
  if (!(value instanceof Map && value.has("lines"))) {
    const entry = readEntry(value, MARK, path, faults);
    const mark = entry && readMark(entry, indexes, faults);
    return mark ? [{ ...mark, content: null }] : [];
  }
  const entry = readEntry(value, { ...MARK, ...FORMULA_CONTENT }, path, faults);
  if (entry === undefined) return [];
  const mark = readMark(entry, indexes, faults);
  const { premixes: _premixes, ...lists } = readContent(entry, indexes.materials, indexes.formulas, faults);
  const { name: called, density, market, use, phFrom, phTo, keepsDays } = entry.fields;
  const content = complete({ name: called, density, market, use, phFrom, phTo, keepsDays, ...lists });
  return mark && content ? [{ ...mark, content }] : [];
}

/** What is said of a version, whether or not it stands. */
function readMark(
  { path, fields }: Entry<typeof MARK>,
  { formulas }: BookIndexes,
  faults: FaultList,
): Omit<FormulaVersion, "content"> | undefined {
  const { formula, number, since, why } = fields;
  referredTo(formulas, "formula", formula, `${path}.formula`, faults);
  const keys = new Set<string>();
  const accepted = readEntries(fields.accepted, WARNING, `${path}.accepted`, faults).flatMap(
    (warning): readonly AcceptedWarning[] => {
      const read = complete(warning.fields);
      if (read === undefined) return [];
      if (keys.has(read.key)) faults.tell(`${warning.path}.key`, "this warning stands there already; keep one");
      keys.add(read.key);
      return [read];
    },
  );
  return complete({ formula, number, since, why, accepted });
}

export function readTrials(
  list: readonly Json[] | undefined,
  { materials, formulas }: BookIndexes,
  faults: FaultList,
): readonly Trial[] {
  const entries = readEntries(list, TRIAL, "trials", faults);
  indexById(list, entries, faults);
  return entries.flatMap(({ path, fields }): readonly Trial[] => {
    referredTo(formulas, "formula", fields.formula, `${path}.formula`, faults);
    const lines = readEntries(fields.lines, TRIAL_LINE, `${path}.lines`, faults).flatMap((line) => {
      const of = readComponent(line, materials, formulas, faults)?.of;
      const read = complete({ of, weighed: line.fields.weighed, phase: line.fields.phase });
      return read ? [{ ...read, weighed: quantity<Micrograms>(BigInt(read.weighed)) } satisfies TrialLine] : [];
    });
    if (fields.lines?.length === 0) faults.tell(`${path}.lines`, "a trial needs at least one line");
    const readings = readEntries(fields.readings, READING, `${path}.readings`, faults).flatMap(
      (reading): readonly TrialReading[] => {
        const read = complete(reading.fields);
        return read ? [read] : [];
      },
    );
    const trial = complete(fields);
    return trial ? [{ ...trial, lines, readings }] : [];
  });
}
