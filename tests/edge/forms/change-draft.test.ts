import { describe, expect, test } from "vitest";
import { type Books, emptyDesk } from "@/lib/domain/desk";
import { finishDraft, putDraft } from "@/lib/edge/forms/change-draft";
import type { TypedRecord } from "@/lib/edge/forms/form-reading";
import { totalInWords } from "@/lib/edge/forms/total-in-words";
import { benchFile, TODAY, workshopOfFile } from "./workshop-of-file";

const books: Books = { workshop: workshopOfFile(benchFile), desk: emptyDesk };

const draft = (...lines: readonly TypedRecord[]): TypedRecord => ({ id: "d1", name: "Balm", lines });
const oil = (percent: string): TypedRecord => ({ material: "m-oil", percent });
const water = (percent: string): TypedRecord => ({ material: "m-water", percent });

/** What is said of a draft that was kept, or why it was not. */
const inShort = (put: ReturnType<typeof putDraft>): readonly string[] =>
  put.kind === "refused" ? put.faults.map(({ field, message }) => `${field ?? "-"}: ${message}`) : [put.kind, put.says];

describe("[FORMULA-1] a draft may come to anything, and says what is missing", () => {
  test.each([
    { lines: [], says: "no lines yet; 100 % is still missing" },
    { lines: [oil("97.5")], says: "97.5 % so far; 2.5 % is still missing" },
    { lines: [oil("97.5"), water("5")], says: "102.5 %, which is 2.5 % too much" },
    { lines: [oil("40"), water("60")], says: "100 %, as it must be" },
    { lines: [oil("40"), water("qs")], says: "40 % and qs, which takes the 60 % that is left" },
    { lines: [oil("100"), water("qs")], says: "100 %, which leaves nothing for qs" },
    { lines: [oil("60"), oil("60"), water("qs")], says: "120 %, which leaves nothing for qs and is 20 % too much" },
    { lines: [oil("qs"), water("qs")], says: "0 %, and qs in 2 lines; only one can take what is left" },
  ])("$says", ({ lines, says }) => {
    const put = putDraft(books, null, draft(...lines));
    expect(inShort(put)).toEqual(["changed", says]);
    if (put.kind === "refused") return;
    expect(put.books.desk.drafts.map(({ lines }) => lines.length)).toEqual([lines.length]);
    expect(put.books.workshop).toBe(books.workshop);
    expect(totalInWords(put.total)).toBe(says);
  });

  test.each([
    {
      says: "a percent of nothing",
      typed: draft(oil("0")),
      is: ["lines[0].percent: 0 % is out of range: it must be above zero"],
    },
    {
      says: "a counted material",
      typed: draft({ material: "m-jar", percent: "5" }),
      is: ['lines[0].material: material "Jar" is counted and cannot be a percent by weight'],
    },
    {
      says: "a material that is gone",
      typed: draft({ material: "m-9", percent: "5" }),
      is: ["lines[0].material: there is no such material in the workshop any more; choose another"],
    },
    {
      says: "itself",
      typed: draft({ formula: "d1", percent: "5" }),
      is: ["-: cycle: Balm > Balm; take one of these premixes out"],
    },
    {
      says: "the id of a formula",
      typed: { ...draft(oil("5")), id: "f-base" },
      is: ['id: repeated id "f-base"; formula "Base" has it already'],
    },
    { says: "no name", typed: { id: "d1", lines: [] }, is: ["name: missing; it must be a name in double quotes"] },
  ])("it is checked for all else: $says", ({ typed, is }) => {
    expect(inShort(putDraft(books, null, typed))).toEqual(is);
  });
});

describe("a draft is kept, changed and finished", () => {
  const first = putDraft(books, null, draft(oil("97.5")));
  if (first.kind === "refused") throw new Error("the draft was refused");

  test("sent twice it is kept once", () => {
    expect(putDraft(first.books, null, draft(oil("97.50")))).toMatchObject({
      kind: "already kept",
      books: first.books,
    });
    expect(inShort(putDraft(first.books, null, draft(oil("5"))))).toEqual([
      "-: this draft was kept before, with something else in it; open it to change it",
    ]);
  });

  test("changed in its place; one that is gone is not made again", () => {
    const put = putDraft(first.books, "d1", draft(oil("98")));
    expect(put.kind === "changed" && put.books.desk.drafts[0]?.lines[0]?.percent).toBe(980_000n);
    expect(inShort(putDraft(books, "d1", draft(oil("98"))))).toEqual([
      "-: this draft is not there any more; it was removed meanwhile",
    ]);
  });

  test("it becomes a formula once it adds up, and not before", () => {
    const short = finishDraft(first.books, "d1", draft(oil("97.5")), TODAY);
    expect(short.kind === "refused" && short.faults).toEqual([
      {
        field: null,
        message: 'formula "Balm": the percents add up to 97.5 %; without a qs line they must add up to 100 %',
      },
    ]);
    const done = finishDraft(first.books, "d1", draft(oil("97.5"), water("2.5")), TODAY);
    expect(done.kind === "changed" && done.books.desk.drafts).toEqual([]);
    expect(done.kind === "changed" && done.books.workshop.formulas.at(-1)?.id).toBe("d1");
  });
});
