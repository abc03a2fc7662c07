/** Warnings that a maker goes on with, each with a reason that is kept with the version. @rule VERSION-4 */
import type { Books } from "@/lib/domain/desk";
import { checksOf, type Checked } from "./checks";
import { type Finding, findingKey, severityOf } from "./findings";
import { standingVersion, withStanding } from "./versions";
import type { AcceptedWarning } from "./version-record";

export interface WarningToAccept extends Pick<AcceptedWarning, "key" | "reason"> {
  readonly formula: string;
  /** How it is told: what is kept is what the maker reads. */
  readonly wordsOf: (finding: Finding) => string;
}

export type WarningAccepted =
  | { readonly kind: "accepted" | "already accepted"; readonly books: Books }
  | { readonly kind: "no such formula" }
  /** The checks no longer find it, or find it with other figures. */
  | { readonly kind: "not found any more" };

/**
 * Accepts one warning of a formula as it stands.
 * @param checked  what its checks are made of, on the day on which it is accepted
 * @rule VERSION-4, CHECK-8
 */
export function acceptWarning(books: Books, asked: WarningToAccept, checked: Checked): WarningAccepted {
  const formula = books.workshop.formulas.find(({ id }) => id === asked.formula);
  if (formula === undefined) return { kind: "no such formula" };
  const { accepted } = standingVersion(books.desk, formula);
  if (accepted.some(({ key }) => key === asked.key)) return { kind: "already accepted", books };
  const found = warningsOf(checksOf(formula, checked)).find((finding) => findingKey(finding) === asked.key);
  if (found === undefined) return { kind: "not found any more" };
  const { key, reason } = asked;
  const kept = [...accepted, { key, says: asked.wordsOf(found), reason, on: checked.today }];
  return { kind: "accepted", books: { ...books, desk: withStanding(books.desk, formula, { accepted: kept }) } };
}

export const warningsOf = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((finding) => severityOf(finding) === "warning");

/** What stops a run of the formula. @rule VERSION-5 */
export const errorsOf = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((finding) => severityOf(finding) === "error");
