/**
 * The faults of a document as a form tells them: those of the record that was typed stand at its fields, all others
 * name the record that the change would break. Places as `lots[3]` mean nothing to somebody who sees no file.
 */
import { notInTheList, typedOf } from "./unchosen";
import type { FaultList } from "@/lib/edge/fault-list";
import { faultList } from "@/lib/edge/fault-list";
import type { Json, JsonObject } from "@/lib/edge/json-tree";
import { called } from "@/lib/edge/record-reading";
import { escaped, quoted } from "@/lib/edge/shown-value";
import { CALLED, RECORD_LISTS, type RecordList } from "./form-fields";
import type { FieldFault } from "./form-reading";

export interface PlacedFault {
  readonly where: string;
  readonly what: string;
}

export interface PlacedFaults extends FaultList {
  readonly placed: () => readonly PlacedFault[];
}

const MOST_PLACED = 1_000;

/** A list of faults that also keeps place and sentence apart. */
export function placedFaults(): PlacedFaults {
  const lines = faultList();
  const placed: PlacedFault[] = [];
  return {
    ...lines,
    tell: (where, what) => {
      if (placed.length < MOST_PLACED) placed.push({ where, what });
      lines.tell(where, what);
    },
    placed: () => placed,
  };
}

/** The record that was typed: where it stands in the document, as `lots[3]` or `workshop`. */
export interface Judged {
  readonly document: JsonObject;
  readonly path: string;
}

export interface FaultsInWords {
  readonly faults: readonly FieldFault[];
  readonly breaks: readonly string[];
}

const MOST_BREAKS = 100;

export function faultsInWords(placed: readonly PlacedFault[], judged: Judged): FaultsInWords {
  const faults: FieldFault[] = [];
  const breaks = new Set<string>();
  for (const { where, what } of placed) {
    const message = withoutPlaces(what, judged);
    const own = ownField(where, judged);
    if (own !== undefined) faults.push({ field: own, message });
    else breaks.add(`${placeInWords(where, judged)}: ${message}`);
  }
  return { faults, breaks: atMost([...breaks]) };
}

/** The first hundred, and how many more there are. */
export const atMost = (sentences: readonly string[]): readonly string[] =>
  sentences.length <= MOST_BREAKS
    ? sentences
    : [...sentences.slice(0, MOST_BREAKS), `and ${String(sentences.length - MOST_BREAKS)} more`];

/** The field of the typed record, null for the record as a whole, undefined where the fault is elsewhere. */
function ownField(where: string, { path }: Judged): string | null | undefined {
  if (where === path) return null;
  if (where.startsWith(`${path}.`)) return where.slice(path.length + 1);
  if (where.startsWith(`${path}[`)) return where.slice(path.length);
  // A fault of a formula as a whole that was not touched is of a chain, and the chain leads through the one that was.
  return path.startsWith("formulas[") && /^formulas\[\d+\]$/.test(where) ? "lines" : undefined;
}

/** `product "Hand cream", fill`. */
function placeInWords(where: string, { document }: Judged): string {
  const [, list = "", at = "", field = ""] = /^(\w+)\[(\d+)\](.*)$/s.exec(where) ?? [];
  const named = isRecordList(list) ? recordInWords(list, recordAt(document, list, Number(at)), document) : where;
  return field === "" ? named : `${named}, ${fieldInWords(field)}`;
}

/** `.packaging[0].amount` as `packaging line 1, amount`. */
const fieldInWords = (field: string): string =>
  field
    .replace(/^\./, "")
    .replace(/^lines(?=\[)/, "")
    .replace(/\[(\d+)\]/g, (_, at: string) => ` line ${String(Number(at) + 1)}`)
    .replace(/\./g, ", ")
    .replace(/(?<=[a-z])[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`)
    .trim();

const isRecordList = (list: string): list is RecordList => (RECORD_LISTS as readonly string[]).includes(list);

function recordAt(document: JsonObject, list: RecordList, at: number): JsonObject {
  const records = document.get(list);
  const record: Json | undefined = Array.isArray(records) ? (records as readonly Json[])[at] : undefined;
  return record instanceof Map ? record : new Map<string, Json>();
}

/** A sentence of the file's reader with places as `offers[2].breaks[0]` in words, and without the ids of what has a name. */
function withoutPlaces(what: string, { document, path }: Judged): string {
  const typed = typedOf(/^no \w+ "(.*)"; add it or correct the id$/s.exec(what)?.[1] ?? "");
  if (typed !== null) return notInTheList(typed);
  const gone = /^no (\w+) ".*"; add it or correct the id$/s.exec(what);
  if (gone !== null) return `there is no such ${String(gone[1])} in the workshop any more; choose another`;
  const chain = /^(cycle: |.* at most \d+ may be: )(.*?)(; take one of these premixes out|, through .*)?$/s.exec(what);
  if (chain !== null) {
    const rest = withNamesAlone(chain[3] ?? "", document);
    return `${chain[1] ?? ""}${chainOfNames(chain[2] ?? "", document)}${rest}`;
  }
  if (/^offers ".*" and ".*" are both preferred/s.test(what))
    return "another offer of this material is preferred already, and one at most may be; take the mark off that one first";
  const placed = inFormWords(what).replace(
    /\b(\w+)\[(\d+)\](?:\.\w+\[(\d+)\])?/g,
    (place, list: string, at: string, row?: string) => {
      if (!isRecordList(list)) return place;
      const isOwn = path === `${list}[${at}]`;
      const line = row === undefined ? "" : `line ${String(Number(row) + 1)}`;
      if (isOwn) return line === "" ? "this one" : line;
      const named = recordInWords(list, recordAt(document, list, Number(at)), document);
      return line === "" ? named : `${named}, ${line}`;
    },
  );
  return withNamesAlone(placed, document);
}

/** What the file's readers call by a key or by a power of two, as a form calls it. */
export const inFormWords = (what: string): string =>
  what
    .replace(
      /^0 is out of range 1 to 2\^53-1$|^must be at least 1 (?:µg|piece|each), not 0(?:\.0+)? \S+$/,
      "must be above zero",
    )
    .replace("above useMax", "above “Use up to”")
    .replaceAll("2^53-1 µg", "9,007,199,254 g")
    .replaceAll("2^53-1", "9,007,199,254,740,991");

/** `f1 > f2` as `Hand cream > Base`; what is no formula of the document stays as it is. */
const chainOfNames = (ids: string, document: JsonObject): string =>
  ids
    .split(" > ")
    .map((id) => escaped(nameIn(document, "formulas", id)))
    .join(" > ");

/** `material "m1" (Oil)` as `material "Oil"`: the id of a record made in the app says nothing to a person. */
function withNamesAlone(what: string, document: JsonObject): string {
  let text = what;
  for (const list of ["materials", "formulas"] as const) {
    if (!text.includes(`${CALLED[list]} "`)) continue;
    const records = document.get(list);
    for (const source of Array.isArray(records) ? (records as readonly Json[]) : []) {
      if (!(source instanceof Map)) continue;
      const name: Json | undefined = (source as JsonObject).get("name");
      if (typeof name !== "string") continue;
      text = text.replaceAll(called(CALLED[list], { source }), () => `${CALLED[list]} ${quoted(name)}`);
    }
  }
  return text;
}

/** A record by what a person knows it by: its name, or what it is of and its day. */
export function recordInWords(list: RecordList, record: JsonObject, document: JsonObject): string {
  const text = (key: string): string => {
    const value = record.get(key);
    return typeof value === "string" ? escaped(value) : "?";
  };
  const nameOf = (of: RecordList, key: string): string => quoted(nameIn(document, of, record.get(key)));
  switch (list) {
    case "suppliers":
    case "materials":
    case "formulas":
    case "products":
    case "papers":
      return `${CALLED[list]} "${text("name")}"`;
    case "offers":
      return `the offer of ${nameOf("materials", "material")} from ${nameOf("suppliers", "supplier")}`;
    case "lots":
      return `lot "${text("id")}" of ${nameOf("materials", "material")}`;
    case "orders":
      return `the order from ${nameOf("suppliers", "supplier")} due ${text("due")}`;
    case "runs":
      return `the run of ${nameOf("products", "product")} on ${text("date")}`;
    case "labels":
      return `the label of ${nameOf("products", "product")} for ${text("market")}`;
    case "finished":
      return `the batch of ${nameOf("products", "product")} made ${text("made")}`;
  }
}

/** The name of a record, or its id where it has none. */
function nameIn(document: JsonObject, list: RecordList, id: Json | undefined): string {
  const records = document.get(list);
  const found = (Array.isArray(records) ? (records as readonly Json[]) : []).find(
    (record) => record instanceof Map && (record as JsonObject).get("id") === id,
  );
  const name: Json | undefined = found instanceof Map ? (found as JsonObject).get("name") : undefined;
  return typeof name === "string" ? name : typeof id === "string" ? id : "?";
}
