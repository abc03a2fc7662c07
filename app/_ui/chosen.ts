"use client";

import { useState } from "react";
import { typedOf, unchosen } from "@/lib/edge/forms/unchosen";
import { calledSo, type Choice, type ChoiceGroup, choiceWords, meantBy } from "./choice-filter";
import type { RecordChoiceProps } from "./record-choice-props";

/** What is chosen, and what stands in the field. */
interface Chosen {
  readonly value: string;
  readonly text: string;
}

export const optionOf = (groups: readonly ChoiceGroup[], value: string): Choice | null =>
  groups.flatMap(({ options }) => options).find((option) => option.value === value) ?? null;

function chosenFrom(groups: readonly ChoiceGroup[], value: string): Chosen {
  const option = optionOf(groups, value);
  const text = option === null ? (typedOf(value) ?? (value === "" ? "" : "No longer there")) : choiceWords(option);
  return { value, text };
}

/** What is chosen by picking or by typing, and what becomes of what was typed when the field is left. */
export function useChosen({ value: first, groups, either }: RecordChoiceProps) {
  const [chosen, setChosen] = useState(() => chosenFrom(groups, first));
  /** What was chosen before the typing, to which Escape goes back; null where nothing was typed since. */
  const [before, setBefore] = useState<Chosen | null>(null);
  const isTyping = before !== null;
  const pick = (option: Choice | null): void => {
    setChosen(option === null || option.value === "" ? { value: "", text: "" } : chosenFrom(groups, option.value));
    setBefore(null);
  };
  const type = (text: string): void => {
    const value = text.trim() === "" ? "" : (calledSo(groups, text)?.value ?? unchosen(text.trim(), either ?? null));
    setBefore(before ?? chosen);
    setChosen({ value, text });
  };
  const settle = (text: string): void => {
    type(text);
    const meant = meantBy(groups, text);
    if (meant !== null) setChosen(chosenFrom(groups, meant.value));
    setBefore(null);
  };
  const leave = (): void => {
    if (isTyping) settle(chosen.text);
  };
  const goBack = (): void => {
    if (before !== null) setChosen(before);
    setBefore(null);
  };
  return { ...chosen, isTyping, pick, type, settle, leave, goBack };
}
