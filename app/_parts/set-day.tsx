"use client";

import { type ReactNode, useActionState } from "react";
import { backToRealDate } from "../actions";
import { type DayAnswer, NO_DAY_ASKED } from "./day-answer";

/** The day that the workshop is set to, at all times, with the way back to the real date. */
export function SetDay({ day, iso }: { readonly day: string; readonly iso: string }): ReactNode {
  const [answer, send, waiting] = useActionState<DayAnswer, FormData>(backToRealDate, NO_DAY_ASKED);
  return (
    <div className="set-day-line">
      <form action={send}>
        <input type="hidden" name="from" value={iso} readOnly />
        <span className="set-day">Set to {day}</span>
        <button className="button plain" aria-disabled={waiting ? true : undefined}>
          Back to the real date
        </button>
      </form>
      {answer.kind === "refused" && (
        <p className="fault" role="alert">
          {answer.says}
        </p>
      )}
    </div>
  );
}
