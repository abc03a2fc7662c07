import type { ReactNode } from "react";
import { AskingForm, type AskedField } from "@/app/_ui/asking-form";
import { newId } from "@/app/_ui/new-id";
import { checksAsked, checksFound, type CheckFound, isMeasured } from "@/lib/domain/bench/asked-checks";
import { formulaAsStarted } from "@/lib/domain/bench/started-as";
import { askedInWords } from "@/lib/edge/bench-words";
import { writeANote } from "../actions";
import type { BatchOnPage } from "../batch-for-page";

/** The checks that the formula asks for and nobody has answered yet, each with a form of its own. @rule BENCH-11 */
export function OpenChecks({ found }: { readonly found: BatchOnPage }): ReactNode {
  const open = openIn(found);
  return open.map((each) => (
    <section key={each.check.what} className="bench-check" aria-label={`Check: ${each.check.what}`}>
      <p>
        The formula asks for <b>{each.check.what}</b>, {askedInWords(each.check)}.
        {each.note?.kind === "acidity" && ` Measured last: ${each.note.ph}, outside.`}
      </p>
      <AskingForm
        act={writeANote}
        carried={{
          batch: found.batch.run.id,
          kind: "checked",
          what: each.check.what,
          asked: askedInWords(each.check),
          from: each.check.from ?? "",
          to: each.check.to ?? "",
        }}
        kept={{ key: newId() }}
        className="asking-grouped"
        fields={fieldsOf(each, found.batch.startedBy)}
        button={`Write down the ${each.check.what}`}
      />
    </section>
  ));
}

const openIn = (found: BatchOnPage): readonly CheckFound[] =>
  checksFound(found.batch, checksAsked(formulaAsStarted(found, found.batch))).filter(({ isAnswered }) => !isAnswered);

function fieldsOf({ check, note }: CheckFound, who: string): readonly AskedField[] {
  const seen: AskedField = {
    name: "within",
    label: "Is it as asked?",
    type: "choice",
    value: "",
    options: [
      { value: "yes", label: "Yes" },
      { value: "no", label: "No" },
    ],
  };
  return [
    ...(isMeasured(check) ? [] : [seen]),
    {
      name: "found",
      label: `What was found${check.unit === null ? "" : `, ${check.unit}`}`,
      type: "text",
      value: note?.kind === "acidity" ? note.ph : "",
    },
    { name: "why", label: "Why it is kept, where it is not as asked", type: "text", value: "" },
    { name: "who", label: "Looked at by", type: "text", value: who },
  ];
}

/** Where checks are open, what says why it is released without them. */
export const reasonForNoCheck = (found: BatchOnPage): readonly AskedField[] =>
  openIn(found).length === 0
    ? []
    : [
        {
          name: "whyNotChecked",
          label: "Why it is released without those checks (where it is)",
          type: "text",
          value: "",
        },
      ];
