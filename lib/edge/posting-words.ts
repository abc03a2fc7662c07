/** What a posting is called, in a title and in a line of a history. */
import type { PostingKind } from "@/lib/domain/ledger/posting";

export const POSTING_TITLES: Readonly<Record<PostingKind, string>> = {
  opening: "Here when the books were opened",
  correction: "Corrected in the Book",
  received: "Received",
  "late cost": "A cost that came later",
  made: "Made",
  counted: "Counted",
  held: "Put on hold",
  released: "Released from hold",
  "written off": "Written off",
  sold: "Sold",
  "taken back": "Taken back into stock",
  reversal: "Taken back",
};
