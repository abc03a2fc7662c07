import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import { type Finding, findingKey, severityOf } from "@/lib/domain/formula-book/findings";
import { PUBLISHED_ON } from "@/lib/domain/formula-book/published-limits";
import { counted, inARow } from "@/lib/edge/counted";
import { findingInWords, SEVERITY_WORDS, type WordsAbout } from "@/lib/edge/finding-words";
import { asSentence } from "@/app/_ui/sentence";

/** `1 error and 2 warnings`, or that the checks found nothing, which is not that there is nothing. */
export function countedFindings(findings: readonly Finding[], none = "these checks found nothing"): string {
  const of = (severity: "error" | "warning" | "note"): number =>
    findings.filter((finding) => severityOf(finding) === severity).length;
  const counts = [
    [of("error"), "error", "errors"],
    [of("warning"), "warning", "warnings"],
    [of("note"), "note", "notes"],
  ] as const;
  const there = counts.filter(([count]) => count > 0).map(([count, one, many]) => counted(count, one, many));
  return there.length === 0 ? none : inARow(there);
}

/** What the checks found, errors first, each with its figures, its limit and what would mend it. */
export function FindingsList({
  findings,
  about,
}: {
  readonly findings: readonly Finding[];
  readonly about: WordsAbout;
}): ReactNode {
  return (
    <ul className="findings">
      {findings.map((finding) => {
        const { says, why, mend } = findingInWords(finding, about);
        const severity = severityOf(finding);
        return (
          <li key={findingKey(finding)} className={`found ${severity}`}>
            <p>
              <b className="found-rank">{SEVERITY_WORDS[severity]}</b> {says}
            </p>
            <p className="label">
              {asSentence(why)}.{mend !== null && ` ${mend}`}
            </p>
          </li>
        );
      })}
    </ul>
  );
}

/** Who decides, said wherever checks are shown. */
export const WhoDecides = (): ReactNode => (
  <p className="label">
    These checks know what is written in the Book and a few rows of European Union law: Regulation (EC) 1223/2009, Annex
    V, in a copy of {isoDate(PUBLISHED_ON)}. For every other market they look only at the maxima that you copied into
    the materials. They are no safety assessment: the law in force where it is sold and a qualified assessor decide.
  </p>
);
