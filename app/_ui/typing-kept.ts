"use client";

import { type RefObject, useEffect, useRef, useState } from "react";
import { type FormValues, valuesOfForm } from "./form-values";

const AFTER_MS = 300;
/** By then a page that was left has another address. */
const GONE_ON_MS = 1_000;

/** The place of a form's unfinished typing: this tab, what is open in it, this address, and which form of its page. */
const placeOf = (of: string): string =>
  `typed ${document.body.dataset.workshop ?? ""} ${location.pathname}${location.search} ${of}`;

function readKept(place: string): FormValues | null {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(place) ?? "null");
    return typeof kept === "object" && kept !== null ? (kept as FormValues) : null;
  } catch {
    // Unreadable, or a browser that keeps nothing: there is nothing to bring back.
    return null;
  }
}

function keep(place: string, values: FormValues | null): void {
  try {
    if (values === null) sessionStorage.removeItem(place);
    else sessionStorage.setItem(place, JSON.stringify(values));
  } catch {
    // A browser that keeps nothing, or no more: the typing stays in the fields all the same.
  }
}

const differ = (one: FormValues, other: FormValues): boolean =>
  [...new Set([...Object.keys(one), ...Object.keys(other)])]
    .filter((name) => !NOT_TYPED.has(name))
    .some((name) => (one[name] ?? "") !== (other[name] ?? ""));

/** Whether something was typed before the scripts were there to follow it. */
const wasTypedInto = (form: HTMLFormElement): boolean =>
  [...form.elements].some(
    (field) =>
      (field instanceof HTMLTextAreaElement || (field instanceof HTMLInputElement && field.type !== "hidden")) &&
      field.value !== field.defaultValue,
  );

/** What comes with the form and is not typed into it. */
const NOT_TYPED = new Set(["id", "seen", "deed"]);

/** Writes a little after the last letter; who reloads or leaves right after one loses it no more than who waits. */
function writing(timer: RefObject<ReturnType<typeof setTimeout> | undefined>, now: () => void) {
  const writeNow = (): void => {
    clearTimeout(timer.current);
    timer.current = undefined;
    now();
  };
  return {
    write: (): void => {
      clearTimeout(timer.current);
      timer.current = setTimeout(writeNow, AFTER_MS);
    },
    writeWhatWaits: (): void => {
      if (timer.current !== undefined) writeNow();
    },
  };
}

interface TypingKept {
  /** What was typed here before has been brought back. */
  readonly returned: boolean;
  readonly forget: () => void;
  readonly sent: () => void;
  readonly refused: () => void;
}

/**
 * Keeps what is typed into a form in this tab, so that a reload in the middle loses none of it, rows that were added
 * included. It is forgotten once the form was sent and the page has gone on; where it has not, nothing was kept.
 * @param of  which form it is, where a page has several
 */
export function useTypingKept(
  form: RefObject<HTMLFormElement | null>,
  given: FormValues,
  bringBack: (values: FormValues) => void,
  of = "",
): TypingKept {
  const [returned, setReturned] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const wasSent = useRef(false);
  const first = useRef({ given, bringBack });

  useEffect(() => {
    const element = form.current;
    if (element === null) return;
    const place = placeOf(of);
    const { write, writeWhatWaits } = writing(timer, () => keep(place, valuesOfForm(new FormData(element))));
    const kept = readKept(place);
    // After the browser has put back what it remembers of its own.
    const frame = requestAnimationFrame(() => {
      if (kept !== null && differ(kept, first.current.given)) {
        first.current.bringBack(kept);
        setReturned(true);
      } else if (wasTypedInto(element)) write();
    });
    element.addEventListener("input", write);
    element.addEventListener("click", write);
    window.addEventListener("pagehide", writeWhatWaits);
    return () => {
      cancelAnimationFrame(frame);
      writeWhatWaits();
      window.removeEventListener("pagehide", writeWhatWaits);
      element.removeEventListener("input", write);
      element.removeEventListener("click", write);
      if (!wasSent.current) return;
      // At once where the address is another one by now, so that who comes back soon finds an empty form.
      const forgetWhereGoneOn = (): void => {
        if (placeOf(of) !== place) keep(place, null);
      };
      forgetWhereGoneOn();
      setTimeout(forgetWhereGoneOn, GONE_ON_MS);
    };
  }, [form, of]);

  return {
    returned,
    forget: () => {
      keep(placeOf(of), null);
      setReturned(false);
    },
    sent: () => {
      clearTimeout(timer.current);
      timer.current = undefined;
      wasSent.current = true;
    },
    refused: () => {
      wasSent.current = false;
      if (form.current !== null) keep(placeOf(of), valuesOfForm(new FormData(form.current)));
    },
  };
}
