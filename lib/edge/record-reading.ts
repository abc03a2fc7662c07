/**
 * Objects of a JSON tree read field by field, so that a fault in one field hides no other. A field that could not
 * be read is `undefined`, and its fault has been told; nothing that depends on it is judged any further. @rule FILE-2
 */
import { z } from "zod";
import type { FaultList } from "./fault-list";
import { wanted } from "./fields";
import type { Json, JsonObject } from "./json-tree";
import { escaped, quoted, shown } from "./shown-value";

/** The keys of a kind of object, each with the schema of its field. */
export type Shape = Readonly<Record<string, z.ZodType>>;
export type Fields<S extends Shape> = { readonly [K in keyof S]: z.output<S[K]> | undefined };

export interface Entry<S extends Shape> {
  /** As `lots[3]`. */
  readonly path: string;
  readonly source: JsonObject;
  readonly fields: Fields<S>;
}

/** A list of objects, which are then read one by one. */
export const records = z.custom<readonly Json[]>((value) => Array.isArray(value), { error: wanted("a list") });

/** The object at `path`, or undefined where there is none (which is told). */
export function readEntry<S extends Shape>(
  value: Json | undefined,
  shape: S,
  path: string,
  faults: FaultList,
): Entry<S> | undefined {
  if (!(value instanceof Map)) {
    faults.tell(
      path === "" ? "file" : path,
      value === undefined ? "missing; it must be an object" : notAnObject(value),
    );
    return undefined;
  }
  const source: JsonObject = value;
  const fields: Record<string, unknown> = {};
  for (const key in shape) fields[key] = readField(source.get(key), shape[key], path, key, faults);
  for (const key of source.keys()) {
    if (!Object.hasOwn(shape, key)) faults.tell(keyPath(path, key), unknownKey(key, shape, source));
  }
  return { path, source, fields: fields as Fields<S> };
}

/** The objects of a list; what is no object is told and left out. */
export const readEntries = <S extends Shape>(
  list: readonly Json[] | undefined,
  shape: S,
  path: string,
  faults: FaultList,
): readonly Entry<S>[] =>
  (list ?? []).flatMap((value, at) => readEntry(value, shape, `${path}[${String(at)}]`, faults) ?? []);

const notAnObject = (value: Json): string => `must be an object in braces, not ${shown(value)}`;

function readField(
  value: Json | undefined,
  field: z.ZodType | undefined,
  path: string,
  key: string,
  faults: FaultList,
): unknown {
  const reading = field?.safeParse(value);
  if (reading?.success !== false) return reading?.data;
  for (const issue of reading.error.issues) {
    faults.tell(keyPath(path, key) + issue.path.map((step) => `[${String(step)}]`).join(""), issue.message);
  }
  return undefined;
}

/** The path of a key: `lots[3].expires`; a key that is no plain word stands in brackets. */
export const keyPath = (path: string, key: string): string => {
  const step = /^[A-Za-z0-9_$-]{1,60}$/.test(key) ? key : `[${quoted(key)}]`;
  return path === "" || step.startsWith("[") ? path + step : `${path}.${step}`;
};

/** Says which key was probably meant: one that differs in case, or one that is required here and not there. */
function unknownKey(key: string, shape: Shape, source: JsonObject): string {
  const absent = Object.keys(shape).filter((known) => !source.has(known));
  const meant = absent.find((known) => known.toLowerCase() === key.toLowerCase());
  return meant === undefined ? "unknown key; take it out" : `unknown key, write ${meant}`;
}

/** Everything of a record, once all of it could be read; else undefined. */
export function complete<R extends object>(
  record: R,
): { readonly [K in keyof R]: Exclude<R[K], undefined> } | undefined {
  return Object.values(record).includes(undefined)
    ? undefined
    : (record as { readonly [K in keyof R]: Exclude<R[K], undefined> });
}

/** The records of a list by id, for references to them. */
export interface Index<E> {
  readonly byId: ReadonlyMap<string, E>;
  /** False where the list or an id in it could not be read: then a missing id may be the effect of that fault. */
  readonly complete: boolean;
}

/**
 * Indexes a list by id and tells the ids that occur twice. An id that is faulty in itself still counts as there.
 * @param list  the list as it stands in the file, or undefined where it could not be read
 */
export function indexById<S extends Shape>(
  list: readonly Json[] | undefined,
  entries: readonly Entry<S>[],
  faults: FaultList,
): Index<Entry<S>> {
  const byId = new Map<string, Entry<S>>();
  let readable = list?.length === entries.length;
  for (const entry of entries) {
    const id = entry.source.get("id");
    if (typeof id !== "string") {
      readable = false;
      continue;
    }
    const first = byId.get(id);
    if (first === undefined) byId.set(id, entry);
    else faults.tell(`${entry.path}.id`, `repeated id ${quoted(id)}; ${first.path} has it already`);
  }
  return { byId, complete: readable };
}

/** The record that an id refers to, or undefined; an id that refers to nothing is told. */
export function referredTo<E>(
  index: Index<E>,
  kind: string,
  id: string | undefined,
  path: string,
  faults: FaultList,
): E | undefined {
  if (id === undefined) return undefined;
  const found = index.byId.get(id);
  if (found === undefined && index.complete) faults.tell(path, `no ${kind} ${quoted(id)}; add it or correct the id`);
  return found;
}

/** A record by name in a sentence: `material "mat-wax" (Osel wax)`. */
export const called = (kind: string, { source }: { readonly source: JsonObject }): string => {
  const [id, name] = [source.get("id"), source.get("name")];
  const words = [kind, typeof id === "string" ? quoted(id) : "", typeof name === "string" ? `(${escaped(name)})` : ""];
  return words.filter((word) => word !== "").join(" ");
};
