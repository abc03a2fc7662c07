/** The ledger's kinds and places as the screens say them. @rule LEDGER-2 */
import type { Place, PlaceKind, PostingKind } from "@/lib/domain/ledger/posting";

export const POSTING_WORDS: Readonly<Record<PostingKind, string>> = {
  opening: "Opened the books",
  correction: "Corrected in the Book",
  received: "Received",
  "late cost": "Late cost",
  weighed: "Weighed into a batch",
  made: "Made",
  counted: "Counted",
  held: "Put on hold",
  released: "Released",
  "written off": "Written off",
  sold: "Sold",
  "taken back": "Came back from a sale",
  reversal: "Taken back",
};

/** What something comes from or goes to. */
export const PLACE_WORDS: Readonly<Record<PlaceKind, string>> = {
  supplier: "the supplier",
  shelf: "the shelf",
  hold: "on hold",
  batch: "the batch",
  finished: "finished stock",
  sold: "sold",
  lost: "lost",
  expired: "out of date",
  counted: "the count",
  labour: "labour",
  overhead: "overhead",
};

/** Said where the figures of a lot do not add up; the command is that of README. */
export const DISAGREE = "The figures disagree: run npm run check-books, and read what it prints.";

export const placeWords = (place: Place): string => PLACE_WORDS[place.kind];

/** Where something is. */
export const WHERE_WORDS: Readonly<Record<PlaceKind, string>> = {
  supplier: "with the supplier",
  shelf: "on the shelf",
  hold: "on hold",
  batch: "in a batch",
  finished: "in stock",
  sold: "sold",
  lost: "lost",
  expired: "written off out of date",
  counted: "by count",
  labour: "labour",
  overhead: "overhead",
};

/** @param runCalled  a run by what it makes and when */
export const whereWords = (place: Place, runCalled = (run: string): string => `run ${run}`): string =>
  place.kind === "batch" ? `in the batch of ${runCalled(place.run)}` : WHERE_WORDS[place.kind];
