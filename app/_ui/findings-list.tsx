import type { ReactNode } from "react";
import { type Finding, findingKey, severityOf } from "@/lib/domain/formula-book/findings";
import { PUBLISHED_ON } from "@/lib/domain/formula-book/published-limits";
import { counted, inARow } from "@/lib/edge/counted";
import {
  coarseInARow,
  coarseInWords,
  findingInWords,
  type FindingWords,
  SEVERITY_WORDS,
  type TooCoarse,
  type WordsAbout,
} from "@/lib/edge/finding-words";
import { dayShown } from "@/lib/edge/figures";
import { Ledger } from "@/app/_ui/ledger";
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

/** What the checks found, errors first, each with its figures, its limit and what would mend it; coarse weighings as one. */
export function FindingsList({
  findings,
  about,
}: {
  readonly findings: readonly Finding[];
  readonly about: WordsAbout;
}): ReactNode {
  const coarse = findings.filter(isCoarse);
  const isOneOfSeveral = (finding: Finding): boolean => coarse.length > 1 && isCoarse(finding);
  return (
    <ul className="findings">
      {findings.map((finding) => {
        if (!isOneOfSeveral(finding))
          return <Found key={findingKey(finding)} finding={finding} words={findingInWords(finding, about)} />;
        return finding === coarse[0] ? (
          <Found key="coarse" finding={finding} words={coarseInWords(coarse)}>
            <CoarseWeighings coarse={coarse} about={about} />
          </Found>
        ) : null;
      })}
    </ul>
  );
}

const isCoarse = (finding: Finding): finding is TooCoarse => finding.code === "balance too coarse";

const Found = ({
  finding,
  words: { says, why, mend },
  children,
}: {
  readonly finding: Finding;
  readonly words: FindingWords;
  readonly children?: ReactNode;
}): ReactNode => {
  const severity = severityOf(finding);
  return (
    <li className={`found ${severity}`}>
      <p>
        <b className="found-rank">{SEVERITY_WORDS[severity]}</b> {says}
      </p>
      <p className="label">
        {asSentence(why)}.{mend !== null && ` ${mend}`}
      </p>
      {children}
    </li>
  );
};

const COARSE_COLUMNS = [
  { name: "What" },
  { name: "To weigh", kind: "number" },
  { name: "Batch at least", kind: "number" },
] as const;

/** Each weighing for which the balance is too coarse, and the batch that would be large enough for it. */
const CoarseWeighings = ({
  coarse,
  about,
}: {
  readonly coarse: readonly TooCoarse[];
  readonly about: WordsAbout;
}): ReactNode => (
  <details className="coarse">
    <summary>Which, and how large a batch each needs</summary>
    <Ledger caption="Weighings for which the balance is too coarse" columns={COARSE_COLUMNS} className="book-ledger">
      {coarse.map((finding) => {
        const { what, target, least } = coarseInARow(finding, about);
        return (
          <tr key={findingKey(finding)}>
            <th scope="row">{what}</th>
            <td className="number" data-of="To weigh">
              {target}
            </td>
            <td className="number" data-of="Batch at least">
              {least}
            </td>
          </tr>
        );
      })}
    </Ledger>
  </details>
);

/** Who decides, said wherever checks are shown. */
export const WhoDecides = (): ReactNode => (
  <p className="label">
    These checks know what is written in the Book and a few rows of European Union law: Regulation (EC) 1223/2009, Annex
    V, in a copy of {dayShown(PUBLISHED_ON, PUBLISHED_ON, { weekday: false, year: true })}. For every other market they
    look only at the maxima that you copied into the materials. They are no safety assessment: the law in force where it
    is sold and a qualified assessor decide.
  </p>
);
