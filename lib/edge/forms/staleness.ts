/** Whether a form was drawn from a record that has changed since, so that saving it would undo another's change. */
import { fieldFingerprint, fingerprint } from "./fingerprint";
import type { TypedRecord } from "./form-reading";
import { NOTHING } from "./nothing-typed";

export interface FieldChange {
  /** A key of the record, as `name` or `lines`. */
  readonly field: string;
  /** As this form has it. */
  readonly was: string;
  /** As it is kept now. */
  readonly now: string;
}

/** The record was changed meanwhile; nothing of the form may be saved before somebody has looked. */
export interface Stale {
  readonly kind: "stale";
  /** Where what was changed meanwhile differs from what is in the form; empty where the record was removed. */
  readonly changes: readonly FieldChange[];
}

/**
 * @param seen    the fingerprint of the record as the form was drawn
 * @param stored  the record as it is kept now, null where it has been removed
 * @param typed   the record as it was typed; best as the file would write it, so that spelling makes no difference
 * @returns null where the form may be saved: nothing changed, or what changed is now just as it was typed
 */
export function staleness(seen: string, stored: TypedRecord | null, typed: TypedRecord): Stale | null {
  if (stored === null) return { kind: "stale", changes: [] };
  if (fingerprint(stored) === seen || sameRecord(stored, typed)) return null;
  const [, ...marks] = seen.split(" ");
  const seenByField = new Map(marks.map((mark) => mark.split("=", 2) as [string, string]));
  const changed = [...new Set([...Object.keys(stored), ...Object.keys(typed)])].filter((field) => {
    const mark = stored[field] === undefined ? undefined : fieldFingerprint(stored[field]);
    // A fingerprint of the whole alone tells nothing of its fields.
    const changedMeanwhile = marks.length === 0 || seenByField.get(encodeURIComponent(field)) !== mark;
    return changedMeanwhile && !sameValue(field, stored[field], typed[field]);
  });
  const changes = changed.map((field) => ({ field, was: shownField(typed[field]), now: shownField(stored[field]) }));
  // Where all that was changed meanwhile is as it was typed too, saving undoes nothing.
  return changes.length === 0 ? null : { kind: "stale", changes };
}

/** Whether two records say the same: "8.40" is "8.4", and a key left out is none. */
export function sameRecord(one: TypedRecord, other: TypedRecord): boolean {
  const fields = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...fields].every((field) => sameValue(field, one[field], other[field]));
}

const TEXTS = new Set(["id", "name", "phase", "material", "formula", "supplier", "product"]);

function sameValue(field: string, one: unknown, other: unknown): boolean {
  if (one == null || other == null) return (one ?? null) === (other ?? null);
  if (Array.isArray(one) && Array.isArray(other)) {
    return one.length === other.length && one.every((row: unknown, at) => sameValue(field, row, other[at]));
  }
  if (isRecord(one) && isRecord(other)) return sameRecord(one, other);
  if (typeof one !== "string" || typeof other !== "string" || TEXTS.has(field)) return one === other;
  return withoutTrailingZeros(one) === withoutTrailingZeros(other);
}

const isRecord = (value: unknown): value is TypedRecord => typeof value === "object" && value !== null;

const withoutTrailingZeros = (figure: string): string =>
  figure.replace(/^(\d+)(?:\.0*|(\.\d*?[1-9])0*)(?= |$)/, "$1$2");

/** A value in words: rows as `5, A; 2.5, B`. */
function shownField(value: unknown): string {
  if (value === undefined || value === null || value === "") return NOTHING;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return value.length === 0 ? NOTHING : value.map(shownField).join("; ");
  if (isRecord(value)) return Object.values(value).map(shownField).join(", ");
  return typeof value === "string" ? value : JSON.stringify(value);
}
