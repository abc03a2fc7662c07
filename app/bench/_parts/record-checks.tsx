import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { checksAsked, checksFound } from "@/lib/domain/bench/asked-checks";
import { formulaAsStarted } from "@/lib/domain/bench/started-as";
import { askedInWords } from "@/lib/edge/bench-words";
import type { BatchOnPage } from "../batch-for-page";
import { foundInWords } from "./record-words";

/** What the formula asks to be looked at, and what was found. @rule BENCH-11 */
export function Checks({ found }: { readonly found: BatchOnPage }): ReactNode {
  const checks = checksFound(found.batch, checksAsked(formulaAsStarted(found, found.batch)));
  if (checks.length === 0) return null;
  return (
    <section aria-labelledby="record-checks">
      <h2 id="record-checks">Checks that the formula asks for</h2>
      <dl className="record-yield">
        {checks.map((each) => {
          const { says, isOut } = foundInWords(each);
          const why = each.note?.kind === "checked" ? each.note.why : null;
          const words = `${says}${why === null ? "" : `; ${why}`}`;
          return (
            <div key={each.check.what} className="record-check">
              <dt>
                {each.check.what}, {askedInWords(each.check)}
              </dt>
              <dd>
                {isOut ? (
                  <Sign sign="triangle" tone="wrong">
                    {words}
                  </Sign>
                ) : (
                  words
                )}
              </dd>
            </div>
          );
        })}
      </dl>
    </section>
  );
}
