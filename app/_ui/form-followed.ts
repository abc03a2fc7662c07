"use client";

import { type RefObject, useEffect, useRef } from "react";
import { type FormValues, valuesOfForm } from "./form-values";

/**
 * Follows what is typed into the form that `place` stands in: what was typed before the scripts were there, or was
 * put back by the browser, at once, and every change after that.
 * @param follow  told all that stands in the form's fields
 */
export function useFormFollowed(place: RefObject<HTMLElement | null>, follow: (values: FormValues) => void): void {
  const latest = useRef(follow);
  useEffect(() => {
    latest.current = follow;
  });
  useEffect(() => {
    const form = place.current?.closest("form");
    if (!form) return;
    const tell = (): void => latest.current(valuesOfForm(new FormData(form)));
    const frame = requestAnimationFrame(tell);
    form.addEventListener("input", tell);
    return () => {
      cancelAnimationFrame(frame);
      form.removeEventListener("input", tell);
    };
  }, [place]);
}
