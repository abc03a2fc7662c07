/**
 * The versions of the workshop file, as data: which version is the first to know which key. Version 1 is the workshop
 * as it stands. Whoever adds a key to the file adds it to its record's reader and writer, and a row here. @rule FILE-5
 */
import type { FaultList } from "@/lib/edge/fault-list";
import { keyPath } from "@/lib/edge/record-reading";

/**
 * By the place where the key stands: "" for the document itself, `offers` for each record of that list, `orders.lines`
 * for each line of each order.
 */
const FIRST_KNOWN: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  // The past: all that was posted, the runs that were made, the lots that are on no list any more, and how formulas
  // came to be as they are. Then what is printed: labels and their papers.
  "": {
    closedRuns: 2,
    struckOff: 2,
    postings: 2,
    receipts: 3,
    formulaVersions: 4,
    trials: 4,
    batches: 5,
    labels: 5,
    papers: 5,
  },
  closedRuns: { versions: 4 },
  // What the checks of a formula need to know.
  materials: {
    role: 4,
    phFrom: 4,
    phTo: 4,
    composition: 4,
    limits: 4,
    flammable: 4,
    allergen: 4,
    eyeHazard: 4,
    sheets: 4,
  },
  formulas: { market: 4, use: 4, phFrom: 4, phTo: 4, keepsDays: 4, phases: 4, steps: 4, checks: 5 },
  formulaVersions: { checks: 5 },
  // The material that a premix made ahead becomes.
  products: { madeInto: 4 },
  // What the supplier says of an offer beyond its price.
  offers: { shelfLifeDays: 3, confirmedOn: 3 },
  // What became of an order.
  orders: { state: 3 },
  "orders.lines": { offer: 3, packs: 3, received: 3 },
};

export const FIRST_VERSION = 1;
/** The one that adds the past, all of it or nothing. */
export const VERSION_WITH_PAST = 2;
/** The last one, which can say everything. */
export const LATEST_VERSION = Math.max(...Object.values(FIRST_KNOWN).flatMap((keys) => Object.values(keys)));

const VERSIONS = Array.from({ length: LATEST_VERSION }, (_, at) => FIRST_VERSION + at);

/** Every version in a sentence: `1, 2 or 3`. */
export const versionsIn = (word: "or" | "and"): string =>
  `${VERSIONS.slice(0, -1).join(", ")} ${word} ${String(LATEST_VERSION)}`;

export const isKnownVersion = (version: unknown): version is number => VERSIONS.some((known) => known === version);

/** A document, or a record of it: as it was read, or as it is to be written. */
type Node = unknown;

/** The lowest version that knows every key of the document that has a value. */
export function leastVersionOf(document: Node): number {
  let least = FIRST_VERSION;
  eachKeyOfLater(document, (_, since) => (least = Math.max(least, since)));
  return least;
}

/** Tells each key that the document's version does not know yet, and the version that does. */
export function tellKeysOfLaterVersions(document: Node, version: number, faults: FaultList): void {
  eachKeyOfLater(document, (path, since) => {
    if (since <= version) return;
    const named = `version ${String(since)} of the file`;
    faults.tell(
      path,
      `belongs to ${named}, and this file says it is version ${String(version)}; write ${String(since)} there or take the key out`,
    );
  });
}

/** Visits the keys that version 1 does not know, in the order of the table and then of the document. */
function eachKeyOfLater(document: Node, visit: (path: string, since: number) => void): void {
  for (const [place, keys] of Object.entries(FIRST_KNOWN)) {
    for (const { path, record } of recordsAt(document, place)) {
      for (const [key, since] of Object.entries(keys)) {
        if (valueAt(record, key) !== undefined) visit(keyPath(path, key), since);
      }
    }
  }
}

interface Placed {
  readonly path: string;
  readonly record: Node;
}

/** The records at a place of the table, each with its path as faults name it. */
const recordsAt = (document: Node, place: string): readonly Placed[] =>
  place
    .split(".")
    .filter((list) => list !== "")
    .reduce<readonly Placed[]>(
      (owners, list) => owners.flatMap((owner) => recordsIn(owner, list)),
      [{ path: "", record: document }],
    );

function recordsIn({ path, record }: Placed, list: string): readonly Placed[] {
  const records = valueAt(record, list);
  if (!Array.isArray(records)) return [];
  return records.map((inner: Node, at) => ({ path: `${keyPath(path, list)}[${String(at)}]`, record: inner }));
}

function valueAt(record: Node, key: string): unknown {
  if (record instanceof Map) return record.get(key);
  return typeof record === "object" && record !== null && Object.hasOwn(record, key)
    ? (record as Readonly<Record<string, unknown>>)[key]
    : undefined;
}
