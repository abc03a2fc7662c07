import type { FormulaLine, Material } from "@/lib/domain/workshop";
import { FURTHER_LINES, ofAsText, ofField, phaseField, weighedField } from "@/lib/edge/forms/trial-form";
import type { AskedField } from "@/app/_ui/asking-form";

/** What is read of a trial, and when. */
export const READING_ASKED: readonly AskedField[] = [
  {
    name: "after",
    label: "How long after making",
    type: "text",
    value: "",
    hint: "As 1 h, 1 day or 1 week; empty for when it was made.",
  },
  { name: "ph", label: "pH", type: "text", value: "" },
  { name: "viscosity", label: "Viscosity, mPa·s", type: "text", value: "" },
  { name: "appearance", label: "Appearance", type: "text", value: "" },
];

export interface AboutTrial {
  readonly name: string;
  /** As a date field has it. */
  readonly day: string;
  readonly notes: string;
}

export const nameAndNotes = ({ name, notes }: Omit<AboutTrial, "day">): readonly AskedField[] => [
  { name: "name", label: "Name", type: "text", value: name },
  { name: "notes", label: "Notes (optional)", type: "text", value: notes },
];

export const aboutTrial = ({ name, day, notes }: AboutTrial): readonly AskedField[] => {
  const [called, noted] = nameAndNotes({ name, notes });
  return [called, { name: "day", label: "Made on", type: "date", value: day } as const, noted].filter(
    (field) => field !== undefined,
  );
};

/** A line of the form: what it is of, and in which phase. */
export type LineAsked = Pick<FormulaLine, "of" | "phase">;

/** A field for each line, with what to weigh for it, or what was. */
export const weighedOf = (
  lines: readonly LineAsked[],
  {
    nameOf,
    hintOf,
    weighedIn,
    size = null,
  }: {
    /** Of the whole trial, where something is aimed at. */
    readonly size?: string | null;
    readonly nameOf: (of: FormulaLine["of"]) => string;
    readonly hintOf: (at: number) => string;
    readonly weighedIn: (at: number) => string;
  },
): readonly AskedField[] =>
  lines.map(({ of }, at) => ({
    name: weighedField(at),
    label: `${nameOf(of)}, g`,
    type: "text",
    value: weighedIn(at),
    hint: hintOf(at),
    group: {
      title: size === null ? "As weighed" : `As weighed, for ${size}`,
      says: "what the balance showed; leave out what did not go in",
    },
  }));

/** Room for what none of the lines is. */
export const besidesThese = (lines: readonly LineAsked[], materials: readonly Material[]): readonly AskedField[] =>
  furtherPlaces(lines.length).flatMap((at): readonly AskedField[] => [
    {
      name: ofField(at),
      label: "Something else",
      type: "record",
      value: "",
      options: materials.map(({ id, name }) => ({ value: ofAsText({ kind: "material", id }), label: name })),
      group: FURTHER,
    },
    { name: weighedField(at), label: "of it, g", type: "text", value: "", group: FURTHER },
  ]);

const FURTHER = { title: "Besides", says: "what the formula does not hold" };

const furtherPlaces = (from: number): readonly number[] =>
  Array.from({ length: FURTHER_LINES }, (_, further) => from + further);

/** What each line is of, and its phase: the form says so itself, whatever becomes of the formula meanwhile. */
export const carriedLines = (lines: readonly LineAsked[]): Readonly<Record<string, string>> => ({
  ...Object.fromEntries(lines.map(({ of }, at) => [ofField(at), ofAsText(of)])),
  ...Object.fromEntries(lines.map(({ phase }, at) => [phaseField(at), phase ?? ""])),
  ...Object.fromEntries(furtherPlaces(lines.length).map((at) => [phaseField(at), ""])),
});

export const offTheShelf = (value: "yes" | "no"): AskedField => ({
  name: "shelf",
  label: "What was weighed",
  type: "choice",
  value,
  options: [
    { value: "yes", label: "came off the shelf: take it off there too" },
    { value: "no", label: "is not to be taken off the shelf" },
  ],
});
