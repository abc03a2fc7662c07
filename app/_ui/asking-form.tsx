"use client";

import {
  type ReactNode,
  type SubmitEvent,
  startTransition,
  useActionState,
  useEffect,
  useEffectEvent,
  useId,
  useRef,
  useState,
} from "react";
import { typedOf } from "@/lib/edge/forms/unchosen";
import type { Choice } from "./choice-filter";
import { RecordChoice } from "./record-choice";
import { dataOfForm } from "./data-of-form";
import { asSentence } from "./sentence";
import { Sign } from "./sign";
import type { FormValues } from "./form-values";
import { useTypingKept } from "./typing-kept";
import { type AskingAnswer, NOT_SENT, type OtherButton } from "./asking-answer";
import "./asking-form.css";
import { valueForStyles } from "./value-for-styles";

export interface AskedField {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** A record is chosen from a list that may be long, a choice from a few. */
  readonly type: "text" | "date" | "choice" | "record";
  readonly options?: readonly Choice[];
  readonly hint?: string;
  /** Fields that follow one another under the same title stand together; what is said of them is the first one's. */
  readonly group?: Group;
}

interface Group {
  readonly title: string;
  readonly says: string;
  /** Whether they are seldom needed, and stand behind the title until they are. */
  readonly isFolded?: boolean;
}

interface Asking {
  readonly act: (before: AskingAnswer, form: FormData) => Promise<AskingAnswer>;
  readonly fields: readonly AskedField[];
  /** What the form carries besides, as it stands now; and what stays as it was when the form was opened. */
  readonly carried: Readonly<Record<string, string>>;
  readonly kept?: Readonly<Record<string, string>>;
  readonly button: string;
  /** Whether it is the one thing to do on its page. */
  readonly isFirst?: boolean;
  readonly other?: OtherButton;
  readonly className?: string;
  /** Whether the first field takes the focus when the form is opened. */
  readonly takesFocus?: boolean;
}

/** What was answered to the form, and what becomes of what is typed into it. */
function useAsking({ act, fields, carried, kept = {}, button, takesFocus }: Asking) {
  const [answer, send, waiting] = useActionState(act, NOT_SENT);
  const form = useRef<HTMLFormElement>(null);
  const [back, setBack] = useState<FormValues | null>(null);
  const typing = useTypingKept(
    form,
    { ...carried, ...kept, ...Object.fromEntries(fields.map(({ name, value }) => [name, value])) },
    setBack,
    `${button} ${carried.run ?? carried.trial ?? carried.key ?? ""}`,
  );
  const wasRefused = useEffectEvent(() => typing.refused());
  useEffect(() => {
    if (answer.kind !== "refused") return;
    wasRefused();
    form.current?.querySelector<HTMLElement>("[aria-invalid], .asking-says")?.focus();
  }, [answer]);
  useEffect(() => {
    if (takesFocus) form.current?.querySelector<HTMLElement>("select, input:not([type=hidden])")?.focus();
  }, [takesFocus]);
  const submit = (event: SubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    if (waiting) return;
    const sent = dataOfForm(event.currentTarget, event.nativeEvent.submitter);
    typing.sent();
    startTransition(() => send(sent));
  };
  const refused = answer.kind === "refused" ? answer : null;
  return { form, send, submit, waiting, refused, typed: refused?.typed ?? back ?? {}, isBack: back !== null };
}

/**
 * A few fields and a button. It works without scripts; what was typed stays in the fields on every refusal, which
 * stands under the field that it is about, and comes back after a reload.
 */
export function AskingForm(asking: Asking): ReactNode {
  const { fields, carried, kept: given = {}, button, isFirst = false, other, className } = asking;
  const [kept] = useState(given);
  const { form, send, submit, waiting, refused, typed, isBack } = useAsking(asking);
  return (
    <form className={`asking ${className ?? ""}`} action={send} onSubmit={submit} ref={form} noValidate>
      {refused?.says != null && (
        <p className="fault asking-says" role="alert" tabIndex={-1}>
          {refused.says}
        </p>
      )}
      {Object.entries({ ...carried, ...kept }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} readOnly />
      ))}
      <div className="asking-fields" key={isBack ? "back" : "given"}>
        {inGroups(fields).map(({ group, each }) => {
          const asked = each.map((field) => (
            <Asked key={field.name} field={field} typed={typed[field.name]} fault={refused?.faults[field.name]} />
          ));
          if (group === undefined) return asked;
          if (group.isFolded) {
            const isUsed = each.some(
              ({ name, value }) => (typed[name] ?? value) !== "" || refused?.faults[name] !== undefined,
            );
            return (
              <details key={group.title} className="asking-group" open={isUsed}>
                <summary>
                  <b>{group.title}</b> <small>{group.says}</small>
                </summary>
                <div className="asking-group-fields">{asked}</div>
              </details>
            );
          }
          return (
            <fieldset key={group.title} className="asking-group">
              <legend>
                <b>{group.title}</b> <small>{group.says}</small>
              </legend>
              <div className="asking-group-fields">{asked}</div>
            </fieldset>
          );
        })}
        <Buttons button={button} isFirst={isFirst} others={[other, refused?.yes]} waiting={waiting} />
      </div>
    </form>
  );
}

interface FormButtons {
  readonly button: string;
  readonly isFirst: boolean;
  readonly others: readonly (OtherButton | undefined)[];
  readonly waiting: boolean;
}

function Buttons({ button, isFirst, others, waiting }: FormButtons): ReactNode {
  const busy = waiting ? true : undefined;
  return (
    <div className="asking-buttons">
      <button className={isFirst ? "button first" : "button"} aria-disabled={busy}>
        {button}
      </button>
      {others.map(
        (each) =>
          each && (
            <button key={each.deed} className="button" name="deed" value={each.deed} aria-disabled={busy}>
              {each.label}
            </button>
          ),
      )}
    </div>
  );
}

interface FieldGroup {
  readonly group: AskedField["group"];
  readonly each: readonly AskedField[];
}

/** Fields with what stands beside them in the same group, in their order. */
const inGroups = (fields: readonly AskedField[]): readonly FieldGroup[] =>
  fields.reduce<readonly FieldGroup[]>((groups, field) => {
    const last = groups.at(-1);
    if (last === undefined || last.group?.title !== field.group?.title)
      return [...groups, { group: field.group, each: [field] }];
    return [...groups.slice(0, -1), { group: last.group, each: [...last.each, field] }];
  }, []);

/** A date field holds whole dates alone: half a date was sent marked, and cannot stand in it again. */
const dateOrText = (type: AskedField["type"], typed: string): string =>
  type === "date" && typedOf(typed) !== null ? "" : typed;

interface OneField {
  readonly field: AskedField;
  readonly typed: string | undefined;
  readonly fault: string | undefined;
}

function Asked({ field, typed, fault }: OneField): ReactNode {
  const { name, label, value, type, options = [], hint } = field;
  const id = useId();
  const described = [hint && `${id}hint`, fault && `${id}fault`].filter(Boolean).join(" ") || undefined;
  const shared = {
    id,
    name,
    "aria-invalid": fault === undefined ? undefined : true,
    "aria-describedby": described,
  };
  return (
    <div className={fault === undefined ? "field" : "field wrong"}>
      <label htmlFor={id}>{label}</label>
      {type === "record" ? (
        <RecordChoice {...shared} value={typed ?? value} none="Choose one" groups={[{ name: null, options }]} />
      ) : type === "choice" ? (
        <select {...shared} defaultValue={typed ?? value}>
          <option value="">Choose one</option>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          defaultValue={dateOrText(type, typed ?? value)}
          type={type}
          autoComplete="off"
          onInput={type === "date" ? valueForStyles : undefined}
        />
      )}
      {hint !== undefined && (
        <p className="label" id={`${id}hint`}>
          {hint}
        </p>
      )}
      {fault !== undefined && (
        <p className="field-fault" id={`${id}fault`}>
          <Sign sign="triangle" tone="wrong">
            {asSentence(fault)}
          </Sign>
        </p>
      )}
    </div>
  );
}
