"use client";

import { type ReactNode, useRef, useState } from "react";
import { formulaTotal } from "@/lib/domain/formula-total";
import { times, whole } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue, type PartsPerMillion, quantity, WHOLE } from "@/lib/domain/quantity";
import type { FormulaLine } from "@/lib/domain/workshop";
import { readTypedPercentOrRest } from "@/lib/edge/forms/typed-amount";
import { totalInWords } from "@/lib/edge/forms/total-in-words";
import { inARow } from "@/lib/edge/counted";
import { asSentence } from "@/app/_ui/sentence";
import { useFormFollowed } from "@/app/_ui/form-followed";
import { type FormValues, rowsOf } from "@/app/_ui/form-values";

/** What the rows of a formula come to, as they are typed: `97.5 % so far; 2.5 % is still missing`. */
export function totalOfRows(values: FormValues): string {
  const unread: number[] = [];
  const lines = rowsOf(values, "lines").flatMap(({ percent: typed = "" }, at): readonly FormulaLine[] => {
    if (typed.trim() === "") return [];
    const percent = typedPercent(typed);
    if (percent !== null) return [{ of: { kind: "material", id: "" }, percent, phase: null }];
    unread.push(at + 1);
    return [];
  });
  return unread.length === 0
    ? totalInWords(formulaTotal({ lines }))
    : `the percent of ${linesNamed(unread)} cannot be read, so that nothing is added up yet`;
}

/** `line 3`, `lines 3 and 5`. */
export const linesNamed = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? "line" : "lines"} ${inARow(numbers.map(String))}`;

/** A percent as it was typed, or null where it is none that a formula can hold. */
export function typedPercent(typed: string): PartsPerMillion | "qs" | null {
  const reading = readTypedPercentOrRest(typed);
  if ("fault" in reading) return null;
  if (reading.value === "qs") return "qs";
  const share = times(decimalValue(reading.value as DecimalText), whole(WHOLE / 100n));
  return share.over % share.under === 0n ? quantity<PartsPerMillion>(share.over / share.under) : null;
}

/** The total under the rows. It follows what is typed where scripts run. */
export function FormulaTotal({ values }: { readonly values: FormValues }): ReactNode {
  const [total, setTotal] = useState(() => totalOfRows(values));
  const place = useRef<HTMLParagraphElement>(null);
  useFormFollowed(place, (typed) => {
    setTotal(totalOfRows(typed));
  });
  return (
    <p className="form-total" role="status" ref={place}>
      {asSentence(total)}
    </p>
  );
}
