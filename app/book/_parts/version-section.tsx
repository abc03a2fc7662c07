import Link from "next/link";
import type { ReactNode } from "react";
import { warningsOf } from "@/lib/domain/formula-book/accepted-warnings";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { type Finding, findingKey } from "@/lib/domain/formula-book/findings";
import { isFrozen, standingVersion, type VersionOfFormula, versionsOf } from "@/lib/domain/formula-book/versions";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { byId } from "@/lib/domain/index-by-id";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { findingInWords } from "@/lib/edge/finding-words";
import { AskingForm } from "@/app/_ui/asking-form";
import { acceptTheWarning } from "@/app/book/formulas/[id]/versions/actions";
import { versionsPath } from "./addresses";
import { checkedFrom } from "./checked-from";
import { nameOfLine } from "@/app/_ui/name-of-line";

interface Of {
  readonly books: Books;
  readonly today: Day;
  readonly id: string;
}

/** Which version of the formula stands, whether a batch was made by it, and the warnings that can be accepted in it. */
export function VersionSection({ books, today, id }: Of): ReactNode {
  const formula = byId("formula", books.workshop.formulas)(id);
  const version = standingVersion(books.desk, formula);
  const warnings = warningsOf(checksOf(formula, checkedFrom(books.workshop, today, id)));
  const nameOf = nameOfLine(books.workshop);
  const earlier = versionsOf(books.desk, formula).slice(0, -1).toReversed();
  return (
    <section className="matters" aria-labelledby="version">
      <h2 id="version">
        Version {version.number}{" "}
        <small>
          {isFrozen(version)
            ? `made ${counted(version.usedBy.length, "batch", "batches")}: what you change becomes version ${String(version.number + 1)}`
            : "no batch was made by it yet: it is changed where it stands"}
        </small>
      </h2>
      <div>
        <Begun version={version} today={today} />
        {warnings.map((finding) => (
          <Warning
            key={findingKey(finding)}
            formula={id}
            finding={finding}
            version={version}
            before={earlier}
            words={findingInWords(finding, { today, nameOf })}
            today={today}
          />
        ))}
        <p>
          <Link className="more" href={versionsPath(id)}>
            {earlier.length === 0 ? "Its only version so far" : `All ${String(earlier.length + 1)} versions`}
          </Link>
        </p>
      </div>
    </section>
  );
}

const Begun = ({ version, today }: { readonly version: VersionOfFormula; readonly today: Day }): ReactNode =>
  version.since !== null &&
  version.why !== null && (
    <p>
      Since {dayShown(version.since, today, { year: true })}: {version.why}
    </p>
  );

interface OfWarning {
  readonly formula: string;
  readonly finding: Finding;
  readonly version: VersionOfFormula;
  /** Earlier versions, the latest first. */
  readonly before: readonly VersionOfFormula[];
  readonly words: ReturnType<typeof findingInWords>;
  readonly today: Day;
}

/** A warning with the reason for which it was accepted, or with room for one. @rule VERSION-4 */
function Warning({ formula, finding, version, before, words, today }: OfWarning): ReactNode {
  const key = findingKey(finding);
  const accepted = version.accepted.find((warning) => warning.key === key);
  if (accepted !== undefined)
    return (
      <p className="accepted-warning">
        <b>Accepted</b> on {dayShown(accepted.on, today, { year: true })}: {words.says}.{" "}
        <span className="label">Because: {accepted.reason}</span>
      </p>
    );
  const then = before.find((one) => one.accepted.some((warning) => warning.key === key));
  const reason = then?.accepted.find((warning) => warning.key === key)?.reason ?? "";
  return (
    <div className="warning-to-accept">
      <p>
        <b>Warning</b> {words.says}.
      </p>
      <AskingForm
        key={key}
        act={acceptTheWarning}
        carried={{ formula, key }}
        className="asking-in-a-row"
        fields={[
          {
            name: "reason",
            label: "Why you go on with it",
            type: "text",
            value: reason,
            ...(then !== undefined && { hint: `As accepted in version ${String(then.number)}.` }),
          },
        ]}
        button="Accept the warning"
      />
    </div>
  );
}
