/** A model in the text format that the solver reads (the LP format of mathematical programming). */
import type { BasketModel, ModelRow, ModelTerm } from "@/lib/domain/buying/basket-model";

/** Lines are kept short: readers of the format take 255 characters at the least. */
const TERMS_A_LINE = 6;

export function modelText({ columns, rows }: BasketModel): string {
  const costs = columns.flatMap(({ name, cost }) => (cost === 0 ? [] : [{ times: cost, column: name }]));
  const named = (kind: (typeof columns)[number]["kind"]) =>
    columns.filter((column) => column.kind === kind).map(({ name }) => ` ${name}`);
  return [
    "Minimize",
    ` cost: ${sumText(costs)}`,
    "Subject To",
    ...rows.map((row, at) => ` r${String(at)}: ${rowText(row)}`),
    "Bounds",
    ...columns.flatMap(({ name, kind, to }) => (kind === "whole" ? [` 0 <= ${name} <= ${String(to)}`] : [])),
    "General",
    ...named("whole"),
    "Binary",
    ...named("yes or no"),
    "End",
    "",
  ].join("\n");
}

const rowText = ({ terms, is, level }: ModelRow): string => `${sumText(terms)} ${is} ${String(level)}`;

function sumText(terms: readonly ModelTerm[]): string {
  const written = terms.map(({ times, column }) => `${times < 0 ? "-" : "+"} ${String(Math.abs(times))} ${column}`);
  const lines: string[] = [];
  for (let at = 0; at < written.length; at += TERMS_A_LINE) lines.push(written.slice(at, at + TERMS_A_LINE).join(" "));
  return lines.join("\n  ");
}
