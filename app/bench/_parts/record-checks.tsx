import type { ReactNode } from "react";
import { checksAsked, checksFound, type CheckFound } from "@/lib/domain/bench/asked-checks";
import { formulaAsStarted } from "@/lib/domain/bench/started-as";
import { askedInWords } from "@/lib/edge/bench-words";
import type { BatchOnPage } from "../batch-for-page";

/** What the formula asks to be looked at, and what was found. @rule BENCH-11 */
export function Checks({ found }: { readonly found: BatchOnPage }): ReactNode {
  const checks = checksFound(found.batch, checksAsked(formulaAsStarted(found, found.batch)));
  if (checks.length === 0) return null;
  return (
    <section aria-labelledby="record-checks">
      <h2 id="record-checks">Checks that the formula asks for</h2>
      <dl className="record-yield">
        {checks.map((each) => (
          <div key={each.check.what} className="record-check">
            <dt>
              {each.check.what}, {askedInWords(each.check)}
            </dt>
            <dd>{foundInWords(each)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function foundInWords({ note, isAnswered }: CheckFound): string {
  if (note === null) return "nobody has looked";
  if (note.kind === "acidity") return isAnswered ? `${note.ph}, within` : `${note.ph} on the way, outside`;
  return `${note.found}, ${note.within ? "within" : `outside; ${note.why ?? ""}`}`;
}
