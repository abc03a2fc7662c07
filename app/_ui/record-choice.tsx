"use client";

import {
  type ComponentType,
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  type SyntheticEvent,
  useLayoutEffect,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import { flushSync } from "react-dom";
import { typedOf } from "@/lib/edge/forms/unchosen";
import { type ChoiceGroup, choiceWords } from "./choice-filter";
import type { ChoiceListProps, Come } from "./choice-list";
import type { RecordChoiceProps } from "./record-choice-props";
import "./record-choice.css";

/** The list with its library: most visits choose nothing anew, so that it comes to a choice only when somebody does. */
const loadList = async (): Promise<ComponentType<ChoiceListProps>> => (await import("./choice-list")).ChoiceList;

const UNTOUCHED: Come = { pressed: false, typed: "", entered: false };

interface Swapped {
  readonly List: ComponentType<ChoiceListProps>;
  readonly value: string;
  readonly come: Come;
}

/** Swaps the browser's own choice for the list when somebody comes to it; what was pressed meanwhile is the list's. */
function useSwap() {
  const [swapped, setSwapped] = useState<Swapped | null>(null);
  const hadFocus = useRef(false);
  /** What was pressed and typed since the list was asked for; null before. */
  const awaited = useRef<Come | null>(null);
  const isAsked = useRef(false);
  const hasFailed = useRef(false);
  const [select] = useState(() => ({ current: null as HTMLSelectElement | null }));
  const [take] = useState(() => (element: HTMLSelectElement | null): void => {
    // It is let go of before it leaves the page, so that its focus can go to what takes its place.
    if (element === null) hadFocus.current = document.activeElement === select.current;
    select.current = element;
  });
  const come = async (by: Come): Promise<void> => {
    awaited.current = { ...(awaited.current ?? by), pressed: by.pressed || awaited.current?.pressed === true };
    if (isAsked.current) return;
    isAsked.current = true;
    try {
      const List = await loadList();
      if (select.current === null) return;
      const { value } = select.current;
      // At once, so that no key falls between what the list is given and its being there.
      flushSync(() => setSwapped({ List, value, come: awaited.current ?? by }));
    } catch {
      // The browser's own choice stays: what is pressed next opens it, and the focus asks for the list again.
      [isAsked.current, hasFailed.current, awaited.current] = [false, true, null];
    }
  };
  const press = (event: MouseEvent<HTMLSelectElement>): void => {
    if (event.button !== 0 || hasFailed.current) return;
    // The browser's own would open, and be gone a moment later.
    event.preventDefault();
    void come({ ...UNTOUCHED, pressed: true });
    event.currentTarget.focus();
  };
  const type = (event: KeyboardEvent<HTMLSelectElement>): void => {
    if (awaited.current === null) return;
    const { typed } = awaited.current;
    const isToOpen =
      (event.key === " " && typed === "") || event.key === "F4" || (event.altKey && /^Arrow/.test(event.key));
    const isEnter = event.key === "Enter" && typed !== "";
    const isLetter = event.key.length === 1 && !event.altKey && !event.ctrlKey && !event.metaKey;
    if (!isToOpen && !isEnter && !isLetter) return;
    event.preventDefault();
    if (isToOpen) awaited.current = { ...awaited.current, pressed: true };
    else if (isEnter) awaited.current = { ...awaited.current, entered: true };
    else awaited.current = { ...awaited.current, typed: typed + event.key };
  };
  return { swapped, take, come, press, type, hadFocus };
}

/**
 * One record out of many: in the page the browser's own choice, which works without scripts; where they run, a list
 * that filters as one types takes its place when somebody comes to it. What was chosen, and the focus, go along.
 */
export function RecordChoice(props: RecordChoiceProps): ReactNode {
  const { swapped, hadFocus, ...native } = useSwap();
  if (swapped === null) return <NativeChoice {...props} {...native} />;
  const { List, ...asItStands } = swapped;
  return <List {...props} {...asItStands} hadFocus={hadFocus} />;
}

const NEVER_CHANGES = (): (() => void) => () => undefined;

interface Native extends RecordChoiceProps {
  readonly take: (select: HTMLSelectElement | null) => void;
  /** Somebody has come to it. */
  readonly come: (by: Come) => Promise<void>;
  readonly press: (event: MouseEvent<HTMLSelectElement>) => void;
  readonly type: (event: KeyboardEvent<HTMLSelectElement>) => void;
}

/**
 * A choice of the browser's own. What was chosen and is no longer offered stays, so that it is told and not changed.
 * Drawn by a script it is given what can be chosen only when somebody comes to it: hundreds of rows that each hold
 * hundreds of names are more than a page carries lightly.
 */
function NativeChoice({ value, none, groups, either: _, take, come, press, type, ...select }: Native): ReactNode {
  const isByScript = useSyncExternalStore(
    NEVER_CHANGES,
    () => true,
    () => false,
  );
  const [isFull, setFull] = useState(!isByScript);
  const filled = useRef<{ readonly select: HTMLSelectElement; readonly value: string }>(null);
  const fill = ({ currentTarget: select }: SyntheticEvent<HTMLSelectElement>): void => {
    if (isFull) return;
    filled.current = { select, value: select.value };
    flushSync(() => setFull(true));
  };
  // The one option that stood for what is chosen gives way to another, and its being chosen would go with it.
  useLayoutEffect(() => {
    if (isFull && filled.current !== null) filled.current.select.value = filled.current.value;
  }, [isFull]);
  const chosen = groups.flatMap(({ options }) => options).find((option) => option.value === value);
  const typed = typedOf(value);
  return (
    <select
      {...select}
      className="record-choice"
      defaultValue={value}
      ref={take}
      onFocus={(event) => {
        fill(event);
        void come(UNTOUCHED);
      }}
      onMouseDown={press}
      onKeyDown={type}
    >
      {none !== null && <option value="">{none}</option>}
      {isFull
        ? groups.map((group) => <OptionGroup key={group.name} {...group} />)
        : chosen && <option value={chosen.value}>{choiceWords(chosen)}</option>}
      {value !== "" && chosen === undefined && (
        <option value={value}>{typed === null ? "No longer there" : `“${typed}”, which is none of these`}</option>
      )}
    </select>
  );
}

function OptionGroup({ name, options }: ChoiceGroup): ReactNode {
  if (options.length === 0) return null;
  const drawn = options.map((option) => (
    <option key={option.value} value={option.value}>
      {choiceWords(option)}
    </option>
  ));
  return name === null ? drawn : <optgroup label={name}>{drawn}</optgroup>;
}
