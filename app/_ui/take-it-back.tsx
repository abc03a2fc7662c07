import type { ReactNode } from "react";
import type { AskingAnswer } from "./asking-answer";
import { AskingForm } from "@/app/_ui/asking-form";

interface TakesBack {
  readonly act: (before: AskingAnswer, form: FormData) => Promise<AskingAnswer>;
  readonly title: string;
  readonly says: ReactNode;
  /** What the form carries: which one is taken back, and what its answer needs. */
  readonly carried: Readonly<Record<string, string>>;
  readonly newKey: string;
  /** The day that stands in the form, as an ISO date. */
  readonly day: string;
  readonly button: string;
}

/** Takes back something that was entered: with a day and a reason. Both stay visible. */
export function TakeItBack({ act, title, says, carried, newKey, day, button }: TakesBack): ReactNode {
  return (
    <section className="form-slip" aria-labelledby="take-it-back">
      <h2 id="take-it-back">{title}</h2>
      <p className="small soft">{says}</p>
      <AskingForm
        act={act}
        carried={carried}
        kept={{ key: newKey }}
        className="asking-in-a-row"
        fields={[
          { name: "reason", label: "Why", type: "text", value: "" },
          { name: "day", label: "Day", type: "date", value: day },
        ]}
        button={button}
      />
    </section>
  );
}
