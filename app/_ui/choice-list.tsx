"use client";

import { Combobox } from "@base-ui/react/combobox";
import {
  type FocusEvent,
  type ReactNode,
  type RefObject,
  useEffect,
  useEffectEvent,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { typedOf } from "@/lib/edge/forms/unchosen";
import { type Choice, type ChoiceGroup, choiceWords, matching } from "./choice-filter";
import { optionOf, useChosen } from "./chosen";
import type { RecordChoiceProps } from "./record-choice-props";

export interface ChoiceListProps extends RecordChoiceProps {
  /** Whether what it takes the place of had the focus when it left the page. */
  readonly hadFocus: RefObject<boolean>;
  readonly come: Come;
}

/** How somebody came to the choice before its list was there: whether it was pressed, what was typed, and Enter after it. */
export interface Come {
  readonly pressed: boolean;
  readonly typed: string;
  readonly entered: boolean;
}

/**
 * A list that filters as one types: arrows walk through it, Enter takes what is marked, Escape goes back to what was
 * chosen. Leaving the field takes what was typed where it can mean only one; else it stays, is told, and is refused.
 */
export function ChoiceList(props: ChoiceListProps): ReactNode {
  const { id, name, none, groups, either: _, hadFocus, come, value: __, ...described } = props;
  const chosen = useChosen(props);
  const input = useRef<HTMLInputElement>(null);
  const { isOpen, setOpen, actions } = useOpen(come.pressed);
  const sent = useSentValue(chosen.value);
  useArrival(props, input, chosen.settle, setOpen);
  const listed = none === null || none === "Choose one" ? groups : [NONE_OF(none), ...groups];
  const { groups: shown, further } = matching(listed, chosen.isTyping ? chosen.text : "");
  const isUnknown = !chosen.isTyping && optionOf(groups, chosen.value) === null && typedOf(chosen.value) !== null;
  const noteId = `${id}-none-of-these`;
  return (
    <>
      <input type="hidden" name={name} value={chosen.value} ref={sent} readOnly />
      <Combobox.Root<Choice>
        items={itemsOf(listed)}
        filteredItems={itemsOf(shown)}
        value={optionOf(groups, chosen.value)}
        inputValue={chosen.text}
        itemToStringLabel={choiceWords}
        isItemEqualToValue={(one, other) => one.value === other.value}
        autoHighlight
        open={isOpen}
        actionsRef={actions}
        onInputValueChange={(text, { reason }) => {
          if (reason === "input-change") chosen.type(text);
        }}
        onValueChange={(option, details) => {
          if (details.reason === "item-press") chosen.pick(option);
          else details.cancel();
        }}
        onOpenChange={(opens, { reason }) => {
          setOpen(opens);
          if (!opens && reason === "escape-key") chosen.goBack();
        }}
      >
        <Combobox.Input
          {...AS_A_FIELD}
          {...described}
          {...(isUnknown && { "aria-invalid": true, "aria-describedby": noteId })}
          id={id}
          ref={input}
          placeholder={none ?? undefined}
          onClick={(event) => {
            if (!chosen.isTyping) event.currentTarget.select();
          }}
          onBlur={() => {
            chosen.leave();
            setOpen(false);
          }}
        />
        {isOpen && <Listed groups={shown} further={further} text={chosen.text} />}
      </Combobox.Root>
      {isUnknown && <NotChosen id={noteId} groups={groups} text={chosen.text} />}
    </>
  );
}

/**
 * Takes over the focus of what it takes the place of and goes on with what was typed there; where that was left
 * meanwhile, what was typed is settled as on leaving.
 */
function useArrival(
  { hadFocus, come: { typed, entered } }: ChoiceListProps,
  input: RefObject<HTMLInputElement | null>,
  settle: (text: string) => void,
  setOpen: (isOpen: boolean) => void,
): void {
  const arrive = useEffectEvent((field: HTMLInputElement): void => {
    if (!hadFocus.current) {
      setOpen(false);
      if (typed !== "") settle(typed);
      return;
    }
    field.focus();
    if (entered) settle(typed);
    if (typed === "" || entered) return;
    field.setRangeText(typed, 0, field.value.length, "end");
    field.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertText", data: typed }));
  });
  // Before the page is drawn: a key that is pressed meanwhile would go to nobody, or stand before what was typed.
  useLayoutEffect(() => {
    if (input.current !== null) arrive(input.current);
  }, [input]);
}

const AS_A_FIELD = {
  className: "record-choice",
  autoComplete: "off",
  spellCheck: false,
  onFocus: (event: FocusEvent<HTMLInputElement>) => event.currentTarget.select(),
} as const;

/** Whether the list stands open. Without the library's own popup nothing else tells it that the list is gone. */
function useOpen(opens: boolean) {
  const [isOpen, setOpen] = useState(opens);
  const actions = useRef<Combobox.Root.Actions>(null);
  useEffect(() => {
    if (!isOpen) actions.current?.unmount();
  }, [isOpen]);
  return { isOpen, setOpen, actions };
}

const NONE_OF = (label: string): ChoiceGroup => ({ name: null, options: [{ value: "", label }] });

/** As the library takes groups. */
const itemsOf = (groups: readonly ChoiceGroup[]) => groups.map(({ name, options }) => ({ name, items: options }));

interface Unchosen {
  readonly id: string;
  readonly groups: readonly ChoiceGroup[];
  readonly text: string;
}

/** What is said of what was typed and is none of the choices, or may be several. */
const NotChosen = ({ id, groups, text }: Unchosen): ReactNode => (
  <p className="field-fault choice-note" id={id} role="status">
    {matching(groups, text).groups.length === 0
      ? `Nothing in the list is called “${text}”. Choose one from the list.`
      : `“${text}” can mean several. Choose one from the list.`}
  </p>
);

/** Tells the form whenever another value is to be sent, as a field of the browser's own would. */
function useSentValue(value: string) {
  const element = useRef<HTMLInputElement>(null);
  const told = useRef(value);
  useEffect(() => {
    if (told.current === value) return;
    told.current = value;
    element.current?.dispatchEvent(new Event("input", { bubbles: true }));
  }, [value]);
  return element;
}

/** How many there are to choose from, for who cannot see the list; that there are none is said in its place. */
function counted(groups: readonly ChoiceGroup[], further: number): string {
  const all = groups.reduce((sum, { options }) => sum + options.length, further);
  return all === 0 ? "" : all === 1 ? "One to choose from." : `${String(all)} to choose from.`;
}

interface Shown {
  readonly groups: readonly ChoiceGroup[];
  readonly further: number;
  readonly text: string;
}

/**
 * What can be chosen, within the page's own part, so that it stands in no landmark of its own. The library's own popup
 * would hide the rest of the page from screen readers, fields that can have the focus among it. The focus stays in the
 * field whatever is pressed here.
 */
const Listed = ({ groups, further, text }: Shown): ReactNode => (
  <Combobox.Portal container={document.getElementById("main")}>
    <Combobox.Positioner className="choice-place" sideOffset={4} align="start">
      <div className="choice-list" onMouseDown={(event) => event.preventDefault()}>
        <Combobox.Empty>
          {groups.length === 0 && <p className="choice-said">Nothing in the list is called “{text.trim()}”.</p>}
        </Combobox.Empty>
        <Combobox.Status className="unseen">{counted(groups, further)}</Combobox.Status>
        <Combobox.List aria-label="To choose from">
          {groups.map(({ name, options }) => (
            <Combobox.Group key={name} items={options}>
              {name !== null && <Combobox.GroupLabel className="choice-group">{name}</Combobox.GroupLabel>}
              {options.map((option) => (
                <Combobox.Item key={option.value} value={option} className="choice-item">
                  <span>
                    {option.label}
                    {option.detail !== undefined && <small>{option.detail}</small>}
                  </span>
                </Combobox.Item>
              ))}
            </Combobox.Group>
          ))}
        </Combobox.List>
        {further > 0 && <p className="choice-said">and {further} more; type a part of the name to see them.</p>}
      </div>
    </Combobox.Positioner>
  </Combobox.Portal>
);
