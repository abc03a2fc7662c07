/**
 * JSON text (RFC 8259) read strictly into a plain tree: UTF-8 only, no key twice in an object, every number as it
 * was written. It keeps its own stack, so that no depth of nesting can overflow the program's. @rule FILE-1
 */
import type { FaultList } from "./fault-list";
import { type Json, numberAsWritten, type OtherNumber } from "./json-tree";
import { escaped, quoted } from "./shown-value";
import { utf8Text } from "./utf8-text";

const DEEPEST = 64;
const MOST_VALUES = 2_000_000;

/**
 * Reads bytes as one JSON document.
 * @param faults  is told why the bytes are no such document, or which keys occur twice (the first is kept)
 * @returns the tree, or undefined where there is none
 */
export function readJson(bytes: Uint8Array, faults: FaultList): Json | undefined {
  const decoded = utf8Text(bytes);
  if (decoded.kind === "refused") {
    faults.tell("file", decoded.fault);
    return undefined;
  }
  const cursor: Cursor = { text: decoded.text, at: 0, values: 0, open: [], fault: null, faults };
  const tree = readDocument(cursor);
  if (cursor.fault !== null) faults.tell("file", cursor.fault);
  return tree === NONE ? undefined : tree;
}

interface OpenList {
  readonly list: Json[];
}
interface OpenObject {
  readonly object: Map<string, Json>;
  key: string;
}

interface Cursor {
  readonly text: string;
  at: number;
  values: number;
  readonly open: (OpenList | OpenObject)[];
  fault: string | null;
  readonly faults: FaultList;
}

/** Stands where there is no value: a list or object has only been opened, or a fault was found. */
const NONE = Symbol("no value");
type None = typeof NONE;

function readDocument(cursor: Cursor): Json | None {
  for (;;) {
    let value = beginValue(cursor);
    // A list or an object was opened, and its first value is next.
    if (value === NONE && cursor.fault === null) continue;
    while (value !== NONE) {
      const frame = cursor.open.at(-1);
      if (frame === undefined) return endDocument(cursor, value);
      place(frame, value);
      value = afterValue(cursor, frame);
    }
    if (cursor.fault !== null) return NONE;
  }
}

/** Reads a value that is complete in itself; for a list or object with something in it, opens it and gives none. */
function beginValue(cursor: Cursor): Json | None {
  cursor.values += 1;
  if (cursor.values > MOST_VALUES)
    return refuse(cursor, `holds more than ${MOST_VALUES.toLocaleString("en-GB")} JSON values, the most that is read`);
  const character = nextCharacter(cursor);
  if (character === "{" || character === "[") return openNested(cursor, character);
  if (character === '"') return readText(cursor);
  if (character === "-" || (character >= "0" && character <= "9")) return readNumber(cursor);
  for (const [word, value] of WORDS) {
    if (!cursor.text.startsWith(word, cursor.at)) continue;
    cursor.at += word.length;
    return value;
  }
  return refuseHere(cursor, "a value is wanted");
}

const WORDS = [
  ["true", true],
  ["false", false],
  ["null", null],
] as const;

function openNested(cursor: Cursor, bracket: "{" | "["): Json | None {
  if (cursor.open.length >= DEEPEST) {
    return refuse(
      cursor,
      `not a workshop file: JSON nested more than ${String(DEEPEST)} levels deep, ${whereIs(cursor, cursor.at)}`,
    );
  }
  cursor.at += 1;
  const next = nextCharacter(cursor);
  if (bracket === "[") {
    if (next === "]") return closed(cursor, []);
    cursor.open.push({ list: [] });
    return NONE;
  }
  if (next === "}") return closed(cursor, new Map());
  const frame: OpenObject = { object: new Map(), key: "" };
  cursor.open.push(frame);
  readKey(cursor, frame);
  return NONE;
}

function closed<T>(cursor: Cursor, value: T): T {
  cursor.at += 1;
  return value;
}

function place(frame: OpenList | OpenObject, value: Json): void {
  if ("list" in frame) frame.list.push(value);
  else if (!frame.object.has(frame.key)) frame.object.set(frame.key, value);
}

/** After a value: goes on to the next (none), or closes the frame, whose own value is then complete. */
function afterValue(cursor: Cursor, frame: OpenList | OpenObject): Json | None {
  const character = nextCharacter(cursor);
  if (character === ",") {
    cursor.at += 1;
    if ("object" in frame) readKey(cursor, frame);
    return NONE;
  }
  const end = "list" in frame ? "]" : "}";
  if (character !== end) return refuseHere(cursor, `"," or "${end}" is wanted`);
  cursor.open.pop();
  return closed(cursor, "list" in frame ? frame.list : frame.object);
}

function readKey(cursor: Cursor, frame: OpenObject): void {
  if (nextCharacter(cursor) !== '"') {
    refuseHere(cursor, "a key in double quotes is wanted");
    return;
  }
  const key = readText(cursor);
  if (key === NONE) return;
  frame.key = key;
  if (frame.object.has(key)) {
    cursor.faults.tell(pathTo(cursor), `the key ${quoted(key)} occurs twice in one object; keep one of the two`);
  }
  if (nextCharacter(cursor) === ":") cursor.at += 1;
  else refuseHere(cursor, '":" is wanted');
}

/** The path of the value that is being read, as `offers[0].price`. */
function pathTo(cursor: Cursor): string {
  const steps = cursor.open.map((frame) =>
    "list" in frame ? `[${String(frame.list.length)}]` : `.${escaped(frame.key)}`,
  );
  return steps.join("").replace(/^\./, "");
}

function readText(cursor: Cursor): string | None {
  const { text, at: start } = cursor;
  let [end, isPlain] = [start + 1, true];
  for (let unit = text.charCodeAt(end); end < text.length && unit !== QUOTE; unit = text.charCodeAt(end)) {
    if (unit === BACKSLASH || unit < SPACE) isPlain = false;
    end += unit === BACKSLASH ? 2 : 1;
  }
  if (end >= text.length) return refuse(cursor, `not JSON: the text that begins ${whereIs(cursor, start)} never ends`);
  const value = isPlain ? text.slice(start + 1, end) : parsed(text.slice(start, end + 1));
  if (typeof value !== "string") {
    return refuse(
      cursor,
      `not JSON: a bad escape or a control character in the text that begins ${whereIs(cursor, start)}`,
    );
  }
  cursor.at = end + 1;
  return value;
}

const [SPACE, QUOTE, BACKSLASH] = [0x20, 0x22, 0x5c];

function readNumber(cursor: Cursor): number | OtherNumber | None {
  const { text, at: start } = cursor;
  let end = start + 1;
  while (end < text.length && "0123456789.eE+-".includes(text.charAt(end))) end += 1;
  const written = text.slice(start, end);
  const read = numberAsWritten(written);
  if (typeof read !== "number" && typeof parsed(written) !== "number") {
    return end === text.length
      ? refuse(cursor, endsEarly(cursor, end, "a number is cut off"))
      : refuseHere(cursor, "a number is wanted");
  }
  cursor.at = end;
  return read;
}

/** JSON.parse for one text or number: the program's own judge of escapes and number forms. */
function parsed(token: string): unknown {
  try {
    return JSON.parse(token) as unknown;
  } catch {
    return undefined;
  }
}

function endDocument(cursor: Cursor, value: Json): Json | None {
  return nextCharacter(cursor) === "" ? value : refuseHere(cursor, "nothing may follow the document");
}

/** Skips blanks and gives the character there, "" at the end. */
function nextCharacter(cursor: Cursor): string {
  const { text } = cursor;
  for (;;) {
    const unit = text.charCodeAt(cursor.at);
    if (unit !== 0x20 && unit !== 0x0a && unit !== 0x0d && unit !== 0x09) return text.charAt(cursor.at);
    cursor.at += 1;
  }
}

function refuse(cursor: Cursor, fault: string): None {
  cursor.fault ??= fault;
  return NONE;
}

function refuseHere(cursor: Cursor, wanted: string): None {
  const { text, at } = cursor;
  if (at >= text.length) return refuse(cursor, endsEarly(cursor, text.length, wanted));
  const found = quoted(String.fromCodePoint(text.codePointAt(at) ?? 0));
  return refuse(cursor, `not JSON: ${found} ${whereIs(cursor, at)}, where ${wanted}`);
}

const endsEarly = (cursor: Cursor, at: number, wanted: string): string =>
  cursor.text.trim() === ""
    ? "is empty; a workshop file is one JSON object"
    : `not JSON: the file ends too early, ${whereIs(cursor, at)}: ${wanted}`;

/** "at line 3, column 9", counted from 1. */
function whereIs(cursor: Cursor, at: number): string {
  let [line, start] = [1, 0];
  for (let end = cursor.text.indexOf("\n"); end >= 0 && end < at; end = cursor.text.indexOf("\n", end + 1)) {
    [line, start] = [line + 1, end + 1];
  }
  return `at line ${String(line)}, column ${String(at - start + 1)}`;
}
