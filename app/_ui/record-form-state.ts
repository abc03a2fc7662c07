"use client";

import {
  type MouseEvent,
  startTransition,
  type SubmitEvent,
  useActionState,
  useEffect,
  useEffectEvent,
  useRef,
  useState,
} from "react";
import { dataOfForm } from "./data-of-form";
import { type FormAnswer, NOT_SENT } from "./form-answer";
import { fieldId } from "./form-control";
import { type Drawn, type FormValues, type Rearrange, rearranged, valuesOfForm } from "./form-values";
import { useTypingKept } from "./typing-kept";

export interface FormToState {
  readonly values: FormValues;
  /** The fingerprint of the record as it is drawn; empty for a new one. */
  readonly seen: string;
  readonly send: (before: FormAnswer, form: FormData) => Promise<FormAnswer>;
  /** Further buttons that only rearrange the form, by their first word. */
  readonly further?: Readonly<Record<string, Rearrange>> | undefined;
}

const asGiven = (values: FormValues): Drawn => ({ values, notes: {}, focus: null });

/** What a form is drawn with after an answer: what was sent, rearranged where that was asked. */
function drawnAfter(answer: FormAnswer, given: FormValues, further: FormToState["further"]): Drawn {
  if (answer.kind === "not sent") return asGiven(given);
  const again = answer.kind === "rearrange" ? rearranged(answer.values, answer.deed, further) : null;
  return again ?? asGiven(answer.values);
}

/** The fingerprint that goes with an answer: who was shown the changes has seen what is kept now. */
function seenAfter(answer: FormAnswer): string | undefined {
  if (answer.kind === "changed meanwhile") return answer.seenNow ?? "";
  return answer.kind === "refused" ? answer.values.seen : undefined;
}

/** Buttons that rearrange rows have ids made of what they do. */
const focusId = (focus: string): string => fieldId(focus).replaceAll(" ", "-");

/** What stands in a form, what it was answered, and what its buttons do. */
export function useRecordForm({ values: given, seen, send, further }: FormToState) {
  const [answer, dispatch, waiting] = useActionState(send, NOT_SENT);
  const [taken, setTaken] = useState(answer);
  const [drawn, setDrawn] = useState(() => drawnAfter(answer, given, further));
  const [version, setVersion] = useState(0);
  const [firstSeen] = useState(seen);
  const formRef = useRef<HTMLFormElement>(null);
  const summaryRef = useRef<HTMLElement>(null);
  const redraw = (next: Drawn): void => {
    setDrawn(next);
    setVersion((before) => before + 1);
  };
  // A button pressed before the scripts were there is answered by the server.
  if (answer !== taken) {
    setTaken(answer);
    if (answer.kind === "rearrange") redraw(drawnAfter(answer, given, further));
  }
  const kept = useTypingKept(formRef, given, (values) => redraw(asGiven(values)));

  const refused = useEffectEvent(() => {
    kept.refused();
    summaryRef.current?.focus();
  });
  useEffect(() => {
    if (answer.kind !== "not sent" && answer.kind !== "rearrange") refused();
  }, [answer]);
  useEffect(() => {
    if (drawn.focus !== null) document.getElementById(focusId(drawn.focus))?.focus();
  }, [drawn]);

  const press = (event: MouseEvent<HTMLFormElement>): void => {
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    if (button?.name !== "deed") return;
    const next = rearranged(valuesOfForm(new FormData(event.currentTarget)), button.value, further);
    if (next === null) return;
    event.preventDefault();
    if (button.getAttribute("aria-disabled") !== "true") redraw(next);
  };
  const submit = (event: SubmitEvent<HTMLFormElement>): void => {
    // Sent by hand, so that the browser leaves the fields as they are.
    event.preventDefault();
    const sent = dataOfForm(event.currentTarget, event.nativeEvent.submitter);
    kept.sent();
    startTransition(() => dispatch(sent));
  };
  const beginAfresh = (): void => {
    kept.forget();
    redraw(asGiven(given));
  };
  return {
    answer,
    dispatch,
    waiting,
    drawn,
    version,
    formRef,
    summaryRef,
    hasReturned: kept.returned,
    seen: seenAfter(answer) ?? drawn.values.seen ?? firstSeen,
    press,
    submit,
    beginAfresh,
  };
}
