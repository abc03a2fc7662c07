/**
 * References of which a row holds one or the other are asked by one choice: its values name the field first, as
 * `material m1`. It stands under the name `of` while a form is drawn and sent, and nowhere else.
 */
import type { FormField } from "@/lib/edge/forms/form-fields";
import type { FormValues } from "./form-values";

const OF = "of";

/** The optional references that stand beside one another in a row; none where there is but one. */
export function eitherOf(fields: readonly FormField[]): readonly FormField[] {
  const references = fields.filter(({ control, required }) => control.kind === "reference" && !required);
  return references.length > 1 ? references : [];
}

export const isEither = (field: FormField, fields: readonly FormField[]): boolean => eitherOf(fields).includes(field);

export const eitherName = (row: string): string => `${row}.${OF}`;

/** Values of a form's fields as they are drawn: each pair in one. */
export function joined(values: FormValues, fields: readonly FormField[]): FormValues {
  const joint: Record<string, string> = { ...values };
  for (const { name: list, control } of fields) {
    if (control.kind !== "lines") continue;
    const either = eitherOf(control.fields);
    for (const { name } of either) {
      for (const key of Object.keys(values)) {
        const row = key.startsWith(`${list}.`) && key.endsWith(`.${name}`) ? key.slice(0, -name.length - 1) : null;
        if (row === null) continue;
        if (joint[key] !== "") joint[eitherName(row)] = `${name} ${String(joint[key])}`;
        joint[eitherName(row)] ??= "";
        Reflect.deleteProperty(joint, key);
      }
    }
  }
  return joint;
}

/** The values as they were meant: each choice under the field that it names. */
export function parted(values: FormValues): FormValues {
  const meant = Object.entries(values).map(([key, value]) => {
    if (!key.endsWith(`.${OF}`)) return [key, value] as const;
    const [, field = "", id = ""] = /^([A-Za-z]+) (.*)$/s.exec(value) ?? [];
    return [field === "" ? key : `${key.slice(0, -OF.length)}${field}`, field === "" ? "" : id] as const;
  });
  return Object.fromEntries(meant);
}

/** The name under which a field of the values was drawn: `lines.4.material` may be `lines.4.of`. */
export function drawnName(name: string, values: FormValues): string {
  if (Object.hasOwn(values, name)) return name;
  const [, row = ""] = /^(\w+\.\d+)(?:\.\w+)?$/.exec(name) ?? [];
  if (row === "") return name;
  if (Object.hasOwn(values, eitherName(row))) return eitherName(row);
  // About a row as a whole: told at its first field.
  return Object.keys(values).find((key) => key.startsWith(`${row}.`)) ?? name;
}
