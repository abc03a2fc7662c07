"use client";

import { decimalTyped } from "@/lib/edge/notation";
import type { ReactNode } from "react";
import { nameMatcher } from "@/lib/edge/forms/name-matching";
import { type PastedLine, readPastedFormula, weightsAsPercents } from "@/lib/edge/pasted-formula";
import { type Choice, choiceWords } from "@/app/_ui/choice-filter";
import type { UnderRow } from "@/app/_ui/form-control";
import { eitherName } from "@/app/_ui/either";
import { type FormValues, isWritten, type Rearrange, rowsOf, withRows } from "@/app/_ui/form-values";

type Known = NonNullable<Parameters<typeof readPastedFormula>[1]>;

/** What lines can be matched to: what the form offers. */
export const knownFrom = (choices: Readonly<Record<string, readonly Choice[]>>): Known => {
  const named = (list: string) =>
    (choices[list] ?? []).map((choice) => ({ id: choice.value, name: choiceWords(choice) }));
  return {
    materials: named("materials").map((material) => ({ ...material, measure: "mass" as const })),
    formulas: named("formulas"),
  };
};

const rowOf = ({ match, name, percent, phase, asks }: PastedLine): FormValues => ({
  of: match.kind === "exact" ? `${match.match.kind} ${match.match.id}` : "",
  percent: percent === null ? "" : decimalTyped(percent),
  phase: phase ?? "",
  pasted: name,
  asks: asks ?? "",
});

/** The lines of the pasted text; as percents of their weights where that is asked for, and why not where that fails. */
export function linesOfText(values: FormValues, known: Known, as: string | undefined) {
  const pasted = readPastedFormula(values.pasted ?? "", known);
  const inPercents = as === "grams" ? weightsAsPercents(pasted.lines) : null;
  const lines = inPercents?.kind === "percents" ? inPercents.lines : pasted.lines;
  const notes: Readonly<Record<string, string>> = inPercents?.kind === "refused" ? { pasted: inPercents.why } : {};
  return { lines, notes };
}

/** `paste`, or `paste grams` where the figures are weights: the lines of the text become rows, after those there are. */
export const pasteInto =
  (known: Known): Rearrange =>
  (values, [as]) => {
    const { lines, notes } = linesOfText(values, known, as);
    const before = rowsOf(values, "lines").filter((row) => isWritten(row) && !hasComeFromPasting(row));
    return { values: withRows(values, "lines", [...before, ...lines.map(rowOf)]), notes, focus: "lines" };
  };

/** Pasting again puts the lines in the place of those that were pasted before. */
export const hasComeFromPasting = ({ pasted = "" }: FormValues): boolean => pasted !== "";

/** Where lines of text are pasted, and what is to be said of them as a whole. */
export function PasteLines({
  values,
  known,
  note,
}: {
  readonly values: FormValues;
  readonly known: Known;
  readonly note: string | undefined;
}): ReactNode {
  const text = values.pasted ?? "";
  const read = text === "" ? null : readPastedFormula(text, known);
  return (
    <details className="paste" open={text !== ""}>
      <summary>Paste it as lines of text</summary>
      <div className="field">
        <label htmlFor="field-pasted">
          One line for each material, as “Glycerin 5 %”, from a note or a spreadsheet
        </label>
        <textarea id="field-pasted" name="pasted" rows={8} defaultValue={text} />
      </div>
      {read?.says.map((sentence) => (
        <p key={sentence} className="field-note">
          {sentence}
        </p>
      ))}
      {note !== undefined && (
        <p className="field-fault" role="alert">
          {note}
        </p>
      )}
      <p className="in-a-row">
        <button className="button" name="deed" value="paste">
          Put the lines into the formula
        </button>
        {read?.looksLikeGrams === true && (
          <button className="button" name="deed" value="paste grams">
            Turn the grams into percents
          </button>
        )}
      </p>
    </details>
  );
}

/** Under a pasted row: what is not sure about it, with what it may be, each one button away. */
export function askedUnder(known: Known): UnderRow {
  const match = nameMatcher([
    ...known.materials.map(({ id, name }) => ({ value: `material ${id}`, name })),
    ...known.formulas.map(({ id, name }) => ({ value: `formula ${id}`, name })),
  ]);
  return function AskedOfRow(row, values) {
    const pasted = values[`${row}.pasted`] ?? "";
    const asks = values[`${row}.asks`] ?? "";
    const isUnknown = pasted !== "" && (values[eitherName(row)] ?? "") === "";
    const isOpen = asks !== "" && (values[`${row}.percent`] ?? "") === "";
    if (!isUnknown && !isOpen) return null;
    return (
      <div className="asked small">
        {isUnknown && <WhichIsIt row={row} pasted={pasted} found={match(pasted)} />}
        {isOpen && (
          <p>
            “{pasted}”: {asks}.
          </p>
        )}
      </div>
    );
  };
}

interface Candidate {
  readonly value: string;
  readonly name: string;
}

function WhichIsIt({
  row,
  pasted,
  found,
}: {
  readonly row: string;
  readonly pasted: string;
  readonly found: ReturnType<ReturnType<typeof nameMatcher<Candidate>>>;
}): ReactNode {
  const candidates = found.kind === "several" ? found.candidates : found.kind === "none" ? [] : [found.match];
  if (candidates.length === 0)
    return <p>Nothing in the Book is called “{pasted}”. Choose what it is, or add it to the materials first.</p>;
  return (
    <p>
      Is “{pasted}” one of these?{" "}
      {candidates.map(({ value, name }) => (
        <button key={value} className="button plain" name="deed" value={`fill ${eitherName(row)} ${value}`}>
          {name}
        </button>
      ))}
    </p>
  );
}
