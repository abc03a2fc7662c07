import type { ReactNode } from "react";
import type { FormField } from "@/lib/edge/forms/form-fields";
import { eitherName, eitherOf, isEither } from "./either";
import { type Drawing, EitherControl, faultOf, fieldId, FormControl, UnderField } from "./form-control";
import { firstSpare, rowsDrawn } from "./form-values";

interface Lines {
  readonly field: FormField;
  readonly fields: readonly FormField[];
  readonly drawing: Drawing;
  /** What one row is called, in place of a line. */
  readonly called?: string | undefined;
  /** What stands under the rows, as what they add up to. */
  readonly children?: ReactNode;
}

/**
 * Rows of fields under one name, with some empty ones at the end. The buttons send the form where no script takes
 * them, and come back with the rows rearranged.
 */
export function FormLines({ field, fields, called = "Line", drawing, children }: Lines): ReactNode {
  const { name: list, label } = field;
  const count = rowsDrawn(drawing.values, list);
  const spare = firstSpare(drawing.values, list);
  const columns = columnsOf(fields);
  const fault = faultOf(drawing, list);
  return (
    <fieldset className={`form-lines of-${String(columns.length)} list-${list}`} id={fieldId(list)} tabIndex={-1}>
      <legend>{label}</legend>
      <UnderField name={list} drawing={drawing} />
      <LineHints fields={fields} />
      <div className="line-head" aria-hidden="true">
        {columns.map((column) => (
          <span key={column}>{column}</span>
        ))}
      </div>
      <ol className={fault === undefined ? undefined : "wrong"}>
        {Array.from({ length: count }, (_, at) => (
          <LineRow
            key={at}
            list={list}
            called={called}
            at={at}
            last={count - 1}
            isSpare={at >= spare}
            fields={fields}
            drawing={drawing}
          />
        ))}
      </ol>
      <p>
        <button className="button" name="deed" value={`rows ${list} ${firstFieldOf(fields)}`}>
          {addsOne(called)}
        </button>
      </p>
      {children}
    </fieldset>
  );
}

/** `Add a line` */
const addsOne = (called: string): string =>
  `Add ${/^[AEIO]/.test(called) ? "an" : "a"} ${called === "INCI name" ? called : called.toLowerCase()}`;

/** What helps to fill the rows right, once for all of them. */
function LineHints({ fields }: { readonly fields: readonly FormField[] }): ReactNode {
  const hinted = fields.filter(({ hint }) => hint !== undefined);
  if (hinted.length === 0) return null;
  return (
    <p className="label line-hints">
      {hinted.map(({ name, hint }) => (
        <span key={name}>{hint} </span>
      ))}
    </p>
  );
}

const unitBeside = ({ label, unit }: FormField): string => (unit === undefined ? label : `${label}, ${unit}`);

const eitherLabel = (fields: readonly FormField[]): string =>
  eitherOf(fields)
    .map(({ label }, at) => (at === 0 ? label : label.toLowerCase()))
    .join(" or ");

function columnsOf(fields: readonly FormField[]): readonly string[] {
  const [either] = eitherOf(fields);
  return fields
    .filter((field) => field === either || !isEither(field, fields))
    .map((field) => (field === either ? eitherLabel(fields) : unitBeside(field)));
}

const firstFieldOf = (fields: readonly FormField[]): string =>
  eitherOf(fields).length > 0 ? eitherName("").slice(1) : (fields[0]?.name ?? "");

interface Row {
  readonly list: string;
  readonly called: string;
  readonly at: number;
  readonly last: number;
  /** Whether it is only seen once something stands in the row before it. */
  readonly isSpare: boolean;
  readonly fields: readonly FormField[];
  readonly drawing: Drawing;
}

function LineRow({ list, called, at, last, isSpare, fields, drawing }: Row): ReactNode {
  const row = `${list}.${String(at)}`;
  const line = `${called} ${String(at + 1)}`;
  const [either] = eitherOf(fields);
  return (
    <li className={isSpare ? "line spare" : "line"}>
      <div className="line-fields">
        {fields.map((field) => {
          if (field !== either && isEither(field, fields)) return null;
          const name = field === either ? eitherName(row) : `${row}.${field.name}`;
          const label = field === either ? eitherLabel(fields) : unitBeside(field);
          const wrong = faultOf(drawing, name) === undefined ? "" : " wrong";
          return (
            <div key={field.name} className={`line-field kind-${field.control.kind.replaceAll(" ", "-")}${wrong}`}>
              <span className="label line-label" aria-hidden="true">
                {label}
              </span>
              {field === either ? (
                <EitherControl fields={fields} row={row} drawing={drawing} label={`${line}, ${label}`} />
              ) : (
                <FormControl field={field} name={name} drawing={drawing} label={`${line}, ${label}`} hasHint={false} />
              )}
              <UnderField name={name} drawing={drawing} />
            </div>
          );
        })}
      </div>
      <Carried row={row} fields={fields} values={drawing.values} />
      {drawing.underRow?.(row, drawing.values)}
      <RowButtons list={list} called={called} at={at} last={last} />
    </li>
  );
}

/** What goes along with a row and is no field of it, as the words that it was pasted from. */
function Carried({
  row,
  fields,
  values,
}: {
  readonly row: string;
  readonly fields: readonly FormField[];
  readonly values: Drawing["values"];
}): ReactNode {
  const drawn = new Set([eitherName(row), ...fields.map(({ name }) => `${row}.${name}`)]);
  return Object.entries(values)
    .filter(([name]) => name.startsWith(`${row}.`) && !drawn.has(name))
    .map(([name, value]) => <input key={name} type="hidden" name={name} value={value} readOnly />);
}

const RowButtons = ({ list, called, at, last }: Pick<Row, "list" | "called" | "at" | "last">): ReactNode => {
  const row = `${called.toLowerCase()} ${String(at + 1)}`;
  const deeds = [
    { deed: "up", label: "Up", says: `Move ${row} up`, can: at > 0 },
    { deed: "down", label: "Down", says: `Move ${row} down`, can: at < last },
    { deed: "out", label: "Take out", says: `Take out ${row}`, can: true },
  ];
  return (
    <div className="line-buttons">
      {deeds.map(({ deed, label, says, can }) => (
        <button
          key={deed}
          className="button plain"
          id={fieldId(`${deed} ${list} ${String(at)}`).replaceAll(" ", "-")}
          name="deed"
          value={`${deed} ${list} ${String(at)}`}
          aria-label={says}
          aria-disabled={can ? undefined : true}
        >
          {label}
        </button>
      ))}
    </div>
  );
};
