"use client";

import {
  type ComponentType,
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
import type { ChoiceListProps } from "./choice-list";
import type { RecordChoiceProps } from "./record-choice-props";
import "./record-choice.css";

/** The list comes with its library when the first choice is on a page, and never before. */
let listOnceLoaded: ComponentType<ChoiceListProps> | null = null;
const loadList = async (): Promise<ComponentType<ChoiceListProps>> =>
  (listOnceLoaded ??= (await import("./choice-list")).ChoiceList);

interface Swapped {
  readonly List: ComponentType<ChoiceListProps>;
  readonly value: string;
}

/** In a form of more choices than this the list comes to one only when somebody does, since many are heavy. */
const MANY_CHOICES = 30;

const hasMany = (element: HTMLSelectElement | null): boolean =>
  (element?.form?.querySelectorAll("select.record-choice").length ?? 0) > MANY_CHOICES;

/** Swaps the browser's own choice for the list: at once where it can, later where somebody is choosing in it. */
function useSwap() {
  const [swapped, setSwapped] = useState<Swapped | null>(null);
  const isUsed = useRef(false);
  const hadFocus = useRef(false);
  const [select] = useState(() => ({ current: null as HTMLSelectElement | null }));
  const swap = (List: Swapped["List"]): void => {
    if (select.current !== null) setSwapped({ List, value: select.current.value });
  };
  const [take] = useState(() => (element: HTMLSelectElement | null): void => {
    // It is let go of before it leaves the page, so that its focus can go to what takes its place.
    if (element === null) {
      hadFocus.current = document.activeElement === select.current;
      select.current = null;
      return;
    }
    select.current = element;
    if (hasMany(element)) return;
    if (listOnceLoaded !== null) {
      swap(listOnceLoaded);
      return;
    }
    loadList().then(
      (List) => {
        // Whoever is choosing goes on in what is open.
        if (isUsed.current && document.activeElement === element)
          element.addEventListener("blur", () => swap(List), { once: true });
        else swap(List);
      },
      // The browser's own choice stays.
      () => undefined,
    );
  });
  const use = (): void => {
    isUsed.current = true;
    if (hasMany(select.current)) loadList().then(swap, () => undefined);
  };
  return { swapped, take, use, hadFocus };
}

/**
 * One record out of many: in the page the browser's own choice, which works without scripts; once they are there, a
 * list that filters as one types. What was chosen before that, and the focus, go along.
 */
export function RecordChoice(props: RecordChoiceProps): ReactNode {
  const { swapped, take, use, hadFocus } = useSwap();
  if (swapped === null) return <NativeChoice {...props} take={take} use={use} />;
  const { List, value } = swapped;
  return <List {...props} value={value} hadFocus={hadFocus} />;
}

const NEVER_CHANGES = (): (() => void) => () => undefined;

interface Native extends RecordChoiceProps {
  readonly take: (select: HTMLSelectElement | null) => void;
  readonly use: () => void;
}

/**
 * A choice of the browser's own. What was chosen and is no longer offered stays, so that it is told and not changed.
 * Drawn by a script it is given what can be chosen only when somebody comes to it: hundreds of rows that each hold
 * hundreds of names are more than a page carries lightly.
 */
function NativeChoice({ value, none, groups, either: _, take, use, ...select }: Native): ReactNode {
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
      onFocus={fill}
      onPointerDown={(event) => {
        use();
        fill(event);
      }}
      onKeyDown={use}
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
